import { type Fit, box, cylinder, point, rodSeat, screw, size, tapped, tube } from './fitting.ts';

const TOOTHED = { class: '0.8 module' } as const;

/** A case on a screw, with the gear ahead of its far edge, so that it keeps clear of the barrel. */
export const motor: Fit = ({ motor: own }) => {
  const wide = size(own?.stallTorqueNm, 0.5) > 0.4 ? 40 : 32;
  const pitchMm = size(own?.gear.module, 0.8) * size(own?.gear.teeth, 40);
  return {
    points: { foot: screw([0, 0, 0], 'down', '1/4-20', { contactMm: [3, 9] }), gear: point('gear', [0, 50, 28], 'forward', TOOTHED) },
    solids: [box([wide, 44, 40], [0, 28, -4]), cylinder(pitchMm, size(own?.gear.faceMm, 14), 'z', [0, 50, 28])],
  };
};

/** On both rods, the wheel outside at the operator's left. */
export const followFocus: Fit = ({ handWheel: own }) => {
  const pitchMm = size(own?.gear?.module, 0.8) * size(own?.gear?.teeth, 43);
  return {
    points: { 'rod-left': rodSeat([30, 0, 0], 'back'), 'rod-right': rodSeat([-30, 0, 0], 'back'), gear: point('gear', [58, 34, 8], 'forward', TOOTHED) },
    solids: [box([90, 20, 20], [0, 0, 0]), cylinder(pitchMm, size(own?.gear?.faceMm, 12), 'z', [58, 34, 8]), cylinder(size(own?.diameterMm, 70), 18, 'z', [98, 16, -20])],
  };
};

export const receiver: Fit = () => ({ points: { foot: tapped([0, 0, 0], 'down') }, solids: [box([60, 25, 90], [0, 12.5, 0])] });

/** Held by its end in a plate, or anywhere along it. */
export const rod: Fit = ({ beam }) => {
  const lengthMm = size(beam?.lengthMm, 300);
  const outer = { class: `${size(beam?.outerMm, 15)} mm`, sex: 'male' } as const;
  return {
    points: { back: point('rod', [0, 0, 0], 'back', outer), along: point('rod', [0, 0, 0], 'forward', { ...outer, slideMm: [0, lengthMm] }) },
    solids: [cylinder(size(beam?.outerMm, 15), lengthMm, 'z', [0, 0, lengthMm / 2])],
  };
};

export const rodClamp: Fit = () => ({
  points: { rod: rodSeat([0, 0, 0], 'back'), top: tapped([0, 26, 0], 'up') },
  solids: [tube(30, 15, 24, 'z', [0, 0, 0]), box([20, 12, 24], [0, 20, 0])],
});
