import { type TypicalRoom, roomOf } from './typicalPart.ts';

/** Squeeze, length, mass, rear and front clear diameter. */
const BLOCKS = [[1.33, 55, 420, 52, 66], [1.5, 70, 680, 54, 78], [1.6, 75, 760, 54, 80], [1.75, 85, 900, 52, 82], [1.8, 88, 930, 52, 82], [2, 96, 1050, 52, 84]] as const;
const blocks = roomOf(BLOCKS, ([squeeze, lengthMm, massG, rearClearMm, frontClearMm]) => [
  `block-${String(squeeze).replace('.', '-')}x`,
  {
    name: `${squeeze}× anamorphic block`, kind: 'block', massG, lengthMm,
    block: { squeeze, rearClearMm, frontClearMm, elementSpacingMm: lengthMm * 0.8, rearToPupilGapMm: 4, transmittance: 0.86, roll: { heldBy: 'clamp' } },
  },
]);

const CLOSE_UPS = [0.5, 1, 2, 3] as const;
const closeUps = roomOf(CLOSE_UPS, (powerDpt) => [
  `close-up-${String(powerDpt).replace('.', '-')}`,
  { name: `Close-up +${powerDpt}`, kind: 'close-up', massG: 230, closeUp: { powerDpt, clearMm: 104 } },
]);

const NDS = [[0.3, 1], [0.6, 2], [0.9, 3], [1.2, 4]] as const;
const filters = roomOf(NDS, ([density, stops]) => [
  `nd-${String(density).replace('.', '-')}-tray`,
  { name: `Neutral density ${density}, tray`, kind: 'filter', massG: 180, filter: { kind: 'nd', stops, widthMm: 100, heightMm: 143.5 } },
]);

const others: TypicalRoom = {
  'variable-diopter': {
    name: 'Variable diopter', kind: 'focuser', massG: 700, lengthMm: 42,
    focuser: { clearMm: 100, transmittance: 0.92 },
    focus: { closeMm: 1000, throwDeg: 270, datum: 'sensor', endStops: 'soft', ringTorqueNm: 0.18, gear: { module: 0.8, teeth: 124, faceMm: 10 } },
    front: { diameterMm: 110, threadMm: 105, clearMm: 100, turnsDeg: 270, travelMm: 2 },
  },
  'polariser-tray': { name: 'Polariser, tray', kind: 'filter', massG: 190, filter: { kind: 'polariser', stops: 1.6, widthMm: 100, heightMm: 143.5 } },
  'matte-box-clamp': {
    name: 'Clamp-on matte box', kind: 'matte box', massG: 600,
    matteBox: {
      fit: 'clamp', clampMm: 114,
      openings: { tray: { name: 'tray', aheadOfFrontMm: 15, widthMm: 138, heightMm: 96, holds: 'filter' }, hood: { name: 'hood', aheadOfFrontMm: 65, widthMm: 185, heightMm: 118, holds: 'nothing' } },
    },
  },
  'matte-box-rods': {
    name: 'Matte box on rods', kind: 'matte box', massG: 1400,
    matteBox: {
      fit: 'rods',
      openings: { tray: { name: 'tray', aheadOfFrontMm: 20, widthMm: 150, heightMm: 106, holds: 'turning filter' }, hood: { name: 'hood', aheadOfFrontMm: 95, widthMm: 230, heightMm: 150, holds: 'nothing' } },
    },
  },
  'mount-adapter-long-short': { name: 'Mount adapter, long to short', kind: 'mount adapter', massG: 210, lengthMm: 34, mountAdapter: { lensMount: 'long 52 mm', bodyMount: 'short 18 mm', thicknessMm: 34 } },
  'mount-adapter-long-four-thirds': { name: 'Mount adapter, long to four thirds', kind: 'mount adapter', massG: 200, lengthMm: 32.75, mountAdapter: { lensMount: 'long 52 mm', bodyMount: 'short 19 mm', thicknessMm: 32.75 } },
};

export const frontOptics: TypicalRoom = { ...blocks, ...closeUps, ...filters, ...others };
