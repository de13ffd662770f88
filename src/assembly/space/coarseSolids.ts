import type { Part } from '../../shoot/schema/part.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';

/** Width, height and length, mm, of what usually goes by a kind: common practice, for parts whose shape is not entered. */
const USUAL: Partial<Record<Part['kind'], readonly [number, number, number]>> = {
  body: [120, 115, 120], motor: [42, 50, 70], 'hand unit': [80, 160, 60], 'follow focus': [110, 70, 40], controller: [60, 90, 25], monitor: [135, 90, 25], finder: [60, 60, 140], transmitter: [80, 110, 30], receiver: [80, 110, 30],
  converter: [60, 25, 90], battery: [100, 130, 55], 'battery plate': [90, 130, 20], regulator: [40, 20, 60], splitter: [40, 20, 50], cage: [150, 130, 90], plate: [90, 30, 140], 'rod clamp': [35, 40, 30], arm: [30, 180, 30],
  handle: [40, 45, 160], support: [80, 60, 20], collar: [110, 110, 25], head: [120, 150, 160], 'shoulder pad': [140, 70, 140], 'matte box': [190, 130, 90], focuser: [95, 95, 55], block: [88, 88, 90],
};

/** A box of the usual size for a part without solids, centred where its points are; `undefined` where nothing is known of such a kind. */
export function coarseSolids(kind: Part['kind'], points: Part['points'], lengthMm: number | undefined): readonly Solid[] | undefined {
  const usual = USUAL[kind];
  if (usual === undefined && lengthMm === undefined) return undefined;
  const [width, height, depth] = usual ?? [80, 80, lengthMm ?? 80];
  const places = Object.values(points ?? {}).flatMap(({ at }) => (at === undefined ? [] : [at]));
  const middle = (axis: 0 | 1 | 2) => (places.length === 0 ? 0 : (Math.min(...places.map((at) => at[axis])) + Math.max(...places.map((at) => at[axis]))) / 2);
  return [{ shape: 'box', sizeMm: [width, height, lengthMm ?? depth], atMm: [middle(0), middle(1), middle(2)] }];
}
