import { type TypicalRoom, roomOf } from './typicalPart.ts';
import type { TypicalPart } from './typicalPart.ts';

const PLAIN: readonly (readonly [id: string, name: string, kind: TypicalPart['kind'], massG: number])[] = [
  ['cage', 'Camera cage', 'cage', 420], ['baseplate-15', 'Sliding baseplate for 15 mm rods', 'plate', 780], ['dovetail', 'Long wedge plate', 'plate', 540], ['quick-plate', 'Quick-release plate', 'plate', 220], ['riser', 'Riser plate', 'plate', 210],
  ['top-handle', 'Top handle', 'handle', 310], ['side-grip', 'Side grip', 'handle', 280], ['arm', 'Arm with two joints', 'arm', 340], ['arm-short', 'Short tilt mount', 'arm', 110], ['lens-support', 'Lens support', 'support', 150],
  ['rod-clamp', 'Rod clamp', 'rod clamp', 80], ['collar', 'Barrel collar with rod seats', 'collar', 260], ['media-1tb', 'Recording medium, 1 TB', 'media', 60],
];
const plain = roomOf(PLAIN, ([id, name, kind, massG]) => [id, { name, kind, massG }]);

const rods = roomOf([200, 300, 450] as const, (lengthMm) => [
  `rod-15-${lengthMm}`,
  { name: `15 mm rod, ${lengthMm} mm`, kind: 'rod', massG: Math.round(lengthMm * 0.31), beam: { outerMm: 15, innerMm: 12, lengthMm, material: 'aluminium' } },
]);

/** Id, name, mass, payload, counterbalance moment, plate travel. */
const HEADS = [['head-light', 'Light fluid head', 1900, 6000, 6, 60], ['head-medium', 'Fluid head', 3400, 14_000, 18, 90], ['head-heavy', 'Heavy fluid head', 7200, 30_000, 60, 120]] as const;
const heads = roomOf(HEADS, ([id, name, massG, payloadG, counterbalanceNm, plateTravelMm]) => [id, { name, kind: 'head', massG, carrier: { kind: 'head', payloadG, counterbalanceNm, plateTravelMm, damped: true } }]);

export const hardware: TypicalRoom = {
  ...plain,
  ...rods,
  ...heads,
  'legs-tall': { name: 'Tall legs', kind: 'legs', massG: 4200, carrier: { kind: 'legs', payloadG: 25_000, footRadiusMm: 520, feet: 3, heightMm: 1450 } },
  'legs-short': { name: 'Short legs', kind: 'legs', massG: 3300, carrier: { kind: 'legs', payloadG: 30_000, footRadiusMm: 420, feet: 3, heightMm: 700 } },
  'light-stand': { name: 'Light stand with 16 mm stud', kind: 'stand', massG: 2400, carrier: { kind: 'stand', payloadG: 9000, footRadiusMm: 450, feet: 3, heightMm: 1300 } },
  'shoulder-pad': { name: 'Shoulder pad', kind: 'shoulder pad', massG: 480, carrier: { kind: 'shoulder pad' } },
  'gimbal-one-hand': { name: 'One-handed gimbal', kind: 'gimbal', massG: 1600, carrier: { kind: 'gimbal', payloadG: 4500 } },
  'gimbal-two-hands': { name: 'Two-handed gimbal', kind: 'gimbal', massG: 3200, carrier: { kind: 'gimbal', payloadG: 7500 } },
};
