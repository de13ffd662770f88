import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, PHONE, type Site, TABLET, builtPage, executablePath, freshPage, launch, openDemo, plainSite } from './browser.ts';

let browser: Browser;
let site: Site;

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What an accessibility checker finds serious on the page as it stands. */
async function barriers(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: { run: (options: object) => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> } }).axe.run({ resultTypes: ['violations'] });
    return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ')}`);
  });
}

describe.skipIf(executablePath === undefined)('forces, swings and swaps in a browser', { timeout: 60_000 }, () => {
  beforeAll(async () => {
    const folder = builtPage();
    [browser, site] = await Promise.all([launch(), plainSite(folder)]);
  }, 120_000);
  afterAll(async () => {
    site?.close();
    await browser?.close();
  });

  const overlay = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
  const openRig = async (page: Page, setup: string) => {
    await page.goto(`${site.url}#/rig?open=demo&setup=${setup}`);
    await page.getByRole('list', { name: 'Pieces' }).waitFor();
  };
  const canvas = (page: Page) => page.locator('.rig-room canvas').screenshot();

  test('forces: arrows come and go, the load is chosen, a piece lists all that acts on it', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await openRig(page, 'jetty-shoulder');
    await page.waitForTimeout(400);
    const bare = await canvas(page);
    await overlay(page, 'forces');
    const panel = page.getByRole('region', { name: 'Forces' });
    const rows = panel.getByRole('row');
    await rows.nth(3).waitFor();
    await expect.poll(() => page.locator('.force-label').count()).toBeGreaterThan(2);
    expect(await panel.innerText()).toMatch(/Estimate, not a load rating/);
    expect((await canvas(page)).equals(bare)).toBe(false);
    const heaviest = await rows.nth(1).innerText();
    await panel.getByLabel('Carried under').selectOption({ label: 'its own weight, looking down' });
    await expect.poll(() => rows.nth(1).innerText()).not.toBe(heaviest);
    await panel.getByLabel('Carried under').selectOption({ index: 5 });
    await panel.getByText(/^The gust pushes with [\d.]+.N in all/).waitFor();
    await panel.getByText(/^\d+ more$/).click();
    await panel.getByRole('row', { name: /^\d+ wind on/ }).first().waitFor();
    await panel.getByLabel('Carried under').selectOption((await panel.locator('option', { hasText: /, one way$/ }).first().getAttribute('value')) ?? '');
    await panel.getByRole('row', { name: /^\d+ teeth on/ }).first().waitFor();
    await panel.getByLabel('Carried under').selectOption({ index: 0 });
    await page.getByRole('list', { name: 'Pieces' }).getByRole('button', { name: 'Old 2× block' }).click();
    await panel.getByRole('heading', { name: 'All that acts on Old 2× block' }).waitFor();
    const amounts = await panel.locator('tbody tr').evaluateAll((all) => all.map((row) => ({ n: Number.parseFloat(row.querySelector('.figure')?.textContent ?? ''), way: row.querySelectorAll('td')[1]?.textContent ?? '' })));
    // What holds it up is what pulls it down, to the digits shown.
    const signed = amounts.reduce((sum, { n, way }) => sum + (way === 'up' ? n : -n), 0);
    expect(Math.abs(signed)).toBeLessThan(0.1);
    await page.getByTitle('Metric or imperial').click();
    await expect.poll(() => panel.locator('tbody tr').first().innerText()).toMatch(/\d.lbf/);
    expect(await panel.locator('tbody').first().innerText()).not.toMatch(/\d\u2009N\b/);
    await overlay(page, 'forces');
    await panel.waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await context.close();
  });

  test.each([['desk', DESK], ['phone', PHONE]] as const)('on a %s no label of an arrow covers another; a row and its arrow point at each other', async (_, viewport) => {
    const { page, context } = await freshPage(browser, { viewport });
    await openRig(page, 'jetty-sticks');
    await overlay(page, 'forces');
    const labels = page.locator('.force-label');
    await expect.poll(() => labels.count()).toBe(6);
    const boxes = await labels.evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON() as { left: number; right: number; top: number; bottom: number }));
    const room = (await page.locator('.rig-room').boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    for (const [at, a] of boxes.entries()) {
      expect(a.left >= room.x && a.right <= room.x + room.width && a.top >= room.y - 1 && a.bottom <= room.y + room.height + 1).toBe(true);
      for (const b of boxes.slice(at + 1)) expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top + 1 || b.bottom <= a.top + 1).toBe(true);
    }
    const pointed = () => page.locator('.force-label[data-pointed="true"] b').innerText();
    await page.getByRole('region', { name: 'Forces' }).getByRole('row').nth(2).getByRole('button').focus();
    await expect.poll(pointed).toBe('2');
    await labels.filter({ hasText: /^3/ }).hover();
    await expect.poll(() => page.locator('.forces tr[data-pointed="true"] b').innerText()).toBe('3');
    await context.close();
  });

  test('a swing plays, is held still and stepped through, and is gone after an edit until asked for', async () => {
    const { page, complaints, context } = await freshPage(browser, { reducedMotion: 'no-preference' });
    await openRig(page, 'jetty-shoulder');
    await overlay(page, 'swing');
    // The worker that owns the shoot is free meanwhile.
    await page.getByRole('textbox', { name: 'Title of the shoot' }).fill('While it swings');
    await page.getByRole('textbox', { name: 'Title of the shoot' }).press('Enter');
    const panel = page.getByRole('region', { name: 'Swing' });
    await panel.getByRole('button', { name: 'Work out the swing' }).click();
    await page.locator('.rig-caption').getByText(/^swings at [\d.]+.Hz; a swing of 1.mm shown \d+× magnified and \d+× slowed$/).waitFor();
    const one = await canvas(page);
    await expect.poll(async () => (await canvas(page)).equals(one)).toBe(false);
    await panel.getByRole('button', { name: 'Hold still' }).click();
    await page.locator('.rig-caption').getByText(/held still$/).waitFor();
    const still = await canvas(page);
    await page.waitForTimeout(300);
    expect((await canvas(page)).equals(still)).toBe(true);
    const slider = panel.getByRole('slider', { name: 'through the swing' });
    await slider.focus();
    await page.keyboard.press('Home');
    const end = await canvas(page);
    await page.keyboard.press('End');
    expect((await canvas(page)).equals(end)).toBe(false);
    const first = await page.locator('.rig-caption').innerText();
    await panel.getByRole('group', { name: 'Swing shown' }).getByRole('button').nth(1).click();
    await expect.poll(() => page.locator('.rig-caption').innerText()).not.toBe(first);
    await page.getByRole('button', { name: 'Undo' }).click();
    await panel.getByRole('button', { name: 'Work out the swing' }).waitFor();
    expect(await page.locator('.rig-caption').count()).toBe(0);
    await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: 'swaps' }).click();
    await page.locator('.swaps-view').waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('nothing plays for whoever asked for less motion; the swing is stepped through', async () => {
    const { page, context } = await freshPage(browser);
    await openRig(page, 'jetty-sticks');
    await overlay(page, 'swing');
    await page.locator('.rig-caption').getByText(/held still$/).waitFor();
    expect(await page.getByRole('button', { name: 'Play', exact: true }).count()).toBe(0);
    expect(await page.getByRole('list', { name: 'How far each piece goes' }).getByRole('listitem').count()).toBe(5);
    await context.close();
  });

  test('a change is chosen with the arrow keys, and its steps follow', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await openDemo(page, `${site.url}`, 'swaps');
    const steps = page.getByRole('region', { name: 'The change, step by step' });
    await steps.getByRole('listitem').first().waitFor();
    const title = await steps.getByRole('heading').innerText();
    const chosen = page.locator('.minutes button[aria-pressed="true"]');
    expect(await chosen.count()).toBe(1);
    await chosen.focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => steps.getByRole('heading').innerText()).not.toBe(title);
    expect(await page.locator('.minutes button:focus').getAttribute('aria-pressed')).toBe('true');
    expect(await page.locator('.minutes button[tabindex="0"]').count()).toBe(1);
    const name = (await chosen.getAttribute('aria-label')) ?? '';
    expect((await steps.getByRole('heading').innerText()).replace(/\s/g, ' ')).toContain((/: (.+)$/.exec(name)?.[1] ?? '').replace(/\s/g, ' '));
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('the order with least work is taken, and undone', async () => {
    const { page, complaints, context } = await freshPage(browser);
    await openDemo(page, `${site.url}`, 'swaps');
    const least = page.locator('.least-work').first();
    await least.waitFor();
    const planned = () => least.locator('.says').innerText();
    const before = await planned();
    const shots = () => page.locator('.swaps-view table').nth(2).locator('tbody th').allInnerTexts();
    const listed = await shots();
    const take = least.getByRole('button', { name: 'Take the shots in this order' });
    await take.click();
    await expect.poll(planned).not.toBe(before);
    await expect.poll(() => take.count()).toBe(0);
    expect(await shots()).not.toEqual(listed);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(planned).toBe(before);
    expect(await shots()).toEqual(listed);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test.each(['light', 'dark'] as const)('forces, swings and swaps are accessible, %s', async (colorScheme) => {
    const { page, context } = await freshPage(browser, { colorScheme, bypassCSP: true });
    await openRig(page, 'jetty-sticks');
    await page.evaluate(AXE);
    await overlay(page, 'forces');
    await page.getByRole('region', { name: 'Forces' }).getByRole('row').nth(3).waitFor();
    expect(await barriers(page), 'forces').toEqual([]);
    await overlay(page, 'swing');
    await page.locator('.rig-caption').waitFor();
    expect(await barriers(page), 'swing').toEqual([]);
    await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: 'swaps' }).click();
    await page.locator('.least-work').first().waitFor();
    expect(await barriers(page), 'swaps').toEqual([]);
    await context.close();
  });

  test.each([['tablet', TABLET], ['phone', PHONE]] as const)('on a %s nothing scrolls sideways', async (_, viewport) => {
    const { page, complaints, context } = await freshPage(browser, { viewport, hasTouch: true });
    const sideways = () => page.evaluate('document.documentElement.scrollWidth - innerWidth + document.querySelector(".centre").scrollWidth - document.querySelector(".centre").clientWidth');
    await openRig(page, 'jetty-shoulder');
    await page.getByRole('button', { name: 'forces', exact: true }).tap();
    await page.getByRole('region', { name: 'Forces' }).getByRole('row').nth(3).waitFor();
    expect(await sideways(), 'forces').toBeLessThanOrEqual(0);
    await page.getByRole('button', { name: 'swing', exact: true }).tap();
    await page.locator('.rig-caption').waitFor();
    expect(await sideways(), 'swing').toBeLessThanOrEqual(0);
    await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: 'swaps' }).tap();
    await page.locator('.minutes button').nth(2).tap();
    await page.locator('.change li').first().waitFor();
    expect(await sideways(), 'swaps').toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
