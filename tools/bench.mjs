/** Measures what was promised to be quick, each beside a floor or a peer, as a ratio. A report, not a test. */
import { build } from 'esbuild';
import { readdirSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { run } from './run.mjs';

process.chdir(new URL('..', import.meta.url).pathname);
run('node', ['tools/build.mjs']);
const names = readdirSync('tools/bench').filter((name) => name.endsWith('.mjs') && name !== 'timed.mjs').sort();
// Bundled as what ships is: a source file read as it stands gives each function its name back while it runs. As deep as before, so that files are found.
await build({ entryPoints: names.map((name) => `tools/bench/${name}`), outdir: '.cache/bench', outExtension: { '.js': '.mjs' }, bundle: true, packages: 'external', format: 'esm', target: 'node20', platform: 'node', minifyWhitespace: true, minifySyntax: true, logLevel: 'warning' });
const rows = [];
for (const name of names) {
  const { bench } = await import(pathToFileURL(`.cache/bench/${name}`).href);
  if (bench !== undefined) rows.push(...(await bench()));
}
const format = (value) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
console.log('what'.padEnd(64), 'ms'.padStart(8), 'aim'.padStart(8), '  beside');
for (const { name, ms, aimMs, floorName, floorMs } of rows) {
  const aim = aimMs === undefined ? '' : `${format(aimMs)}`;
  console.log(name.padEnd(64), format(ms).padStart(8), aim.padStart(8), `  ${format(ms / floorMs)} × ${floorName} (${format(floorMs)} ms)${aimMs !== undefined && ms > aimMs ? '   OVER THE AIM' : ''}`);
}
