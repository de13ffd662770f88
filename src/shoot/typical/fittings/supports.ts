import { type Fit, box, cylinder, point, rodSeat, screw, size, tapped, tube } from './fitting.ts';

const WEDGE = 'studio dovetail';
const HEAD_PLATE = 'sliding balance plate';
const hand = { tool: 'hand' } as const;

/** 15 mm rods run 85 mm below the axis, 60 mm apart (common practice); a cinema body in a cage stands 65 mm below it. */
const RODS_BELOW_TOP_MM = 20;

/** Plates by their class: what is above, what is below, what is held beside. */
export const plates: Readonly<Record<string, Fit>> = {
  'baseplate-15': () => ({
    points: {
      top: screw([0, 0, 0], 'up', '1/4-20', { pins: true, screws: 2, slideMm: [-45, 45], contactMm: [3, 28] }),
      'rod-left': rodSeat([30, -RODS_BELOW_TOP_MM, 60], 'forward'), 'rod-right': rodSeat([-30, -RODS_BELOW_TOP_MM, 60], 'forward'),
      base: point('wedge', [0, -45, 0], 'down', { class: WEDGE, sex: 'male', ...hand }),
    },
    solids: [box([100, 45, 120], [0, -22.5, 0])],
  }),
  dovetail: () => ({
    points: { top: point('wedge', [0, 0, 0], 'up', { class: WEDGE, sex: 'female', slideMm: [-100, 100], ...hand }), base: tapped([0, -14, 0], 'down', '3/8-16', { screws: 2 }) },
    solids: [box([80, 14, 260], [0, -7, 0])],
  }),
  'quick-plate': () => ({
    points: {
      top: screw([0, 0, 0], 'up', '3/8-16', { screws: 2, contactMm: [4, 22] }), 'top-small': screw([0, 0, 25], 'up', '1/4-20', { contactMm: [3, 22] }),
      base: point('tripod plate', [0, -10, 0], 'down', { class: HEAD_PLATE, sex: 'male', ...hand }),
    },
    solids: [box([50, 10, 120], [0, -5, 0])],
  }),
  // It makes good what a small body stands lower by.
  riser: () => ({ points: { top: screw([0, 0, 0], 'up', '1/4-20', { screws: 2, contactMm: [3, 20] }), base: tapped([0, -10, 0], 'down', '1/4-20', { screws: 2 }) }, solids: [box([80, 10, 90], [0, -5, 0])] }),
};

export const handles: Readonly<Record<string, Fit>> = {
  'top-handle': () => ({
    points: { foot: screw([0, 0, 0], 'down', '1/4-20', { pins: true, screws: 2, contactMm: [3, 12] }), front: tapped([0, 64, 75], 'up'), back: tapped([0, 64, -60], 'up') },
    solids: [box([30, 20, 180], [0, 54, 0], 'grip'), box([24, 44, 20], [0, 22, 0], 'post')],
  }),
  'side-grip': () => ({ points: { foot: screw([0, 0, 0], 'right', '1/4-20', { contactMm: [3, 14] }) }, solids: [box([30, 20, 30], [15, 0, 0], 'foot'), cylinder(36, 110, 'y', [46, -40, 0])] }),
};

export const arms: Readonly<Record<string, Fit>> = {
  arm: () => armOf(190),
  'arm-short': () => armOf(60),
};

const armOf = (lengthMm: number): ReturnType<Fit> => ({
  points: {
    foot: screw([0, 0, 0], 'down', '1/4-20', { ...hand, contactMm: [3, 11] }),
    top: screw([0, lengthMm, 0], 'up', '1/4-20', { ...hand, contactMm: [3, 11], turnDeg: [-180, 180], tiltDeg: [-90, 90] }),
  },
  solids: [cylinder(22, lengthMm - 4, 'y', [0, lengthMm / 2, 0])],
});

export const support: Fit = () => ({
  points: { 'rod-left': rodSeat([30, 0, 0], 'back'), 'rod-right': rodSeat([-30, 0, 0], 'back'), top: point('surface', [0, 16, 0], 'up', { heightMm: [-6, 40], ...hand }) },
  solids: [box([84, 18, 16], [0, 0, 0], 'bridge'), cylinder(14, 14, 'y', [0, 9, 0])],
});

/** Round the barrel of a block, with seats for rods beside and below it. */
export const collar: Fit = () => ({
  points: { seat: point('collar', [0, 0, 0], 'up', { sex: 'female', tool: '4 mm hex key' }), rod: rodSeat([-96, 0, 0], 'forward'), base: rodSeat([30, -85, 0], 'back') },
  solids: [tube(108, 90.4, 22, 'z', [0, 0, 0]), box([50, 14, 20], [-79, 0, 0], 'rod seat')],
});

/** A bowl below by what it carries: 100 mm, the heavy ones 150 mm. */
export const head: Fit = ({ carrier }) => {
  const travel = size(carrier?.plateTravelMm, 90) / 2;
  const bowl = size(carrier?.payloadG, 10_000) > 20_000 ? '150 mm bowl' : '100 mm bowl';
  return {
    points: { top: point('tripod plate', [0, 0, 0], 'up', { class: HEAD_PLATE, sex: 'female', slideMm: [-travel, travel], ...hand }), base: point('quick release', [0, -150, 0], 'down', { class: bowl, sex: 'male', ...hand }) },
    solids: [box([80, 12, 140], [0, -6, 0], 'plate'), box([130, 110, 120], [0, -67, 0]), cylinder(90, 28, 'y', [0, -136, 0])],
  };
};

const legsWith = (bowl: string): Fit => ({ carrier }) => {
  const height = size(carrier?.heightMm, 1000);
  return {
    points: { top: point('quick release', [0, 0, 0], 'up', { class: bowl, sex: 'female' }) },
    // Slanting tubes have no shape here: about their middle line.
    solids: [cylinder(140, 40, 'y', [0, -20, 0]), cylinder(70, height - 40, 'y', [0, -20 - height / 2, 0])],
  };
};

export const legs: Readonly<Record<string, Fit>> = { 'legs-tall': legsWith('100 mm bowl'), 'legs-short': legsWith('150 mm bowl') };

export const stand: Fit = ({ carrier }) => {
  const height = size(carrier?.heightMm, 1300);
  return { points: { top: point('spud', [0, 0, 0], 'up', { class: '16 mm', sex: 'male' }) }, solids: [cylinder(35, height, 'y', [0, -height / 2, 0])] };
};

export const shoulderPad: Fit = () => ({
  points: { top: point('wedge', [0, 0, 0], 'up', { class: WEDGE, sex: 'female', slideMm: [-70, 70], ...hand }), base: point('hand', [0, -60, -50], 'down') },
  solids: [box([120, 55, 150], [0, -30, -50])],
});

/** Its plate takes the camera by a screw and slides; the frame goes round the camera, and is left out of the shape. */
export const gimbal: Fit = () => ({
  points: { top: point('tripod plate', [0, 0, 0], 'up', { sex: 'female', slideMm: [-40, 40], contactMm: [3, 16], tool: 'hand' }), base: point('hand', [0, -260, 0], 'down') },
  solids: [box([52, 10, 160], [0, -6, 0], 'plate')],
});
