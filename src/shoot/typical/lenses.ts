import { roomOf } from './typicalPart.ts';

/** Focal length, widest T-stop, image circle, closest focus, length, mass, filter thread. */
const SPHERICAL = [
  [24, 2, 44, 300, 70, 420, 58], [35, 2, 44, 350, 65, 380, 55], [40, 2.2, 43.3, 450, 46, 230, 52], [50, 1.8, 44, 500, 60, 350, 55], [58, 2.2, 43.3, 600, 62, 290, 58],
  [85, 2, 44, 850, 78, 470, 67], [100, 2.2, 44, 900, 92, 560, 62], [135, 2.8, 44, 1300, 118, 720, 67],
] as const;
/** Squeeze, focal length, widest T-stop, image circle, closest focus, length, mass, front diameter. */
const ANAMORPHIC = [
  [2, 35, 2.4, 33, 900, 135, 2300, 110], [2, 40, 2.3, 33.5, 900, 135, 2200, 110], [2, 50, 2.3, 35, 900, 140, 2200, 110], [2, 75, 2.3, 37, 1100, 150, 2400, 110], [2, 100, 2.8, 40, 1400, 185, 3200, 134],
  [1.8, 40, 2.4, 41, 900, 140, 1700, 95], [1.8, 65, 2.4, 43, 1000, 150, 1900, 95], [1.6, 35, 2.8, 44, 850, 120, 1000, 95], [1.6, 65, 2.8, 44, 900, 125, 1050, 95], [1.5, 50, 2.8, 44, 800, 115, 900, 82],
  [1.33, 35, 2, 30, 850, 110, 700, 80], [1.33, 50, 2, 30, 850, 110, 720, 80],
] as const;

const spherical = roomOf(SPHERICAL, ([focal, tStop, circle, close, length, massG, thread]) => [
  `lens-${focal}`,
  {
    name: `${focal} mm spherical lens`, kind: 'lens', massG, lengthMm: length,
    lens: {
      mount: 'short 18 mm', focalLengthMm: focal, squeeze: 1, tStop, imageCircleMm: circle, flangeMm: 18,
      pupils: { horizontal: { behindFrontMm: length / 2 }, vertical: { behindFrontMm: length / 2 } },
    },
    focus: { closeMm: close, throwDeg: 200, datum: 'sensor', endStops: 'hard', ringTorqueNm: 0.06 },
    front: { diameterMm: thread + 8, threadMm: thread, clearMm: thread - 4, turnsDeg: 0, travelMm: 0 },
  },
]);

const anamorphic = roomOf(ANAMORPHIC, ([squeeze, focal, tStop, circle, close, length, massG, front]) => [
  `anamorphic-${String(squeeze).replace('.', '-')}x-${focal}`,
  {
    name: `${focal} mm ${squeeze}× anamorphic lens`, kind: 'lens', massG, lengthMm: length,
    lens: {
      mount: squeeze >= 1.8 ? 'long 52 mm' : 'short 18 mm', focalLengthMm: focal, squeeze, tStop, imageCircleMm: circle, flangeMm: squeeze >= 1.8 ? 52 : 18,
      pupils: { horizontal: { behindFrontMm: length * 0.42 }, vertical: { behindFrontMm: length * 0.62 } },
    },
    focus: { closeMm: close, throwDeg: 290, datum: 'sensor', endStops: 'hard', ringTorqueNm: squeeze >= 1.8 ? 0.15 : 0.08, gear: { module: 0.8, teeth: 130, faceMm: 10 } },
    front: { diameterMm: front, clearMm: front - 10, turnsDeg: 0, travelMm: 0 },
  },
]);

export const lenses = { ...spherical, ...anamorphic };
