import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { type Plugin, defineConfig, transformWithOxc } from 'vite';

const root = new URL('src/web/', import.meta.url).pathname;

/** Writes the service worker with the list of everything built, so that the page works without a network once it is loaded. */
function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    async generateBundle(_, bundle) {
      const built = Object.keys(bundle).filter((name) => !/\.(map|woff|html)$/.test(name)).sort();
      this.emitFile({ type: 'asset', fileName: 'demo.shoot.json', source: readFileSync(new URL('examples/demo.shoot.json', import.meta.url), 'utf8') });
      const files = [...built, 'demo.shoot.json', ...readdirSync(`${root}public`)];
      const version = createHash('sha256').update(files.join('\n')).digest('hex').slice(0, 12);
      const source = `${root}offline/serviceWorker.ts`;
      const { code } = await transformWithOxc(readFileSync(source, 'utf8'), source);
      const lists = `const FILES = ${JSON.stringify(['./', ...files])};\nconst VERSION = ${JSON.stringify(version)};\n`;
      this.emitFile({ type: 'asset', fileName: 'offline.js', source: lists + code.replace(/^export\s*\{\s*\};?/m, '') });
    },
  };
}

export default defineConfig({
  root,
  base: './',
  publicDir: `${root}public`,
  plugins: [offline()],
  // The package's plain entry needs Node's buffers; it brings the same for browsers.
  resolve: { alias: { 'csv-parse/sync': 'csv-parse/browser/esm/sync' } },
  worker: { format: 'es' },
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 2000, modulePreload: { polyfill: false }, assetsInlineLimit: 0 },
});
