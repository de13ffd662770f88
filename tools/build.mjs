/** Builds the command, the two library entries and, where it is there, the page, into dist/. */
import { build } from 'esbuild';
import { chmodSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { run } from './run.mjs';

const root = new URL('..', import.meta.url).pathname;
process.chdir(root);
run('node', ['tools/generate.mjs']);
rmSync('dist', { recursive: true, force: true });

// Names are left as they are: a fault's trace stays readable, and nothing need give each function its name back while it runs.
const shared = { bundle: true, format: 'esm', target: 'node20', minifyWhitespace: true, minifySyntax: true, legalComments: 'none', logLevel: 'warning', charset: 'utf8' };
const forNode = { ...shared, platform: 'node', mainFields: ['module', 'main'] };
await build({ ...forNode, outfile: 'dist/cli.js', entryPoints: ['src/cli/main.ts'], banner: { js: '#!/usr/bin/env node' } });
// Plain ASCII, so that it is read as it stands; nothing imported while it runs, which a script that was kept compiled cannot do.
await build({
  ...forNode, format: 'cjs', charset: 'ascii', supported: { 'dynamic-import': false }, outfile: 'dist/program.cjs', entryPoints: ['src/cli/cli.ts'], define: { 'import.meta.url': 'programUrl' },
  banner: { js: "(function(module,require,__filename){const programUrl=require('node:url').pathToFileURL(__filename).href;" }, footer: { js: '})' },
});
// What stands in patterns is not escaped with the rest.
writeFileSync('dist/program.cjs', readFileSync('dist/program.cjs', 'utf8').replace(/[^\0-\x7f]/g, (unit) => String.raw`\u` + unit.charCodeAt(0).toString(16).padStart(4, '0')));
run('node', ['tools/keepCompiled.mjs']);
await build({ ...shared, platform: 'neutral', mainFields: ['module', 'main'], outdir: 'dist', entryPoints: { index: 'src/index.ts', calc: 'src/calc/index.generated.ts' } });
chmodSync('dist/cli.js', 0o755);
// Below an error it tells of Node's modules that packages ask for by name and the page never reaches, and of its own timings.
if (existsSync('vite.config.ts')) run('npx', ['vite', 'build', '--logLevel', 'error']);
