import { describe, expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { dc, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { runtime } from './runtime.ts';

const scene = (watts: number, more: object = {}, lowV = 7, temperatureC = 20) =>
  wiredShoot({ parts: { pack: pack(more), screen: screen({ 'dc-in': dc({ lowV }) }, { draw: { typicalW: watts } }) }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in'] } }, (draft) => {
    draft.assumptions = { 'power.contactOhm': 0, 'power.unfoundCableMm': 1 };
    draft.days.one.temperatureC = temperatureC;
    Object.assign(draft.shots.portrait, { takes: 5, takeMin: 2, resetMin: 5 });
  });

/** An independent fine-step integration: constant power from 16.8 V down to 12 V in a straight line, behind a resistance. */
function hoursByStep({ watts, ah, ohm, endV }: { watts: number; ah: number; ohm: number; endV: number }): number {
  const steps = 200_000;
  let hours = 0;
  for (let at = 0; at < steps; at += 1) {
    const open = 16.8 - (4.8 * (at + 0.5)) / steps;
    const amps = (open - Math.sqrt(open ** 2 - 4 * watts * ohm)) / (2 * ohm);
    if (open - amps * ohm < endV) break;
    hours += ah / steps / amps;
  }
  return hours;
}

describe('run time against a fine-step integration of our own making', () => {
  test.each([[37, 0.09, 20], [80, 0.2, 20], [20, 0.05, 20]])('%d W behind %f Ω', (watts, ohm) => {
    const hours = askOne(runtime, scene(watts, { internalOhm: ohm })).has?.amount.value ?? 0;
    expect(hours / hoursByStep({ watts, ah: 6.8, ohm, endV: 12 })).toBeCloseTo(1, 3);
  });
  test('at 0 °C by the pack\'s own cold figures', () => {
    const hours = askOne(runtime, scene(37, { internalOhm: 0.09, coldOhmRatio: 2.4, coldCapacityShare: 0.83 }, 7, 0)).has?.amount.value ?? 0;
    expect(hours / hoursByStep({ watts: 37, ah: 6.8 * 0.83, ohm: 0.09 * 2.4, endV: 12 })).toBeCloseTo(1, 3);
  });
  test('to where the device drops out', () => {
    const answer = askOne(runtime, scene(37, { internalOhm: 0.09 }, 13.5));
    expect((answer.has?.amount.value ?? 0) / hoursByStep({ watts: 37, ah: 6.8, ohm: 0.09, endV: 13.5 })).toBeCloseTo(1, 2);
    expect(answer.steps?.[2]?.says).toContain('Screen drops out');
  });
});

test('shorter than the longest shot is tight, shorter than a take fails: five takes of 2 min with 5 between are half an hour', () => {
  const [long, middling, short] = [30, 300, 3000].map((watts) => askOne(runtime, scene(watts, { maxA: 500 })));
  expect([long?.verdict, middling?.verdict, short?.verdict]).toEqual(['good', 'tight', 'fails']);
  expect(long?.needs?.amount.value).toBeCloseTo(0.5, 9);
});
