import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { ModelJoint, RigModel } from '../placing/rigModel.ts';
import { orderOfAssembly } from './orderOfAssembly.ts';
import { subAssemblies } from './subAssemblies.ts';

interface Screw {
  readonly a: number;
  readonly b: number;
  /** What stands where its key goes. */
  readonly inWay: readonly number[];
}

const name = (piece: number): string => `camera/${piece}`;

function takenFrom(count: number, screws: readonly Screw[]) {
  const joints = screws.map(({ a, b }) => ({ joint: { a: { ref: name(a) }, b: { ref: name(b) }, mesh: false } }) as unknown as ModelJoint);
  const model = { tree: joints, loops: [], meshes: [] } as unknown as RigModel;
  const usual = Array.from({ length: count }, (_, piece) => ({ ref: name(piece), joints: [] }));
  return subAssemblies(model, usual, (joint) => (screws[joints.indexOf(joint)]?.inWay ?? []).map(name));
}

/** By trying: some pieces can be put together where they are two halves that can, and that every screw between them can be turned with both there. */
function canBeBuilt(pieces: readonly number[], screws: readonly Screw[]): boolean {
  if (pieces.length === 1) return true;
  const halves = Array.from({ length: 2 ** (pieces.length - 1) - 1 }, (_, mask) => [pieces.filter((_one, at) => at > 0 && ((mask + 1) >> (at - 1)) % 2 === 1), pieces.filter((_one, at) => at === 0 || ((mask + 1) >> (at - 1)) % 2 === 0)] as const);
  return halves.some(([one, other]) => {
    const between = screws.filter(({ a, b }) => (one.includes(a) && other.includes(b)) || (one.includes(b) && other.includes(a)));
    return between.every(({ inWay }) => !inWay.some((piece) => pieces.includes(piece))) && canBeBuilt(one, screws) && canBeBuilt(other, screws);
  });
}

/** A few pieces on a tree of screws with some more that close loops. */
const heap = fc.integer({ min: 2, max: 6 }).chain((count) => {
  const piece = fc.nat(count - 1);
  const screw = fc.record({ a: piece, b: piece, inWay: fc.uniqueArray(piece, { maxLength: 2 }) });
  return fc.tuple(fc.tuple(...Array.from({ length: count - 1 }, (_, at) => fc.record({ a: fc.nat(at), inWay: fc.uniqueArray(piece, { maxLength: 2 }) }))), fc.array(screw, { maxLength: 2 })).map(([tree, more]) => ({
    count,
    screws: [...tree.map(({ a, inWay }, at) => ({ a, b: at + 1, inWay })), ...more.filter(({ a, b }) => a !== b)].map((one) => ({ ...one, inWay: one.inWay.filter((by) => by !== one.a && by !== one.b) })),
  }));
});

property.prop([heap], { numRuns: 300 })('it finds an order exactly where trying every way of halving does', ({ count, screws }) => {
  const { steps, blocked } = takenFrom(count, screws);
  expect(blocked.length === 0).toBe(canBeBuilt(Array.from({ length: count }, (_, piece) => piece), screws));
  const fresh = steps.filter(({ along }) => along === undefined).map(({ ref }) => ref);
  expect(fresh.toSorted()).toEqual(Array.from({ length: count }, (_, piece) => name(piece)).toSorted());
  // Every screw is turned once.
  expect(steps.flatMap(({ joints }) => joints)).toHaveLength(screws.length);
});

test('two lumps that each hide their screws from the other are put together apart and then joined', () => {
  // 0–1 is covered by 2, 2–3 by 1; 1–2 is free.
  const { steps, blocked } = takenFrom(4, [{ a: 0, b: 1, inWay: [2] }, { a: 1, b: 2, inWay: [] }, { a: 2, b: 3, inWay: [1] }]);
  expect(blocked).toEqual([]);
  expect(steps.map(({ ref, apart, along }) => [ref, apart, along])).toEqual([[name(0), undefined, undefined], [name(1), undefined, undefined], [name(2), true, undefined], [name(3), undefined, undefined], [name(2), undefined, [name(3)]]]);
});

test('which piece placing starts from decides no verdict: a tripod plate under the screw of the camera', () => {
  const from = (root: string, high: number) => {
    const shoot = riggedShoot((draft) => {
      draft.kit.parts.under = { name: 'Plate', kind: 'plate', massG: 300, points: { top: { kind: 'thread', class: '3/8-16', sex: 'male', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1], tool: 'hand' } }, solids: [{ shape: 'box', sizeMm: [80, high, 120], atMm: [0, -high / 2, 0] }] };
      draft.kit.parts.plate.points.under = { kind: 'thread', class: '3/8-16', sex: 'female', at: [0, -42, 0], out: [0, -1, 0], up: [0, 0, 1] };
      draft.kit.parts.plate.points.top = { ...draft.kit.parts.plate.points.top, slideMm: undefined };
      draft.builds.camera.pieces.under = { of: 'under' };
      draft.builds.camera.joints.under = { a: 'plate/under', b: 'under/top' };
      draft.builds.camera.root = root;
    });
    return orderOfAssembly(new Ledger(shoot), 'sticks', 'normal');
  };
  const roots = ['under', 'plate', 'body', 'rod-left', 'motor'];
  expect(roots.map((root) => from(root, 20).blocked)).toEqual(roots.map(() => []));
  for (const root of roots) {
    const order = from(root, 20).steps.map(({ ref }) => ref);
    // The camera's screw is turned from below, before the plate that covers it.
    expect(Math.max(order.indexOf('camera/body'), order.indexOf('camera/plate'))).toBeLessThan(order.indexOf('camera/under'));
  }
});
