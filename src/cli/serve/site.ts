import { existsSync, readFileSync, statSync } from 'node:fs';
import { extname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8', '.json': 'application/json; charset=utf-8', '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2', '.woff': 'font/woff', '.ttf': 'font/ttf', '.glb': 'model/gltf-binary', '.wasm': 'application/wasm', '.webmanifest': 'application/manifest+json',
};

export interface SiteFile {
  readonly content: Buffer;
  readonly type: string;
  /** Built files carry their content in their name and never change under it. */
  readonly forever: boolean;
}

/** The folder the built page stands in, beside the command; nothing where it was not built. */
export function siteFolder(): string | undefined {
  const candidates = ['./web/', '../web/', '../../../dist/web/'].map((path) => fileURLToPath(new URL(path, import.meta.url)));
  return candidates.find((folder) => existsSync(join(folder, 'index.html')));
}

/** A file of the page by the path asked for; nothing where there is none, or where the path leads out of the folder. */
export function siteFile(folder: string, path: string): SiteFile | undefined {
  const name = decoded(path);
  if (name === undefined || name.includes('\0') || name.includes('\\')) return undefined;
  const file = normalize(join(folder, name === '/' ? 'index.html' : name));
  if (!file.startsWith(normalize(folder + sep)) || TYPES[extname(file)] === undefined) return undefined;
  if (!existsSync(file) || !statSync(file).isFile()) return undefined;
  return { content: readFileSync(file), type: TYPES[extname(file)] ?? '', forever: name.startsWith('/assets/') };
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}
