import type { Point } from '../../schema/mechanics.ts';
import { type Fit, box, cylinder, point, rodSeat, size } from './fitting.ts';

/** 0.8 module is the rule on cinema lenses (DIN 780; common practice); without teeth there is nothing to mesh with. */
const gearAt = (z: number): Point => point('gear', [0, 0, z], 'forward', { class: '0.8 module' });

const rear = (mount: string | undefined): Point => point('lens mount', [0, 0, 0], 'back', { ...(mount === undefined ? {} : { class: mount }), sex: 'male' });
/** Outside of the front, for what clamps on. */
const clampOn = (z: number, diameterMm: number): Point => point('front', [0, 0, z], 'forward', { class: `${diameterMm} mm`, sex: 'male' });

/** Mount behind, front ahead; with teeth, a gear at the middle. A front with a thread takes what screws in as well. */
export const lens: Fit = ({ lens: own, lengthMm, front, focus }) => {
  const length = size(lengthMm, 80);
  const threadMm = front?.threadMm;
  return {
    points: {
      mount: rear(own?.mount),
      front: clampOn(length, size(front?.diameterMm, 80)),
      ...(threadMm === undefined ? {} : { thread: point('front', [0, 0, length], 'forward', { sex: 'female' }) }),
      ...(focus?.gear === undefined ? {} : { gear: gearAt(length / 2) }),
      bottom: point('surface', [0, -size(front?.diameterMm, 80) / 2, length / 2], 'down'),
    },
  };
};

export const mountAdapter: Fit = ({ mountAdapter: own, lengthMm }) => ({
  points: { mount: rear(own?.bodyMount), front: point('lens mount', [0, 0, size(lengthMm, 34)], 'forward', { ...(own?.lensMount === undefined ? {} : { class: own.lensMount }), sex: 'female' }) },
});

/** It screws into the taking lens, and what focuses screws into it; by which thread is not known of a class. */
export const block: Fit = ({ lengthMm }) => {
  const length = size(lengthMm, 80);
  return {
    points: {
      rear: point('front', [0, 0, 0], 'back', { sex: 'male' }), front: point('front', [0, 0, length], 'forward', { sex: 'female' }),
      barrel: point('collar', [0, 0, length / 2], 'down', { sex: 'male' }), bottom: point('surface', [0, -45, length / 4], 'down'),
    },
    solids: [cylinder(90, length, 'z', [0, 0, length / 2])],
  };
};

export const focuser: Fit = ({ lengthMm, front }) => {
  const length = size(lengthMm, 42);
  return { points: { rear: point('front', [0, 0, 0], 'back', { sex: 'male' }), front: clampOn(length, size(front?.diameterMm, 110)), gear: gearAt(length / 2) } };
};

/** A clamp-on box behind its first tray; one on rods, with the rods 85 mm below the axis (common practice). */
export const matteBox: Fit = ({ matteBox: own }) => ({
  points:
    own?.fit === 'rods'
      ? { 'rod-left': rodSeat([30, -85, 10], 'back'), 'rod-right': rodSeat([-30, -85, 10], 'back'), rear: point('surface', [0, 0, 0], 'back') }
      : { rear: point('front', [0, 0, 0], 'back', { class: `${size(own?.clampMm, 114)} mm`, sex: 'female', tool: 'hand' }) },
  solids: own?.fit === 'rods' ? [box([230, 150, 95], [0, 0, 48]), box([90, 20, 20], [0, -85, 10], 'bridge')] : [box([190, 124, 65], [0, 0, 33])],
});
