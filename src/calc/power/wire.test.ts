import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { outsideProgram } from '../../../test/outsideTool.ts';
import { FLEXIBLE_CONDUCTORS, STRANDING_SHARE, WIRE_GAUGES, wireGauge } from '../../standards/wireGauges.ts';
import { conductor } from './conductor.ts';
import { wire } from './wire.ts';

const units = outsideProgram('units');

// Printed table, ohm for 1000 ft of solid copper at 20 °C; held to 0.1 %.
test.each([[18, 6.385], [20, 10.15], [22, 16.14], [24, 25.67], [26, 40.81], [28, 64.9]])('AWG %i has %f ohm in 1000 ft', (awg, printed) => {
  const { resistanceOhm } = wire({ awg, lengthM: 304.8, temperatureC: 20 });
  expect(Math.abs(resistanceOhm / printed - 1)).toBeLessThan(0.001);
});

describe.skipIf(units.missing)('against GNU units', () => {
  test.each(WIRE_GAUGES.map(({ awg }) => awg))('wire gauge %i', (awg) => {
    const { diameterMm, areaMm2 } = wire({ awg, lengthM: 1, temperatureC: 20 });
    expect(diameterMm / Number(units.run(['-t', '-o', '%.12g', `wiregauge(${awg})`, 'mm']))).toBeCloseTo(1, 9);
    expect(areaMm2 / Number(units.run(['-t', '-o', '%.12g', `circlearea(wiregauge(${awg})/2)`, 'mm^2']))).toBeCloseTo(1, 9);
  });
});

test('warm copper: R(60)/R(20) is 1.1572 (IEC 60028)', () => {
  const at = (temperatureC: number) => wire({ awg: 20, lengthM: 2, temperatureC }).resistanceOhm;
  expect(at(60) / at(20)).toBeCloseTo(1.1572, 4);
});

test('flexible cable of IEC 60228 class 5 has 13 to 16 % more than its nominal area would', () => {
  for (const { areaMm2, mostOhmPerKm } of FLEXIBLE_CONDUCTORS) {
    const more = mostOhmPerKm / conductor({ areaMm2, lengthM: 1000, temperatureC: 20 }).resistanceOhm - 1;
    expect(more).toBeGreaterThan(0.125);
    expect(more).toBeLessThan(0.165);
  }
});

test('six gauges up halve the diameter, near enough (a rule of the trade), and carry at least twice the current', () => {
  expect(wire({ awg: 18, lengthM: 1, temperatureC: 20 }).diameterMm / wire({ awg: 24, lengthM: 1, temperatureC: 20 }).diameterMm).toBeCloseTo(2, 1);
  expect(wireGauge(18)?.practiceA.low).toBeGreaterThan(2 * (wireGauge(24)?.practiceA.low ?? Infinity));
  expect(wireGauge(17)).toBeUndefined();
  expect(STRANDING_SHARE.low).toBeLessThan(STRANDING_SHARE.high);
});

property.prop([fc.integer({ min: -3, max: 50 }), fc.double({ min: 0.1, max: 100, noNaN: true })])('gauge and area say the same', (awg, lengthM) => {
  const byGauge = wire({ awg, lengthM, temperatureC: 35 });
  expect(conductor({ areaMm2: byGauge.areaMm2, lengthM, temperatureC: 35 }).resistanceOhm).toBeCloseTo(byGauge.resistanceOhm, 12);
});

test('a length of nothing has no resistance; half a gauge is a fault', () => {
  expect(wire({ awg: 18, lengthM: 0, temperatureC: 20 }).resistanceOhm).toBe(0);
  expect(wire.answer({ awg: 18.5, lengthM: 1, temperatureC: 20 })).toMatchObject({ ok: false, faults: [{ path: 'awg' }] });
});
