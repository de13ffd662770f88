import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Papers } from '../../src/papers/bundle.ts';
import { readMeasured, takeMeasured } from '../../src/shoot/import/measured.ts';
import { testPress } from '../press.ts';
import { exampleShoot } from '../tinyShoot.ts';
import { executablePath, launch } from './browser.ts';

const folder = mkdtempSync(join(tmpdir(), 'phone-'));
let browser: Browser;

describe.skipIf(executablePath === undefined)('the phone page in a browser, 380 px wide, offline', { timeout: 60_000 }, () => {
  beforeAll(async () => {
    const papers = new Papers(exampleShoot('demo'), await testPress(), { kinds: ['phone'] });
    const [file] = await papers.make(papers.steps[0] as (typeof papers.steps)[number]);
    writeFileSync(join(folder, 'phone.html'), file?.bytes ?? new Uint8Array());
    browser = await launch();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test('shows a setup, keeps ticks and figures over a reload, and gives them back as a file that a shoot takes in', async () => {
    const context = await browser.newContext({ viewport: { width: 380, height: 780 }, offline: true, acceptDownloads: true });
    const page = await context.newPage();
    const complaints: string[] = [];
    const asked: string[] = [];
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(pathToFileURL(join(folder, 'phone.html')).href);

    await page.locator('#setup').selectOption('jetty-shoulder');
    await page.getByRole('heading', { name: 'Checklist' }).filter({ visible: true }).waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(380);
    const watts = page.locator('section:not([hidden]) input[data-figure="kit/parts/body-a/draw/typicalW"]');
    await watts.fill('29,5');
    const box = page.locator('section:not([hidden]) input[type=checkbox]').first();
    await box.check();
    const bad = page.locator('section:not([hidden]) input[data-figure="kit/parts/monitor-op/draw/typicalW"]');
    await bad.fill('lots');
    await page.getByRole('status').filter({ hasText: 'is not a number' }).waitFor();

    await page.reload();
    await page.locator('#setup').selectOption('jetty-shoulder');
    expect(await watts.inputValue()).toBe('29,5');
    expect(await box.isChecked()).toBe(true);
    expect(await page.getByRole('status').innerText()).toBe('1 tick, 1 figure');

    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Give back' }).click()]);
    const read = readMeasured(readFileSync(await download.path(), 'utf8'));
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const { shoot, figures, ticks, faults } = takeMeasured(exampleShoot('demo'), read.value);
    expect({ figures, ticks, faults }).toEqual({ figures: 1, ticks: 1, faults: [] });
    expect(shoot.kit.parts['body-a']?.draw?.typicalW).toMatchObject({ value: 29.5, basis: 'measured' });
    expect(Object.keys(shoot.ticks ?? {})[0]).toMatch(/^jetty-shoulder\|/);
    expect(asked.every((url) => url.startsWith('file:') || url.startsWith('data:') || url.startsWith('blob:')), asked.join(' ')).toBe(true);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
