import { type TypicalRoom, roomOf } from './typicalPart.ts';

/** Name, stall torque, speed without load, mass, watts moving and stalled. */
const MOTORS = [['small', 0.3, 190, 180, 7, 16], ['medium', 0.5, 170, 240, 9, 24], ['large', 0.9, 150, 320, 13, 34]] as const;
const motors = roomOf(MOTORS, ([size, stallTorqueNm, noLoadRpm, massG, movingW, stallW]) => [
  `motor-${size}`,
  {
    name: `${size[0]?.toUpperCase()}${size.slice(1)} motor`, kind: 'motor', massG,
    motor: { stallTorqueNm, noLoadRpm, gear: { module: 0.8, teeth: 40, faceMm: 14 }, maxTurns: 15, timeConstantMs: 20, delayMs: 8, backlashDeg: 0.4, movingW, stallW, losesMap: true },
    ports: {
      bus: { kind: 'control', way: 'in', connector: '7-pin round', sex: 'female', shares: 'dc', control: { protocol: 'motor bus' } },
      dc: { kind: 'power', way: 'in', connector: '7-pin round', sex: 'female', power: { lowV: 11, highV: 26, maxA: 3 } },
    },
  },
]);

const radio = { carries: 'control', bandMHz: 2400, channels: [11, 15, 20, 25], modes: { normal: { name: 'normal', delayMs: 10, bandwidthMHz: 2 } }, relinkS: 3 } as const;

export const focusGear: TypicalRoom = {
  ...motors,
  'motor-receiver': {
    name: 'Motor receiver', kind: 'controller', massG: 160, radio: { ...radio, channels: [...radio.channels], role: 'receives' }, draw: { typicalW: 1.6 },
    ports: {
      'dc-in': { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: { lowV: 10, highV: 26, maxA: 5 } },
      motor: { kind: 'control', way: 'out', connector: '7-pin round', sex: 'female', shares: 'motor-dc', control: { protocol: 'motor bus' } },
      'motor-dc': { kind: 'power', way: 'out', connector: '7-pin round', sex: 'female', power: { from: 'dc-in', maxA: 5 } },
    },
  },
  'hand-unit': {
    name: 'Hand unit', kind: 'hand unit', massG: 540, radio: { ...radio, channels: [...radio.channels], role: 'transmits', eirpDbm: 18 }, draw: { typicalW: 1.8 },
    handWheel: { turnDeg: 320, steps: 16_384, diameterMm: 46, delayMs: 5, mapsThrow: true, hardStops: true },
    ports: { 'dc-in': { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: { lowV: 6, highV: 17, maxA: 2 } } },
  },
  'follow-focus': {
    name: 'Follow focus on rods', kind: 'follow focus', massG: 620,
    handWheel: { turnDeg: 300, diameterMm: 70, mapsThrow: false, hardStops: true, gear: { module: 0.8, teeth: 43, faceMm: 12 }, ratio: 1, backlashDeg: 0.5 },
  },
};
