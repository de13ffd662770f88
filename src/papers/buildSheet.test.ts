import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { outsideProgram } from '../../test/outsideTool.ts';
import { testPress } from '../../test/press.ts';
import { type Draft, tinyShoot } from '../../test/tinyShoot.ts';
import { Papers } from './bundle.ts';

const pdftotext = outsideProgram('pdftotext', 'poppler-utils');

/** Three plates on top of the camera: the middle one screwed to both from its inside, or to the upper one from below alone. */
const stacked = (inside: boolean) =>
  tinyShoot((draft: Draft) => {
    const face = (way: 1 | -1, sex: string) => ({ kind: 'thread', class: '1/4-20', sex, at: [0, way * 10, 0], out: [0, way, 0], up: [0, 0, 1] });
    const plate = (name: string, points: object) => ({ name, kind: 'plate', massG: 100, points, solids: [{ shape: 'box', sizeMm: [60, 20, 60] }] });
    Object.assign(draft.kit.parts, {
      lower: plate('Lower plate', { top: face(1, 'female'), foot: { ...face(-1, 'male'), tool: 'hand' } }),
      middle: plate('Middle plate', { foot: inside ? face(-1, 'male') : { ...face(-1, 'male'), tool: 'hand' }, top: face(1, 'male') }),
      upper: plate('Upper plate', { foot: face(-1, 'female') }),
    });
    const { camera } = draft.builds;
    draft.kit.parts.body.points.over = { ...face(1, 'female'), at: [0, 60, 0] };
    Object.assign(camera.pieces, { lower: { of: 'lower' }, middle: { of: 'middle' }, upper: { of: 'upper' } });
    camera.joints = { ...camera.joints, one: { a: 'body/over', b: 'lower/foot' }, two: { a: 'lower/top', b: 'middle/foot' }, three: { a: 'middle/top', b: 'upper/foot' } };
  });

async function sheetOf(inside: boolean): Promise<string> {
  const papers = new Papers(stacked(inside), await testPress(), {});
  const step = papers.steps.find((one) => JSON.stringify(one).includes('build-sheet'));
  const [file] = step === undefined ? [] : await papers.make(step);
  const folder = mkdtempSync(join(tmpdir(), 'build-sheet-'));
  writeFileSync(join(folder, 'sheet.pdf'), file?.bytes ?? '');
  const words = pdftotext.run(['-layout', join(folder, 'sheet.pdf'), '-']);
  rmSync(folder, { recursive: true });
  return words.replaceAll(/\s+/g, ' ');
}

test.skipIf(pdftotext.missing)('an order that the check calls impossible is not printed as one; what can be put together apart is', async () => {
  const impossible = await sheetOf(true);
  expect(impossible).toContain('No order puts it together with every screw within reach');
  expect(impossible).toMatch(/covers the screw between (Middle plate and Upper plate|Lower plate and Middle plate)/);
  expect(impossible).not.toContain('step by step');
  const possible = await sheetOf(false);
  expect(possible).toContain('step by step');
  expect(possible).not.toContain('No order');
}, 60_000);
