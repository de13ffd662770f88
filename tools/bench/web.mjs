/** The page in a real browser: cold load to answers, an edit to its answers on the demo and on a big shoot; each beside what the browser alone takes. */
import { createServer } from 'node:http';
import { existsSync, readFileSync } from 'node:fs';
import { extname, join, normalize } from 'node:path';
import { chromium } from 'playwright-core';
import { bigShoot } from './bigShoot.mjs';

const root = new URL('../../', import.meta.url).pathname;
const folder = join(root, 'dist/web');
const executablePath = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) => existsSync(path));
const TYPES = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.json': 'application/json', '.woff2': 'font/woff2' };

export async function bench() {
  if (executablePath === undefined) {
    console.warn('NO CHROMIUM FOUND: the page is not measured.');
    return [];
  }
  const demo = JSON.parse(readFileSync(join(root, 'examples/demo.shoot.json'), 'utf8'));
  const { url, close } = await serving();
  const browser = await chromium.launch({ executablePath, chromiumSandbox: false, args: ['--enable-unsafe-swiftshader', '--disable-background-networking', '--disable-quic', '--no-first-run'] });
  try {
    const blank = await repeated(3, () => blankLoad(browser, url));
    const cold = await repeated(3, () => coldLoad(browser, url));
    const edit = await editing(browser, url, demo);
    const big = await editing(browser, url, bigShoot(demo));
    return [
      { name: 'page: cold load to the answers of the demo', ms: cold, aimMs: 2500, floorName: 'an empty page', floorMs: blank, limitRatio: 60 },
      { name: 'page: an edit to its answers, demo', ms: edit.ms, aimMs: 100, floorName: 'two frames', floorMs: edit.frames, limitRatio: 6 },
      { name: 'page: an edit to its answers, 200 pieces, 96 shots', ms: big.ms, aimMs: 300, floorName: 'two frames', floorMs: big.frames, limitRatio: 20 },
      { name: 'page: longest task of its own thread during edits, 200 pieces', ms: big.longest, aimMs: 50, floorName: 'two frames', floorMs: big.frames, limitRatio: 3 },
    ];
  } finally {
    await browser.close();
    close();
  }
}

function serving() {
  const server = createServer((request, response) => {
    const file = normalize(join(folder, request.url === '/' ? 'index.html' : (request.url ?? '').split('?')[0]));
    if (request.url === '/blank') return response.writeHead(200, { 'content-type': 'text/html' }).end('<p>blank</p>');
    if (!file.startsWith(folder) || !existsSync(file)) return response.writeHead(404).end();
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'text/plain' }).end(readFileSync(file));
  });
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve({ url: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() })));
}

async function repeated(times, run) {
  const found = [];
  for (let time = 0; time < times; time += 1) found.push(await run());
  return found.toSorted((a, b) => a - b)[Math.floor(times / 2)];
}

async function inPage(browser, run) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, serviceWorkers: 'block' });
  try {
    return await run(await context.newPage());
  } finally {
    await context.close();
  }
}

const blankLoad = (browser, url) => inPage(browser, async (page) => {
  const start = performance.now();
  await page.goto(`${url}blank`);
  await page.locator('p').waitFor();
  return performance.now() - start;
});

const coldLoad = (browser, url) => inPage(browser, async (page) => {
  const start = performance.now();
  await page.goto(`${url}#/asks?open=demo`);
  await page.locator('.question').first().waitFor();
  return performance.now() - start;
});

/** From Enter in a figure's field to its new use on screen, measured inside the page, many times over. */
const editing = (browser, url, shoot) => inPage(browser, async (page) => {
  page.setDefaultTimeout(60_000);
  await page.goto(url);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Open a file' }).click()]);
  await chooser.setFiles({ name: 'big.shoot.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(shoot)) });
  await page.locator('.question').first().waitFor();
  await page.getByRole('searchbox', { name: 'Search the answers' }).fill('image circle cover');
  await page.locator('.question .asks-what').first().click();
  await page.locator('.rests').getByRole('textbox', { name: /^image circle/ }).waitFor();
  const { times, frames, longest } = await page.evaluate(editManyTimes);
  return { ms: times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)], frames, longest };
});

/** Runs inside the page. */
async function editManyTimes() {
  const input = [...document.querySelectorAll('.rests input')].find((one) => one.getAttribute('aria-label')?.startsWith('image circle'));
  const use = document.querySelector('.working .big-load b');
  const setText = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
  const frame = () => new Promise((resolve) => { requestAnimationFrame(() => requestAnimationFrame(resolve)); });
  let longest = 0;
  const observer = new PerformanceObserver((list) => { for (const { duration } of list.getEntries()) longest = Math.max(longest, duration); });
  observer.observe({ type: 'longtask', buffered: false });
  const times = [];
  for (let at = 0; at < 12; at += 1) {
    const before = use.textContent;
    setText.call(input, String(40 + at));
    input.dispatchEvent(new Event('input', { bubbles: true }));
    await frame();
    const start = performance.now();
    input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
    while (use.textContent === before && performance.now() - start < 10_000) await new Promise((resolve) => { requestAnimationFrame(resolve); });
    times.push(performance.now() - start);
    await new Promise((resolve) => { setTimeout(resolve, 80); });
  }
  const start = performance.now();
  for (let at = 0; at < 10; at += 1) await frame();
  return { times: times.slice(2), frames: (performance.now() - start) / 10, longest };
}
