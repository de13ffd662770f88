import { inflateSync } from 'node:zlib';
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { testPress } from '../../test/press.ts';
import { exampleShoot } from '../../test/tinyShoot.ts';
import { Papers } from './bundle.ts';
import { type FdlRounding, fdlFrame, fdlRound, wholeAspect } from './frames/fdlRound.ts';
import { writeFdl } from './frames/writeFdl.ts';
import { frameLines as drawn, inRaster } from './frames/framePicture.ts';
import { writePng } from './frames/writePng.ts';

const reference = (name: string): unknown => JSON.parse(readFileSync(new URL(`../../reference/fdl/${name}`, import.meta.url), 'utf8'));

describe('rounding and frames, against the vectors published with the ASC Framing Decision List', () => {
  const { modes, even, rows } = reference('rounding.json') as { modes: FdlRounding['mode'][]; even: FdlRounding['even'][]; rows: number[][] };
  test(`${rows.length * 6} roundings`, () => {
    for (const [value = 0, ...wanted] of rows) even.forEach((to, e) => modes.forEach((mode, m) => expect(fdlRound(value, { even: to, mode }), `${value} ${to} ${mode}`).toBe(wanted[e * 3 + m])));
    // The handbook's own examples of the specification.
    expect([fdlRound(1608.75, { even: 'even', mode: 'round' }), fdlRound(1608.75, { even: 'even', mode: 'up' }), fdlRound(1608.75, { even: 'whole', mode: 'round' })]).toEqual([1608, 1610, 1609]);
  });

  interface Vector { label: string; canvas: [number, number]; squeeze: number; aspect: [number, number]; protection: number; even: FdlRounding['even']; mode: FdlRounding['mode']; frame: number[]; protected?: number[] }
  test.each(reference('framing.json') as Vector[])('$label', ({ canvas, squeeze, aspect, protection, even: to, mode, frame, protected: guarded }) => {
    const found = fdlFrame({ canvasWidthPx: canvas[0], canvasHeightPx: canvas[1], squeeze, aspectWidth: aspect[0], aspectHeight: aspect[1], protection, rounding: { even: to, mode } });
    const list = ({ widthPx, heightPx, xPx, yPx }: typeof found.frame) => [widthPx, heightPx, xPx, yPx];
    expect(list(found.frame)).toEqual(frame);
    if (guarded !== undefined) expect(list(found.protected)).toEqual(guarded);
  });

  test('the 2:1 case of the specification with protection 0.1', () => {
    const { frame, protected: guarded } = fdlFrame({ canvasWidthPx: 4448, canvasHeightPx: 3096, squeeze: 1, aspectWidth: 2, aspectHeight: 1, protection: 0.1, rounding: { even: 'even', mode: 'up' } });
    expect([guarded.widthPx, guarded.heightPx, guarded.xPx, guarded.yPx]).toEqual([4448, 2224, 0, 436]);
    expect([frame.widthPx, frame.heightPx, frame.xPx, frame.yPx]).toEqual([4004, 2002, 222, 547]);
  });

  property.prop([fc.integer({ min: 16, max: 12_000 }), fc.integer({ min: 16, max: 12_000 }), fc.double({ min: 1, max: 2.5, noNaN: true }), fc.double({ min: 0.5, max: 5, noNaN: true }), fc.double({ min: 0, max: 0.5, noNaN: true })])(
    'a frame never leaves its canvas, whatever the canvas', (canvasWidthPx, canvasHeightPx, squeeze, aspect, protection) => {
      const whole = wholeAspect(aspect);
      const { frame, protected: guarded } = fdlFrame({ canvasWidthPx, canvasHeightPx, squeeze, aspectWidth: whole.width, aspectHeight: whole.height, protection, rounding: { even: 'even', mode: 'up' } });
      expect(guarded.widthPx).toBeLessThanOrEqual(canvasWidthPx);
      expect(guarded.heightPx).toBeLessThanOrEqual(canvasHeightPx);
      expect(frame.xPx).toBeGreaterThanOrEqual(guarded.xPx);
      expect(frame.yPx).toBeGreaterThanOrEqual(guarded.yPx);
    });
});

