import type { Fault } from '../faults/Fault.ts';
import type { Place, StatedFigure } from './schema/basics.ts';
import type { Point, Solid } from './schema/mechanics.ts';
import type { Part } from './schema/part.ts';

/** Solids without a body, points that face nowhere, rings that are wider inside than outside: neither mass nor place nor hold can be reckoned from them. */
export function impossibleShapes(path: string, { points = {}, solids = [], beam }: Part): Fault[] {
  const [outerMm, innerMm] = [beam?.outerMm, beam?.innerMm].map(valueOf);
  const bored = outerMm !== undefined && innerMm !== undefined && innerMm >= outerMm;
  return [
    ...solids.flatMap((solid, at) => solidFault(`${path}/solids/${at}`, solid)),
    ...Object.entries(points).flatMap(([id, point]) => [...pointFault(`${path}/points/${id}`, point), ...contactFault(`${path}/points/${id}/contactMm`, point)]),
    ...(bored ? [{ path: `${path}/beam/innerMm`, message: `A rod of ${outerMm} mm has no bore of ${innerMm} mm.`, cure: 'The bore is less than the outer diameter.' }] : []),
  ];
}

const valueOf = (stated: StatedFigure | undefined): number | undefined => (typeof stated === 'object' ? stated.value : stated);

function contactFault(path: string, { contactMm }: Point): Fault[] {
  if (contactMm === undefined || contactMm[0] < contactMm[1]) return [];
  return [{ path, message: `A face that touches from ${contactMm[0]} to ${contactMm[1]} mm is no ring.`, cure: 'Give the inner radius, then the outer one, which is larger.' }];
}

function solidFault(path: string, solid: Solid): Fault[] {
  if (solid.shape === 'box') {
    const thin = solid.sizeMm.findIndex((side) => side <= 0);
    return thin < 0 ? [] : [{ path: `${path}/sizeMm/${thin}`, message: `A box has no side of ${solid.sizeMm[thin]} mm.`, cure: 'Give width, height and length, each more than 0.' }];
  }
  if (solid.shape !== 'tube' || (solid.boreMm >= 0 && solid.boreMm < solid.diameterMm)) return [];
  return [{ path: `${path}/boreMm`, message: `A tube of ${solid.diameterMm} mm has no bore of ${solid.boreMm} mm.`, cure: 'The bore is less than the diameter.' }];
}

function pointFault(path: string, { out, up }: Point): Fault[] {
  const nowhere = (['out', 'up'] as const).find((key) => ({ out, up })[key]?.every((part) => part === 0) === true);
  if (nowhere !== undefined) return [{ path: `${path}/${nowhere}`, message: '[0, 0, 0] is no direction.', cure: 'Name one such as [0, 1, 0], up.' }];
  if (out === undefined || up === undefined || Math.hypot(...cross(out, up)) > 1e-6 * Math.hypot(...out) * Math.hypot(...up)) return [];
  return [{ path: `${path}/up`, message: '"up" runs along "out", so that it does not say how the point is turned.', cure: 'Name a direction across "out".' }];
}

const cross = ([a, b, c]: Place, [d, e, f]: Place): Place => [b * f - c * e, c * d - a * f, a * e - b * d];
