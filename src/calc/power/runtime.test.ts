import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { chemistry } from '../../standards/batteryClasses.ts';
import { runtime } from './runtime.ts';
import { typicalPack } from './typicalPack.ts';

type Given = Parameters<typeof runtime>[0];

/** The same discharge, independently: charge counted down in 200 000 small steps by the midpoint rule, with Ohm's law at each. */
function byFineSteps({ openCircuitV, capacityAh, internalOhm, loadW, cutoffV }: Given): { hours: number; endSoc: number } {
  const points = openCircuitV.toSorted(([a], [b]) => a - b);
  const voltsAt = (soc: number) => {
    const i = Math.max(1, points.findIndex(([at]) => at >= soc));
    const [[lowSoc, lowV], [highSoc, highV]] = [points[i - 1] ?? [0, 0], points[i] ?? [1, 0]];
    return lowV + ((highV - lowV) * (soc - lowSoc)) / (highSoc - lowSoc);
  };
  const current = (soc: number) => {
    const v = voltsAt(soc);
    const square = v * v - 4 * loadW * internalOhm;
    if (square < 0) return undefined;
    const loadV = (v + Math.sqrt(square)) / 2;
    return loadV < cutoffV ? undefined : loadW / loadV;
  };
  const steps = 200_000;
  let hours = 0;
  for (let i = 0; i < steps; i += 1) {
    const amps = current(1 - (i + 0.5) / steps);
    if (amps === undefined) return { hours, endSoc: 1 - i / steps };
    hours += capacityAh / steps / amps;
  }
  return { hours, endSoc: 0 };
}

const plate: Given = { openCircuitV: chemistry('lithium-ion')?.openCircuitV.map(([soc, v]) => [soc, v * 4]) ?? [], capacityAh: 6.8,
  internalOhm: 0.12, loadW: 60, cutoffV: 12 };

test.each([
  ['a camera on a plate pack', plate],
  ['the same, cold', { ...plate, internalOhm: 0.45, capacityAh: 6 }],
  ['near the most it can feed', { ...plate, loadW: 330, cutoffV: 0 }],
  ['to empty', { ...plate, loadW: 5, cutoffV: 9 }],
  ['no resistance', { ...plate, internalOhm: 0 }],
  ['a voltage that stays', { ...plate, openCircuitV: [[0, 14.4], [0.5, 14.4], [1, 14.4000001]] } satisfies Given],
  ['a voltage that rises on the way', { ...plate, openCircuitV: [[0, 12.5], [0.4, 15], [0.6, 14.2], [1, 16.4]] } satisfies Given],
])('%s: the closed form meets a fine-step integration', (_, given) => {
  const [exact, stepped] = [runtime(given), byFineSteps(given)];
  expect(exact.hours / stepped.hours).toBeCloseTo(1, 4);
  expect(exact.endSoc).toBeCloseTo(stepped.endSoc, 4);
});

const curve = fc.array(fc.tuple(fc.double({ min: 0.02, max: 0.98, noNaN: true }), fc.double({ min: 10, max: 17, noNaN: true })), { maxLength: 6 })
  .map((inner): [number, number][] => [[0, 10], ...inner.filter(([soc], i) => inner.findIndex(([other]) => other === soc) === i), [1, 16.8]]);
property.prop([curve, fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 1, max: 200, noNaN: true }),
  fc.double({ min: 0, max: 13, noNaN: true })], { numRuns: 25 })(
  'any curve, resistance and load: closed form and fine steps agree',
  (openCircuitV, internalOhm, loadW, cutoffV) => {
    const given: Given = { openCircuitV, capacityAh: 5, internalOhm, loadW, cutoffV };
    const [exact, stepped] = [runtime(given), byFineSteps(given)];
    expect(Math.abs(exact.hours - stepped.hours)).toBeLessThan(1e-3 * stepped.hours + 1e-3);
  },
);

test('a load that no voltage can feed lasts for no time; no load, for ever; an unknown end of the curve is a fault', () => {
  expect(runtime({ ...plate, loadW: 5000 })).toEqual({ hours: 0, endSoc: 1 });
  expect(runtime({ ...plate, loadW: 0 })).toEqual({ hours: Infinity, endSoc: 1 });
  expect(runtime({ ...plate, cutoffV: 17 })).toEqual({ hours: 0, endSoc: 1 });
  expect(runtime.answer({ ...plate, openCircuitV: [[0.1, 12], [1, 16]] })).toMatchObject({ ok: false, faults: [{ path: 'openCircuitV' }] });
  expect(runtime.answer({ ...plate, openCircuitV: [[0, 12], [0, 13], [1, 16]] })).toMatchObject({ ok: false, faults: [{ path: 'openCircuitV' }] });
});

test('cold costs hours twice: less charge, and cut-off sooner', () => {
  const at = (temperatureC: number) => {
    const { openCircuitV, capacityAh, internalOhm, cutoffV } = typicalPack({ chemistry: 'lithium-ion', nominalV: 14.4, capacityAh: 6.8,
      temperatureC });
    return runtime({ openCircuitV, capacityAh, internalOhm, cutoffV, loadW: 60 });
  };
  expect(at(20).hours).toBeGreaterThan(at(0).hours);
  expect(at(-15).endSoc).toBeGreaterThan(at(20).endSoc);
  // Common practice: a 98 Wh pack at 60 W lasts about an hour and a half.
  expect(at(20).hours).toBeGreaterThan(1.3);
  expect(at(20).hours).toBeLessThan(1.7);
});

test('bounds of a typical pack hold its value between them', () => {
  for (const temperatureC of [-30, -15, 0, 20, 35, 60]) {
    const { internalOhm, internalOhmLow, internalOhmHigh } = typicalPack({ chemistry: 'lithium iron phosphate', nominalV: 12.8, capacityAh: 7,
      temperatureC });
    expect(internalOhmLow).toBeLessThan(internalOhm);
    expect(internalOhm).toBeLessThan(internalOhmHigh);
  }
});
