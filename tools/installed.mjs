import { existsSync, readFileSync, statSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { run } from './run.mjs';

const root = new URL('..', import.meta.url).pathname;

/** Installs the locked dependencies where they are missing or older than the lock. */
export function installWhereMissing() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Setworthy needs Node 20.19 or newer; this is ${process.versions.node}.`);
    process.exit(1);
  }
  const mark = `${root}node_modules/.package-lock.json`;
  const lock = `${root}package-lock.json`;
  if (existsSync(mark) && statSync(mark).mtimeMs >= statSync(lock).mtimeMs) return;
  if (existsSync(mark) && sameVersions(readFileSync(mark, 'utf8'), readFileSync(lock, 'utf8'))) return;
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], { cwd: root });
}

function sameVersions(installed, wanted) {
  const versions = (text) => Object.entries(JSON.parse(text).packages).filter(([name, one]) => name !== '' && one.optional !== true).map(([name, one]) => `${name}@${one.version}`);
  const there = new Set(versions(installed));
  return versions(wanted).every((one) => there.has(one));
}

/** Debian packages the outside checks use: installed where this may be done, named loudly where not. */
export function oraclesWhereMissing() {
  const wanted = { chromium: 'chromium', pdftotext: 'poppler-utils', qpdf: 'qpdf', xmllint: 'libxml2-utils', admesh: 'admesh', unzip: 'unzip', 'edid-decode': 'edid-decode', units: 'units' };
  const missing = Object.entries(wanted).filter(([program]) => spawnSync('which', [program]).status !== 0).map(([, name]) => name);
  if (!['', '-debian'].some((end) => existsSync(`/lib/firmware/regulatory.db${end}`))) missing.push('wireless-regdb');
  if (missing.length === 0) return;
  const quiet = { stdio: 'ignore' };
  const may = process.getuid?.() === 0 && spawnSync('which', ['apt-get']).status === 0;
  const done = may && spawnSync('apt-get', ['update', '-qq'], quiet).status === 0 && spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missing], quiet).status === 0;
  if (!done) console.warn(`NOT INSTALLED, so the checks that need them are SKIPPED: ${missing.join(', ')}. Install these Debian packages to run them.`);
}