describe('the decision list of the demo', async () => {
  const papers = new Papers(exampleShoot('demo'), await testPress(), { kinds: ['frame-lines'] });
  const made = (await Promise.all(papers.steps.map((step) => papers.make(step)))).flat();
  // The schema's formats are left to the pattern below.
  const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(reference('ascfdl.schema.json') as object);

  test('validates against the schema of the standard; every reference leads somewhere', () => {
    const lists = made.filter(({ path }) => path.endsWith('.fdl'));
    expect(lists.length).toBeGreaterThan(3);
    for (const { bytes } of lists) {
      const fdl = JSON.parse(new TextDecoder().decode(bytes)) as { uuid: string; default_framing_intent: string; framing_intents: { id: string }[]; contexts: { canvases: { id: string; source_canvas_id: string; framing_decisions: { id: string; framing_intent_id: string }[] }[] }[] };
      expect(validate(fdl), JSON.stringify(validate.errors)).toBe(true);
      expect(fdl.uuid).toMatch(/^[\da-f]{8}-[\da-f]{4}-8[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
      const intents = fdl.framing_intents.map(({ id }) => id);
      expect(intents).toContain(fdl.default_framing_intent);
      for (const canvas of fdl.contexts.flatMap(({ canvases }) => canvases)) {
        expect(canvas.source_canvas_id).toBe(canvas.id);
        for (const decision of canvas.framing_decisions) {
          expect(intents).toContain(decision.framing_intent_id);
          expect(decision.id).toBe(`${canvas.id}-${decision.framing_intent_id}`);
        }
      }
    }
  });

  test('a list without canvases is still one', () => {
    expect(validate(JSON.parse(writeFdl({ label: 'x', context: 'y', canvases: [] })))).toBe(true);
  });

  test('the frame in the camera’s picture, by hand: 4352 × 3626 at 2×, 2.39 with a twentieth kept free', () => {
    // Protected: 3626·2.39/2 = 4333.07 → 4334 × 3626 at (9, 0). Frame: 4334·0.95 = 4117.3 → 4118, 3626·0.95 = 3444.7 → 3446, at (117, 90).
    const png = made.find(({ path }) => path.endsWith('jetty-sticks/frame-lines/camera-4352x3626-2x-squeezed.png'));
    const { width, height, inkAt } = decoded(png?.bytes ?? new Uint8Array());
    expect([width, height]).toEqual([4352, 3626]);
    const middle = 1200; // clear of the cross
    expect([inkAt(116, middle), inkAt(117, middle), inkAt(117 + 4118 - 1, middle), inkAt(117 + 4118, middle)]).toEqual([1, 0, 0, 1]);
    expect([inkAt(1000, 89), inkAt(1000, 90), inkAt(1000, 90 + 3446 - 1), inkAt(1000, 90 + 3446)]).toEqual([1, 0, 0, 1]);
  });
});

test('a squeezed canvas in a 1920 × 1080 raster fills its height, de-squeezed its width', () => {
  const canvas = { widthPx: 4352, heightPx: 3626 };
  const whole = { frame: { xPx: 0, yPx: 0, ...canvas }, protected: undefined };
  // 1080·4352/3626 = 1296.2 wide, 311.9 from the left; widened: 1920·3626/8704 = 799.9 high, 140.1 from the top.
  expect(inRaster(canvas, whole, { widthPx: 1920, heightPx: 1080 }, 1).picture).toEqual({ xPx: 312, yPx: 0, widthPx: 1296, heightPx: 1080 });
  expect(inRaster(canvas, whole, { widthPx: 1920, heightPx: 1080 }, 2).picture).toEqual({ xPx: 0, yPx: 140, widthPx: 1920, heightPx: 800 });
});

test('a frame on the edge of its raster does not break the picture', () => {
  const box = { xPx: 0, yPx: 0, widthPx: 33, heightPx: 17 };
  const png = writePng(drawn({ title: 'edge', widthPx: 33, heightPx: 17, frame: box, protected: box, picture: box }));
  expect(decoded(png)).toMatchObject({ width: 33, height: 17 });
});

/** Reads our kind of PNG back with Node's own zlib: two bits a pixel, no filter. */
function decoded(bytes: Uint8Array): { width: number; height: number; inkAt: (x: number, y: number) => number } {
  const png = Buffer.from(bytes);
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const at = png.indexOf('IDAT');
  const raw = inflateSync(png.subarray(at + 4, at + 4 + png.readUInt32BE(at - 4)));
  const stride = Math.ceil(width / 4) + 1;
  expect(raw).toHaveLength(stride * height);
  return { width, height, inkAt: (x, y) => ((raw[y * stride + 1 + (x >> 2)] ?? 0) >> (6 - 2 * (x % 4))) & 3 };
}
