/** Builds the command, the two library entries and, where it is there, the page, into dist/. */
import { build } from 'esbuild';
import { chmodSync, existsSync, rmSync } from 'node:fs';
import { run } from './run.mjs';

const root = new URL('..', import.meta.url).pathname;
process.chdir(root);
run('node', ['tools/generate.mjs']);
rmSync('dist', { recursive: true, force: true });

// Names are left as they are: a fault's trace stays readable, and nothing need give each function its name back while it runs.
const shared = { bundle: true, format: 'esm', target: 'node20', minifyWhitespace: true, minifySyntax: true, legalComments: 'none', logLevel: 'warning', charset: 'utf8' };
// Under a name of its own: a package in a chunk may import createRequire itself.
const require = "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";
await build({
  ...shared, platform: 'node', mainFields: ['module', 'main'], splitting: true, outdir: 'dist', entryPoints: { cli: 'src/cli/main.ts' }, chunkNames: 'chunks/[name]-[hash]',
  banner: { js: `#!/usr/bin/env node\n${require}` },
});
await build({ ...shared, platform: 'neutral', mainFields: ['module', 'main'], outdir: 'dist', entryPoints: { index: 'src/index.ts', calc: 'src/calc/index.generated.ts' } });
chmodSync('dist/cli.js', 0o755);
if (existsSync('vite.config.ts')) run('npx', ['vite', 'build', '--logLevel', 'warn']);
