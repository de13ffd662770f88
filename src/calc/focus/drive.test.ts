import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { drive } from './drive.ts';

const given = {
  stallTorqueNm: 0.3, noLoadRpm: 300, gearRatio: 2, efficiency: 0.9, ringTorqueNm: 0.2, throwDeg: 280, moveDeg: 120, moveTimeS: 0.6,
};

property.prop([
  fc.double({ min: 0, max: 0.99, noNaN: true }),
  fc.double({ min: 0.2, max: 6, noNaN: true }),
  fc.double({ min: 0.3, max: 1, noNaN: true }),
])('the ring gets no more power than the motor gives, by the share that the mesh passes on', (load, gearRatio, efficiency) => {
  const ringTorqueNm = load * given.stallTorqueNm * gearRatio * efficiency;
  const { motorTorqueNm, ringRpm, torqueUse } = drive({ ...given, gearRatio, efficiency, ringTorqueNm });
  // The line, read the other way: the speed at which the motor gives this torque.
  const motorRpm = given.noLoadRpm * (1 - motorTorqueNm / given.stallTorqueNm);
  expect(torqueUse).toBeCloseTo(load, 9);
  expect(ringTorqueNm * ringRpm).toBeCloseTo(efficiency * motorTorqueNm * motorRpm, 9);
});

test('half the no-load speed at half the stall torque, where a motor gives most power', () => {
  const { ringRpm } = drive({ ...given, gearRatio: 1, efficiency: 1, ringTorqueNm: 0.15 });
  expect(ringRpm).toBeCloseTo(150, 9);
});

test('from the stall torque on nothing turns, for ever', () => {
  expect(drive({ ...given, ringTorqueNm: 0.6 })).toMatchObject({ ringRpm: 0, fullThrowS: Infinity, speedUse: Infinity });
  expect(drive({ ...given, ringTorqueNm: 0.6, moveDeg: 0 }).speedUse).toBe(0);
});

test('a mesh that passes on more than it gets is refused', () => {
  expect(drive.answer({ ...given, efficiency: 1.1 })).toMatchObject({ ok: false, faults: [{ path: 'efficiency' }] });
});
