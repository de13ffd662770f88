import { describe, expect, test } from 'vitest';
import { outsideProgram } from '../../test/outsideTool.ts';
import { testPress } from '../../test/press.ts';
import { inkInRow, rasterised } from '../../test/rasterised.ts';
import { exampleShoot } from '../../test/tinyShoot.ts';
import { Asking } from '../check/Asking.ts';
import { Ledger } from '../shoot/ledger/Ledger.ts';
import { disc, rule, strip, STRIP_MM } from './focus/drawStrip.ts';
import { markedSurface } from './focus/focusMarks.ts';
import { writePdf } from './pdf/writePdf.ts';

const poppler = outsideProgram('pdftoppm', 'poppler-utils');
const FACTS = { title: 'test', subject: 'test', date: '2026-11-25' };
const DPI = 600; // a pixel is 0.042 mm

describe.skipIf(poppler.missing)('lengths on paper, as poppler rasterises them', () => {
  test('the rule is 100 mm long, within 0.2', async () => {
    const { fonts } = await testPress();
    const page = rasterised(writePdf([{ widthMm: 210, heightMm: 60, marks: rule(30, 20) }], fonts, FACTS), 1, DPI);
    const ticks = inkInRow(page, 16.6);
    expect(ticks).toHaveLength(11);
    expect((ticks.at(-1) ?? 0) - (ticks[0] ?? 0)).toBeGreaterThan(99.8);
    expect((ticks.at(-1) ?? 0) - (ticks[0] ?? 0)).toBeLessThan(100.2);
    expect(page.width).toBe(Math.round((210 / 25.4) * DPI));
  });

  // The demo's 50 mm: marks at 0°, 39°, 90°, 171° and 300° of ring; its hand wheel turns 320° for the throw and is 46 mm across.
  const TAPED_DEG = [0, 39, 90, 171, 300];
  const alongMm = (ringDeg: number) => (ringDeg / 300) * (320 / 360) * Math.PI * 46;

  test.each([false, true])('taped marks stand where the throw of the wheel puts them; mirrored: %s', async (mirrored) => {
    const { fonts } = await testPress();
    const asking = new Asking(new Ledger(exampleShoot('demo')));
    const surface = markedSurface(asking, 'jetty-sticks', 'set-50', 'metric');
    const marks = strip(fonts, surface, 'metric', { x: 20, y: 10, fromDeg: 0, toDeg: surface.turnDeg, mirrored });
    const page = rasterised(writePdf([{ widthMm: 210, heightMm: 40, marks }], fonts, FACTS), 1, DPI);
    // Taped marks alone reach below 3 mm; the edges of the strip stand on the first and the last.
    const found = inkInRow(page, 10 + 3.6, 19, 20 + alongMm(300) + 1);
    const wanted = TAPED_DEG.map((deg) => 20 + (mirrored ? alongMm(300) - alongMm(deg) : alongMm(deg))).toSorted((a, b) => a - b);
    expect(found).toHaveLength(wanted.length);
    found.forEach((mm, at) => expect(Math.abs(mm - (wanted[at] ?? 0))).toBeLessThan(0.2));
    expect(STRIP_MM).toBeGreaterThan(10);
  });

  test('the disc is as wide as the wheel', async () => {
    const { fonts } = await testPress();
    const surface = markedSurface(new Asking(new Ledger(exampleShoot('demo'))), 'jetty-sticks', 'set-50', 'metric');
    const page = rasterised(writePdf([{ widthMm: 80, heightMm: 80, marks: disc(fonts, surface, 'metric', { x: 40, y: 40 }) }], fonts, FACTS), 1, DPI);
    const across = inkInRow(page, 40);
    expect(Math.abs((across.at(-1) ?? 0) - (across[0] ?? 0) - 46)).toBeLessThan(0.2);
  });
});

test('a close-up lens moves the marks of its shot along the ring', () => {
  const surface = markedSurface(new Asking(new Ledger(exampleShoot('demo'))), 'jetty-sticks', 'set-50', 'metric');
  const shot = surface.shots.find(({ shot: id }) => id === '4');
  // 0.8 m with +1 dpt in front lies far beyond the bare close focus of 0.9 m, yet inside the scale.
  expect(shot?.marks.map(({ distanceMm }) => distanceMm)).toEqual([800, 720]);
  for (const { turnDeg } of shot?.marks ?? []) expect(turnDeg).toBeLessThan(surface.turnDeg);
});
