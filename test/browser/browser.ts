import { cpSync, existsSync, mkdtempSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, type BrowserContextOptions, type Page, chromium } from 'playwright-core';
import { siteFile } from '../../src/cli/serve/site.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Where a browser is; the tests of the page are skipped, loudly, where none is. */
export const executablePath = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) => existsSync(path));
if (executablePath === undefined) process.stderr.write('NO CHROMIUM FOUND: the tests of the page are SKIPPED. Install chromium to run them.\n');

/** The page under test, in a folder of its own: as it stands built, or built now where something it is made of is newer. */
export function builtPage(): string {
  const folder = mkdtempSync(join(tmpdir(), 'setworthy-page-'));
  const built = join(root, 'dist/web');
  if (isFresh(join(built, 'index.html'))) {
    cpSync(built, folder, { recursive: true });
    return folder;
  }
  const { status, stderr } = spawnSync('npx', ['vite', 'build', '--logLevel', 'warn', '--outDir', folder], { cwd: root, encoding: 'utf8', env: { ...process.env, NODE_ENV: 'production' } });
  if (status !== 0) throw new Error(`The page could not be built: ${stderr}`);
  return folder;
}

function isFresh(built: string): boolean {
  if (!existsSync(built)) return false;
  const sources = ['src', 'examples'].flatMap((name) => readdirSync(join(root, name), { recursive: true, withFileTypes: true })).filter((one) => one.isFile() && !/\.(test|generated)\.ts$/.test(one.name));
  const { mtimeMs } = statSync(built);
  return sources.every((one) => statSync(join(one.parentPath, one.name)).mtimeMs < mtimeMs);
}

export function launch(): Promise<Browser> {
  return chromium.launch({
    ...(executablePath === undefined ? {} : { executablePath }), chromiumSandbox: false,
    args: ['--enable-unsafe-swiftshader', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic', '--no-first-run'],
  });
}

export interface Site {
  readonly url: string;
  readonly close: () => void;
}

/** The built page as any plain web server would serve it, from a folder of its own. */
export async function plainSite(folder: string): Promise<Site> {
  const server = createServer((request, response) => {
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    const file = path.startsWith('/some/folder/') ? siteFile(folder, path.slice('/some/folder'.length)) : undefined;
    if (file === undefined) return void response.writeHead(404).end();
    response.writeHead(200, { 'content-type': file.type }).end(file.content);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', () => resolve()));
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/some/folder/`, close: () => (server.closeAllConnections(), void server.close()) };
}

export const DESK = { width: 1280, height: 800 };
export const TABLET = { width: 820, height: 1180 };
export const PHONE = { width: 380, height: 800 };

/** A page of its own, and everything it complained about or asked for. */
export interface Watched {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly complaints: string[];
  readonly hosts: Set<string>;
}

export async function freshPage(browser: Browser, options: BrowserContextOptions = {}): Promise<Watched> {
  const context = await browser.newContext({ viewport: DESK, reducedMotion: 'reduce', serviceWorkers: 'block', ...options });
  context.setDefaultTimeout(10_000);
  const page = await context.newPage();
  const complaints: string[] = [];
  const hosts = new Set<string>();
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => /^https?:/.test(request.url()) && hosts.add(new URL(request.url()).host));
  return { context, page, complaints, hosts };
}

/** Opens the demo and waits until it is answered. */
export async function openDemo(page: Page, url: string, view = 'asks'): Promise<void> {
  await page.goto(`${url}#/${view}?open=demo`);
  await page.locator('.table, .notice.wrong').first().waitFor();
  if ((await page.locator('.table').count()) === 0) throw new Error(`The demo did not open: ${await page.locator('.notice').innerText()}`);
}

/** The number beside a verdict in the tally. */
export async function tally(page: Page, verdict: string): Promise<number> {
  const button = page.locator('.tally button', { hasText: verdict });
  return (await button.count()) === 0 ? 0 : Number(await button.locator('b').innerText());
}

export const tinyText = (): string => readFileSync(join(root, 'examples/tiny.shoot.json'), 'utf8');
