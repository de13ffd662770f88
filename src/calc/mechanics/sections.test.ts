import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { MATERIALS, material } from '../../standards/materials.ts';
import { THREADS } from '../../standards/threads.ts';
import { cantilever } from './cantilever.ts';
import { drag } from './drag.ts';
import { expansion } from './expansion.ts';
import { rodClamp } from './rodClamp.ts';
import { roundBar } from './roundBar.ts';
import { threadStress } from './threadStress.ts';

test('the stress areas of the table of threads are those of the standards\' formulas', () => {
  for (const { series, diameterMm, pitchMm, stressAreaMm2, name } of THREADS) {
    const { areaMm2 } = threadStress({ series, diameterMm, pitchMm, forceN: 0 });
    expect(Math.abs(areaMm2 / stressAreaMm2 - 1), name).toBeLessThan(0.004);
  }
});

test('95 mm over 40 K: aluminium 0.090, ABS 0.280 mm', () => {
  const growth = (name: string) => expansion({ lengthMm: 95, warmerC: 40, expansionPerMillionK: material(name)!.expansionPerMillionK }).growthMm;
  expect(growth('aluminium')).toBeCloseTo(0.09, 3);
  expect(growth('ABS')).toBeCloseTo(0.28, 3);
});

test('the moduli of metals obey G = E/2(1 + ν) with ν between 0.25 and 0.37', () => {
  for (const { name, youngGPa, shearGPa, within } of MATERIALS) {
    const poisson = youngGPa / (2 * shearGPa) - 1;
    if (within <= 0.05) expect([name, poisson > 0.25 && poisson < 0.37]).toEqual([name, true]);
  }
});

const bore = fc.double({ min: 0, max: 0.95, noNaN: true });

property.prop([fc.double({ min: 2, max: 40, noNaN: true }), bore])('a tube is the bar less the bar that was bored out', (outerMm, share) => {
  const of = (d: number, innerMm: number) => roundBar({ outerMm: d, innerMm, lengthMm: 100, densityKgPerM3: 7850 });
  const innerMm = outerMm * share;
  const tube = of(outerMm, innerMm);
  const [whole, hole] = [of(outerMm, 0), share > 0.01 ? of(innerMm, 0) : { bendingMm4: 0, massG: 0 }];
  expect((whole.bendingMm4 - hole.bendingMm4) / tube.bendingMm4).toBeCloseTo(1, 6);
  if (share > 0.01) expect((whole.massG - hole.massG) / tube.massG).toBeCloseTo(1, 9);
  expect(tube.shearAreaMm2).toBeLessThan(tube.areaMm2);
});

test('a force sags a bar by what a moment leans it (Maxwell: both are L²/2EI)', () => {
  const bar = { lengthMm: 250, outerMm: 19, innerMm: 0, youngGPa: 71 };
  const byForce = cantilever({ ...bar, forceN: 7, momentNmm: 0 }).slopeDeg * (Math.PI / 180);
  const byMoment = cantilever({ ...bar, forceN: 0, momentNmm: 7 }).deflectionMm;
  expect(byForce).toBeCloseTo(byMoment, 12);
  expect(cantilever.answer({ ...bar, innerMm: 19, forceN: 1, momentNmm: 0 })).toMatchObject({ ok: false, faults: [{ path: 'innerMm' }] });
});

const ON_A_ROD = { friction: 0.15, rodDiameterMm: 15, contact: 'two lines' } as const;

test('a clamp that fits all round holds π/2 times as much, and two screws twice', () => {
  const given = { torqueNm: 1, screwDiameterMm: 4, nutFactor: 0.2, screws: 1, leverRatio: 1, ...ON_A_ROD } as const;
  expect(rodClamp({ ...given, contact: 'all round' }).slipNm / rodClamp(given).slipNm).toBeCloseTo(Math.PI / 2, 12);
  expect(rodClamp({ ...given, screws: 2 }).slipNm).toBe(2 * rodClamp(given).slipNm);
});

test('twice the wind pushes four times as hard', () => {
  const wind = { speedMps: 8, areaMm2: 9e4, dragCoefficient: 1.05, airDensityKgPerM3: 1.225 };
  expect(drag({ ...wind, speedMps: 16 }).forceN).toBe(4 * drag(wind).forceN);
});

test('a pitch that leaves no core is named', () => {
  const coarse = { series: 'inch', diameterMm: 6.35, pitchMm: 20, forceN: 0 };
  expect(threadStress.answer(coarse)).toMatchObject({ ok: false, faults: [{ path: 'pitchMm' }] });
});
