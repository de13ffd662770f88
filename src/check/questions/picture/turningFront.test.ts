import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { turningFront } from './turningFront.ts';

/** The tiny shoot with a front that turns or travels, and things on it. */
const front = (moves: { turnsDeg: number; travelMm: number }, things: { box?: 'clamp' | 'rods'; polariser?: 'round' | 'tray'; motorFaceMm?: number }) => tinyShoot((draft: Draft) => {
  const { parts } = draft.kit;
  parts.focuser.front = { ...parts.focuser.front, ...moves };
  parts.focuser.focus = { ...parts.focuser.focus, gearTravelMm: moves.travelMm };
  const { pieces } = draft.builds.camera;
  if (things.box !== undefined) {
    parts.box = { name: 'Box', kind: 'matte box', matteBox: { fit: things.box, openings: {} } };
    pieces.box = { of: 'box' };
  }
  if (things.polariser !== undefined) {
    parts.pol = { name: 'Polariser', kind: 'filter', filter: { kind: 'polariser', ...(things.polariser === 'round' ? { diameterMm: 95 } : { widthMm: 100, heightMm: 140 }) } };
    pieces.pol = { of: 'pol' };
  }
  if (things.motorFaceMm !== undefined) {
    parts.motor = { name: 'Motor', kind: 'motor', motor: { stallTorqueNm: 0.3, noLoadRpm: 100, gear: { module: 0.8, teeth: 40, faceMm: things.motorFaceMm } } };
    pieces.motor = { of: 'motor' };
  }
});

test('a clamped box turns with a turning front, one on rods does not; a travelling front wants room', () => {
  expect(askOne(turningFront, front({ turnsDeg: 90, travelMm: 0 }, { box: 'clamp' })).verdict).toBe('fails');
  expect(askAll(turningFront, front({ turnsDeg: 90, travelMm: 0 }, { box: 'rods' }))).toEqual([]);
  expect(askOne(turningFront, front({ turnsDeg: 0, travelMm: 4 }, { box: 'rods' }), 'matte box')).toMatchObject({ verdict: 'tight', says: expect.stringContaining('inside Box') as string });
});

test('a polariser lets back the square of the sine of its turn over the shot', () => {
  // From 2.4 to 1.5 m the ring goes from about 122° to 185° of 270°; Malus’s law.
  const answer = askOne(turningFront, front({ turnsDeg: 90, travelMm: 0 }, { polariser: 'round' }));
  const turn = Number(answer.steps?.[0]?.amount?.value);
  expect(turn).toBeGreaterThan(90 * (60 / 270));
  expect(turn).toBeLessThan(90 * (67 / 270));
  expect(answer.needs?.amount.value).toBeCloseTo(Math.sin((turn * Math.PI) / 180) ** 2, 12);
  expect(answer.verdict).toBe('fails');
});

test('a polariser in a tray of a box on rods stays', () => {
  expect(askAll(turningFront, front({ turnsDeg: 90, travelMm: 0 }, { polariser: 'tray', box: 'rods' }))).toEqual([]);
});

test('gears set at the middle of the travel share what is left of both faces at its ends', () => {
  expect(askOne(turningFront, front({ turnsDeg: 0, travelMm: 12 }, { motorFaceMm: 6 }))).toMatchObject({ verdict: 'fails', has: { amount: { value: 2 } }, needs: { amount: { value: 3 } } });
  expect(askOne(turningFront, front({ turnsDeg: 0, travelMm: 4 }, { motorFaceMm: 6 }))).toMatchObject({ verdict: 'good', has: { amount: { value: 6 } } });
});
