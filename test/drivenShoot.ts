import { exampleShoot, type Draft } from './tinyShoot.ts';
import type { Shoot } from '../src/shoot/schema/shoot.ts';

/**
 * The smallest example with a motor on its focuser, a receiver and a hand unit. Every figure is round, so that sums can be done on
 * paper: the scale is a straight line over one over the distance (270° at 1 m), nothing is lost in the mesh or in the glass.
 */
export function drivenShoot(change: (draft: Draft) => void = () => undefined): Shoot {
  return exampleShoot('tiny', (draft) => {
    Object.assign(draft.kit.parts, structuredClone({ motor, receiver, 'hand-unit': handUnit }));
    const { taking, block, focuser } = { taking: draft.kit.parts['taking-58'], block: draft.kit.parts['block-1-5'], focuser: draft.kit.parts.focuser };
    Object.assign(taking.lens, { transmittance: 1 });
    Object.assign(block.block, { transmittance: 1 });
    Object.assign(focuser, { focuser: { clearMm: 70, transmittance: 1 } });
    Object.assign(focuser.focus, {
      closeMm: 1000, throwDeg: 270, marks: [{ distanceMm: 'infinity', angleDeg: 0 }, { distanceMm: 1000, angleDeg: 270 }], playDeg: { value: 0.2, plusMinus: 0 },
      ringTorqueNm: { value: 0.2, plusMinus: 0.04, basis: 'measured' }, gear: { module: 0.8, teeth: 120, faceMm: 10 },
    });
    const { camera } = draft.builds;
    Object.assign(camera.pieces, { motor: { of: 'motor' }, receiver: { of: 'receiver', net: 'focus' }, 'hand-unit': { of: 'hand-unit', net: 'focus' } });
    camera.lines['motor-bus'] = { from: 'receiver/motor', to: 'motor/bus' };
    draft.assumptions = { 'focus.meshEfficiency': 1, 'focus.torqueMargin': 1.5 };
    Object.assign(draft.shots.portrait, { tStop: 2, circleOfConfusionMm: 0.03 });
    draft.days.one.temperatureC = 20;
    change(draft);
  });
}

/** Between the focuser's middle and the sensor in that example: flange 18 + lens 62 + block 70 + half of 52 mm. */
export const FOCUSER_TO_SENSOR_MM = 176;

const bus = { kind: 'control', connector: '7-pin round', sex: 'female', control: { protocol: 'motor bus' } };
const motor = {
  name: 'Motor', kind: 'motor', note: 'Invented.', ports: { bus: { ...bus, way: 'in' } },
  motor: {
    stallTorqueNm: 0.3, noLoadRpm: 300, gear: { module: 0.8, teeth: 40, faceMm: 14 }, otherGears: [30, 60], maxTurns: 10, timeConstantMs: 10, delayMs: 6, backlashDeg: { value: 0.6, plusMinus: 0 },
    torqueLimitsNm: [0.05, 0.1, 0.3], movingW: 6, stallW: 18,
  },
};
const radio = { carries: 'control', bandMHz: 2400 };
const receiver = {
  name: 'Receiver', kind: 'controller', note: 'Invented.', ports: { motor: { ...bus, way: 'out' } }, radio: { ...radio, role: 'receives', modes: { normal: { name: 'normal', delayMs: 9 } } },
};
const handUnit = {
  name: 'Hand unit', kind: 'hand unit', note: 'Invented.', radio: { ...radio, role: 'transmits', modes: { normal: { name: 'normal', delayMs: 0 } } },
  handWheel: { turnDeg: 270, steps: 2700, diameterMm: 50, delayMs: 5, mapsThrow: true, hardStops: true },
};
