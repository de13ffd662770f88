import type { Point } from '../../schema/mechanics.ts';
import { type Fit, box, point, screw, size } from './fitting.ts';

/** Packs wider than this do not stand side by side on a small plate. */
const PACK_MM = 104;

const seat = (mount: string | undefined, x: number): Point => point('battery plate', [x, 0, -18], 'back', { ...(mount === undefined ? {} : { class: mount }), sex: 'female' });

/** Screwed on by its front, the packs behind it side by side. */
export const batteryPlate: Fit = ({ batteryPlate: own }) => {
  const [two, small] = [own?.packs === 2, own?.mount === 'small pack shoe'];
  const [width, height] = small ? [44, 64] : [two ? 2 * PACK_MM + 8 : 96, 120];
  const seats = two ? { 'pack-1': seat(own?.mount, PACK_MM / 2), 'pack-2': seat(own?.mount, -PACK_MM / 2) } : { pack: seat(own?.mount, 0) };
  return { points: { front: screw([0, 0, 0], 'forward', '1/4-20', { screws: small ? 1 : 2 }), ...seats }, solids: [box([width, height, 17], [0, 0, -9])] };
};

/** By its volts it goes on the plate for 14 V packs, on that for 26 V ones, or on the shoe for two cells. */
export const battery: Fit = ({ pack, massG }) => {
  const volts = size(pack?.nominalV, 14.4);
  if (volts < 5) return undefined;
  const mount = volts > 20 ? 'wedge plate, 26 V' : volts > 10 ? 'wedge plate' : 'small pack shoe';
  const [width, height] = volts > 10 ? [102, 140] : [38, 70];
  // About 2 g/cm³, cells and case (common practice).
  const depth = Math.round(size(massG, 700) / (width * height * 0.0012));
  return { points: { back: point('battery plate', [0, 0, 0], 'forward', { class: mount, sex: 'male' }) }, solids: [box([width, height, depth], [0, 0, -depth / 2])] };
};
