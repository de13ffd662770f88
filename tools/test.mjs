/** Everything that must hold: types, lint, walls, unused, tests. `npm test -- src/calc` runs the tests of one part only. */
import { readFileSync, mkdirSync } from 'node:fs';
import { installWhereMissing, oraclesWhereMissing } from './installed.mjs';
import { succeeds } from './run.mjs';

const root = new URL('..', import.meta.url).pathname;
process.chdir(root);
const only = process.argv.slice(2);
installWhereMissing();
oraclesWhereMissing();

let passed = 0;
let failed = 0;
const gate = (name, program, args) => {
  const ok = succeeds(program, args);
  if (ok) passed += 1;
  else failed += 1;
  console.log(`${ok ? 'ok' : 'FAILED'}: ${name}`);
};

gate('build', 'node', ['tools/build.mjs']);
if (only.length === 0) {
  gate('types', 'node', ['tools/types.mjs']);
  gate('lint', 'npx', ['oxlint']);
  gate('walls', 'node', ['tools/walls.mjs']);
  gate('nothing unused', 'npx', ['knip']);
}
mkdirSync('.cache', { recursive: true });
const report = '.cache/tests.json';
const ran = succeeds('npx', ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...only]);
const { numPassedTests, numFailedTests, numPendingTests, numTotalTests } = JSON.parse(readFileSync(report, 'utf8'));
passed += numPassedTests;
failed += numFailedTests + (ran || numFailedTests > 0 ? 0 : 1);
if (numTotalTests === 0) failed += 1;
console.log(`${passed} passed, ${failed} failed${numPendingTests > 0 ? `, ${numPendingTests} skipped` : ''}`);
process.exit(failed > 0 ? 1 : 0);
