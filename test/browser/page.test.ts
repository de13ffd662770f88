import { gzipSync } from 'node:zlib';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ServedShoot } from '../../src/cli/serve/ServedShoot.ts';
import { serve } from '../../src/cli/serve/serve.ts';
import { PHONE, type Site, TABLET, builtPage, executablePath, freshPage, launch, openDemo, plainSite, tally, tinyText } from './browser.ts';

let browser: Browser;
let site: Site;
let folder: string;

describe.skipIf(executablePath === undefined)('the page in a browser', { timeout: 60_000 }, () => {
  beforeAll(async () => {
    folder = builtPage();
    [browser, site] = await Promise.all([launch(), plainSite(folder)]);
  }, 120_000);
  afterAll(async () => {
    site?.close();
    await browser?.close();
  });

  const undo = (page: Page) => page.getByRole('button', { name: 'Undo' }).click();
  const saved = (page: Page) => page.locator('.kept[data-kept="kept"]').waitFor();
  const openTiny = async (page: Page, text = tinyText()) => {
    await page.goto(site.url);
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Open a file' }).click()]);
    await chooser.setFiles({ name: 'tiny.shoot.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  };

  test('a figure edited moves its answer at once; all is undone; it is saved, and there after a reload', async () => {
    const { page, complaints, hosts, context } = await freshPage(browser);
    await openDemo(page, site.url);
    const before = { fails: await tally(page, 'fails'), good: await tally(page, 'good') };
    expect(before.fails + before.good).toBeGreaterThan(20);
    await page.getByRole('searchbox', { name: 'Search the answers' }).fill('image circle cover');
    await page.locator('.question .asks-what').first().click();
    const circle = page.locator('.rests').getByRole('textbox', { name: /^image circle/ });
    await circle.fill('60');
    await circle.press('Enter');
    await page.locator('.working .word.good').first().waitFor();
    expect(await page.locator('.working .big-load b').innerText()).toMatch(/^0\.7/);
    await saved(page);
    await undo(page);
    await page.locator('.working .word.fails').first().waitFor();
    await page.getByRole('textbox', { name: 'Title of the shoot' }).fill('High Water');
    await page.getByRole('textbox', { name: 'Title of the shoot' }).press('Enter');
    await saved(page);
    await page.reload();
    await page.locator('.table').waitFor();
    expect(await page.getByRole('textbox', { name: 'Title of the shoot' }).inputValue()).toBe('High Water');
    expect([...hosts]).toEqual([new URL(site.url).host]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('works without a network once it has been loaded', async () => {
    const { page, context } = await freshPage(browser, { serviceWorkers: 'allow' });
    await openDemo(page, site.url);
    await page.evaluate('navigator.serviceWorker.ready.then(() => caches.keys())');
    await page.getByRole('textbox', { name: 'Title of the shoot' }).fill('Kept offline');
    await page.getByRole('textbox', { name: 'Title of the shoot' }).press('Enter');
    await saved(page);
    await page.reload();
    await context.setOffline(true);
    await page.reload();
    await page.locator('.question').first().waitFor();
    expect(await page.getByRole('textbox', { name: 'Title of the shoot' }).inputValue()).toBe('Kept offline');
    await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: 'lines' }).click();
    await page.locator('.diagram .device').first().waitFor();
    await context.close();
  });

  test('a line taken out and put back; a wrong one refused with its reason', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await openDemo(page, site.url, 'lines');
    await page.locator('.diagram .line').first().waitFor();
    const lines = await page.locator('.diagram .line').count();
    const fails = await tally(page, 'fails');
    await page.getByRole('button', { name: /^Coax .*1080\/25/ }).first().focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Take this line out' }).click();
    await expect.poll(() => page.locator('.diagram .line').count()).toBe(lines - 1);
    await undo(page);
    await expect.poll(() => page.locator('.diagram .line').count()).toBe(lines);
    expect(await tally(page, 'fails')).toBe(fails);
    const outputs = page.getByRole('button', { name: /output, free$/ });
    await outputs.nth(0).focus();
    await page.keyboard.press('Enter');
    await outputs.nth(1).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText(/two outputs|picture socket|power socket|control socket/).waitFor();
    expect(await page.locator('.diagram .line').count()).toBe(lines);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a lens changed in the strip changes the frame', async () => {
    const { page, context } = await freshPage(browser);
    await openDemo(page, site.url, 'frame');
    await page.locator('.frame-drawing svg').first().waitFor();
    const circle = () => page.locator('.frame-view tr', { hasText: 'circle' }).innerText();
    const first = await circle();
    await page.getByRole('group', { name: 'Lens' }).getByRole('button').nth(2).click();
    await expect.poll(circle).not.toBe(first);
    await page.goBack();
    await expect.poll(circle).toBe(first);
    await context.close();
  });

  test('a piece moved, dragged, taken off, fixed again, and all undone', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await page.goto(`${site.url}#/rig?open=demo&setup=jetty-shoulder`);
    const standing = page.getByRole('list', { name: 'Pieces' }).getByRole('listitem');
    const tray = page.getByRole('list', { name: 'Waiting for a place' }).getByRole('listitem');
    await page.getByRole('button', { name: 'Side grip with rosette' }).first().click();
    const sheet = page.locator('.piece-sheet');
    const slide = sheet.getByRole('textbox', { name: /^slide of/ });
    const before = await slide.inputValue();
    const placed = await standing.count();
    await slide.fill(String(Number(before) - 20));
    await slide.press('Enter');
    await expect.poll(() => slide.inputValue()).toBe(String(Number(before) - 20));
    const undoing = () => page.getByRole('button', { name: 'Undo' }).getAttribute('title');
    await expect.poll(undoing).toBe('Undo: Side grip with rosette: slide');
    await page.getByRole('button', { name: 'labels' }).click();
    await expect.poll(async () => {
      await page.getByRole('button', { name: 'side', exact: true }).click();
      await page.waitForTimeout(200);
      const { x, y, width, height } = (await page.locator('.rig-label[data-chosen="true"]').boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
      await page.mouse.move(x + width / 2, y + height / 2);
      await page.mouse.down();
      await page.mouse.move(x + width / 2 + 20, y + height / 2);
      await page.mouse.move(x + width / 2 + 30, y + height / 2);
      await page.mouse.up();
      // On a busy machine the answer to a drag may take its time: it is waited for before the next is tried.
      for (let wait = 0; wait < 30 && (await undoing()) !== 'Undo: Side grip with rosette moved'; wait += 1) await page.waitForTimeout(100);
      return undoing();
    }, { timeout: 20_000 }).toBe('Undo: Side grip with rosette moved');
    await saved(page);
    expect(await slide.inputValue()).not.toBe(String(Number(before) - 20));
    // A drag whose answer came late was tried again, and is then undone as well; each undo is answered before the next.
    for (let steps = 0; steps < 5 && (await undoing()) !== 'Nothing to undo'; steps += 1) {
      const [says, now] = [await undoing(), await slide.inputValue()];
      await undo(page);
      await expect.poll(async () => [await undoing(), await slide.inputValue()]).not.toEqual([says, now]);
      await saved(page);
    }
    await expect.poll(() => slide.inputValue()).toBe(before);
    await sheet.getByRole('button', { name: 'Take it off' }).click();
    await expect.poll(() => tray.count()).toBe(1);
    await sheet.getByRole('combobox', { name: 'Fix it to' }).selectOption({ index: 1 });
    await expect.poll(() => standing.count()).toBe(placed);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('without WebGL the rig says so and the rest works', async () => {
    const { page, context } = await freshPage(browser);
    await context.addInitScript('const get = HTMLCanvasElement.prototype.getContext; HTMLCanvasElement.prototype.getContext = function (kind, ...rest) { return /webgl/.test(kind) ? null : get.call(this, kind, ...rest); };');
    await openDemo(page, site.url, 'rig');
    await page.getByText(/no WebGL/).waitFor();
    expect(await page.getByRole('list', { name: 'Pieces' }).getByRole('listitem').count()).toBeGreaterThan(1);
    await context.close();
  });

  test('a keyframe moved changes the shot; a stop too; the simulation runs and can be stopped', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await openDemo(page, site.url, 'pulls');
    await page.getByRole('button', { name: 'She walks to us', exact: true }).click();
    const keyframe = page.getByRole('slider', { name: /^Keyframe 2/ });
    const says = await keyframe.getAttribute('aria-valuetext');
    await keyframe.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => keyframe.getAttribute('aria-valuetext')).not.toBe(says);
    await undo(page);
    await expect.poll(() => keyframe.getAttribute('aria-valuetext')).toBe(says);
    await page.getByRole('button', { name: 'Simulate many takes' }).click();
    await page.locator('.one-shot progress').waitFor();
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByRole('button', { name: 'Simulate many takes' }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('papers are made in the page: a PDF to open, all in one zip', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await openDemo(page, site.url, 'papers');
    await page.getByRole('checkbox').first().waitFor();
    await page.getByRole('combobox', { name: 'Setup', exact: true }).selectOption({ index: 1 });
    await page.getByRole('button', { name: 'Make the papers' }).click();
    const papers = page.locator('.papers-made a');
    await papers.first().waitFor({ timeout: 20_000 });
    expect(await papers.filter({ hasText: '.pdf' }).first().getAttribute('href')).toMatch(/^blob:/);
    expect(await papers.filter({ hasText: '.stl' }).count(), 'a ring made by WebAssembly under the page’s policy').toBe(1);
    const [zip] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save all as one zip' }).click()]);
    expect(readFileSync((await zip.path()) ?? '').subarray(0, 2).toString()).toBe('PK');
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a table of parts is taken in, its bad rows named', async () => {
    const { page, context } = await freshPage(browser);
    await openDemo(page, site.url, 'kit');
    await page.getByLabel('Take parts from a CSV table or an EDID').setInputFiles({ name: 'kit.csv', mimeType: 'text/csv', buffer: Buffer.from('name,kind,massG\nOdd clamp,rod clamp,95\nNo such thing,submarine,3\n') });
    await page.getByRole('alert').getByText(/row 3/).waitFor();
    await page.getByRole('searchbox', { name: 'Search the kit' }).fill('odd clamp');
    await page.getByRole('button', { name: /Odd clamp/ }).waitFor();
    await context.close();
  });

  test('begins a shoot from the five-minute questions', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await page.goto(site.url);
    await page.getByRole('button', { name: 'Begin a shoot' }).click();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.locator('.question').first().waitFor();
    expect((await tally(page, 'good')) + (await tally(page, 'fails'))).toBeGreaterThan(5);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test.each([
    ['half a file', tinyText().slice(0, 700), /could not be opened/],
    ['a newer version', tinyText().replace('"version": 0', '"version": 99'), /newer|version/],
    ['another file altogether', '{"colour": "blue"}', /format/],
  ])('%s is refused in clear words and takes nothing down', async (_, text, words) => {
    const { page, complaints, context } = await freshPage(browser);
    await openTiny(page, text);
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect(await alert.innerText()).toMatch(words);
    expect(await page.getByRole('button', { name: 'Begin a shoot' }).isVisible()).toBe(true);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a shoot the browser will not keep is said not to be saved', async () => {
    const { page, context } = await freshPage(browser);
    await context.addInitScript('IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };');
    await openTiny(page);
    await page.locator('.kept[data-kept="not kept"]').waitFor();
    expect(await page.getByRole('alert').innerText()).toMatch(/storage is full or refused/);
    await context.close();
  });

  const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  const VIEWS = ['asks', 'working', 'rig', 'lines', 'frame', 'pulls', 'swaps', 'kit', 'shoot', 'papers'];

  test.each(['light', 'dark'] as const)('every view is accessible, %s', async (colorScheme) => {
    const { page, context } = await freshPage(browser, { colorScheme, bypassCSP: true });
    await openDemo(page, site.url);
    await page.locator('.asks-what').first().click();
    await page.evaluate(AXE);
    for (const view of VIEWS) {
      await page.evaluate(`location.hash = location.hash.replace(/#\\/\\w+/, '#/${view}')`);
      await page.locator(`.table[data-view="${view === 'asks' || view === 'working' ? 'rig' : view}"]`).waitFor();
      await page.locator('.centre > :not(.waiting-for-view)').first().waitFor();
      if (view === 'lines') await page.locator('.device').first().waitFor();
      const found = await page.evaluate(async (only) => {
        const { violations } = await (globalThis as unknown as { axe: { run: (options: object) => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> } }).axe.run(only ? { runOnly: ['color-contrast'], resultTypes: ['violations'] } : { resultTypes: ['violations'] });
        return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ')}`);
      }, colorScheme === 'dark');
      expect(found, view).toEqual([]);
      // The list of answers has been looked at once; it is the same beside every view.
      if (view === 'asks') await page.getByRole('button', { name: 'asks', exact: true }).click();
    }
    await context.close();
  });

  test.each([['tablet', TABLET], ['phone', PHONE]] as const)('a %s shows every view without scrolling sideways', async (_, viewport) => {
    const { page, complaints, context } = await freshPage(browser, { viewport, hasTouch: true });
    await openDemo(page, site.url);
    await page.locator('.asks-what').first().tap();
    await page.locator('.working h2').waitFor();
    for (const view of VIEWS) {
      await page.evaluate(`location.hash = location.hash.replace(/#\\/\\w+/, '#/${view}')`);
      await page.locator('.left, .centre').first().waitFor();
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth'), view).toBeLessThanOrEqual(0);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('on a phone every view is in sight in the bar, whole', async () => {
    const { page, context } = await freshPage(browser, { viewport: PHONE, hasTouch: true });
    await openDemo(page, site.url);
    const links = page.getByRole('navigation', { name: 'Views' }).getByRole('link');
    expect(await links.allInnerTexts()).toEqual(VIEWS);
    const cut = await links.evaluateAll((all, { width, height }) => all.filter((one) => {
      const { left, right, bottom } = one.getBoundingClientRect();
      return left < 0 || right > width || bottom > height || one.scrollWidth > one.clientWidth;
    }).map((one) => one.textContent), PHONE);
    expect(cut).toEqual([]);
    await links.last().tap();
    await page.locator('[aria-current="page"]', { hasText: 'papers' }).waitFor();
    await context.close();
  });

  test('arrow keys walk the questions, Enter opens the working', async () => {
    const { page, context } = await freshPage(browser);
    await openDemo(page, site.url);
    await page.locator('[data-row]').first().focus();
    await page.keyboard.press('ArrowDown');
    const asked = await page.locator('[data-row]:focus .asked').innerText();
    await page.keyboard.press('Enter');
    await page.locator('.working h2').waitFor();
    expect(asked).toContain(await page.locator('.working h2').innerText());
    await context.close();
  });

  test('imperial shows inches and takes feet', async () => {
    const { page, context } = await freshPage(browser);
    await openDemo(page, site.url, 'shoot');
    await page.getByRole('button', { name: /units; switch to imperial/ }).click();
    const link = page.getByRole('textbox', { name: /^link distance of The jetty, wide/ });
    await link.fill(`60'6"`);
    await link.press('Enter');
    await saved(page);
    await expect.poll(() => link.inputValue()).toBe('60.5');
    await context.close();
  });

  test('the first script is small', () => {
    const html = readFileSync(join(folder, 'index.html'), 'utf8');
    const scripts = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map((match) => match[1] ?? '');
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.reduce((sum, name) => sum + gzipSync(readFileSync(join(folder, name))).length, 0)).toBeLessThan(250_000);
  });

  describe('on a file', () => {
    const openFile = async () => {
      const file = join(mkdtempSync(join(tmpdir(), 'setworthy-')), 'tiny.shoot.json');
      writeFileSync(file, tinyText());
      const serving = await serve({ folder, shoot: new ServedShoot(file, () => new Date()), port: 0 });
      const watched = await freshPage(browser);
      await watched.page.goto(serving.url);
      await watched.page.locator('.table').waitFor();
      return { file, serving, ...watched };
    };
    const retitle = async (page: Page, title: string) => {
      await page.getByRole('textbox', { name: 'Title of the shoot' }).fill(title);
      await page.getByRole('textbox', { name: 'Title of the shoot' }).press('Enter');
    };

    test('saves back to it, and takes in what another program changed', async () => {
      const { file, serving, page, complaints, context } = await openFile();
      await retitle(page, 'Saved to the file');
      await expect.poll(() => readFileSync(file, 'utf8')).toContain('Saved to the file');
      await saved(page);
      writeFileSync(file, readFileSync(file, 'utf8').replace('Saved to the file', 'Changed outside'));
      await expect.poll(() => page.getByRole('textbox', { name: 'Title of the shoot' }).inputValue(), { timeout: 8000 }).toBe('Changed outside');
      expect(complaints).toEqual([]);
      await context.close();
      await serving.close();
    });

    test('overwrites nothing that was changed outside meanwhile', async () => {
      const { file, serving, page, context } = await openFile();
      writeFileSync(file, tinyText().replace('One lens', 'Outside first'));
      await retitle(page, 'Mine');
      await page.getByRole('button', { name: 'Save mine over it' }).waitFor();
      expect(readFileSync(file, 'utf8')).toContain('Outside first');
      await page.getByRole('button', { name: 'Save mine over it' }).click();
      await expect.poll(() => readFileSync(file, 'utf8')).toContain('"Mine"');
      await context.close();
      await serving.close();
    });

    test('the program stopped under the page: said, and nothing lost', async () => {
      const { serving, page, context } = await openFile();
      await serving.close();
      await retitle(page, 'Nobody listens');
      await page.getByRole('alert').waitFor();
      expect(await page.getByRole('alert').innerText()).toMatch(/no longer answers.*kept in this browser/s);
      const [download] = await Promise.all([page.waitForEvent('download'), page.locator('.menu summary').click().then(() => page.getByRole('button', { name: 'Save to a file' }).click())]);
      expect(readFileSync((await download.path()) ?? '', 'utf8')).toContain('Nobody listens');
      await context.close();
    });
  });
});
