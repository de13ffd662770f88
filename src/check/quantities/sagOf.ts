import { underWeight } from '../../assembly/hold/underWeight.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { type Vector, length, scale, unit } from '../../assembly/placing/Transform.ts';
import type { JointHold } from '../../assembly/hold/jointHold.ts';
import type { RigNetwork, Variation } from '../../assembly/hold/rigNetwork.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Answered } from '../../calc/mechanics/network/Network.ts';
import { STIFFNESS_KEYS } from '../../calc/mechanics/network/model.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';

/** How the pieces of a camera build hang against its body, upright, under their own weight. */
export interface Sag {
  /** The piece that has shifted most, mm, and where that comes from. */
  readonly shifted: Hanging;
  /** The piece that has turned most, deg. */
  readonly turned: Hanging;
  /** Of the block against the body, deg; `undefined` without one. */
  readonly blockDeg: number | undefined;
}

export interface Hanging {
  readonly piece: SetupPiece;
  readonly amount: number;
  /** What each joint adds to it, the most first; what is left is the bending of rods. */
  readonly from: readonly { readonly hold: JointHold; readonly amount: number }[];
  readonly bending: number;
}

/** `undefined` where too little is placed. */
export function sagOf(asking: Asking, { setup, glass }: SetupGlass, variation?: Variation): Sag | undefined {
  const solved = underWeight(asking.ledger, setup, glass, variation);
  const { body, block } = opticalPath(asking.ledger, setup, glass);
  if (solved === undefined || body === undefined) return undefined;
  const { rig } = solved;
  const upright = solved.upright();
  const camera = rig.bodyOf(body.ref);
  const still = rig.model.bodies.find(({ name }) => name === camera);
  if (still === undefined) return undefined;
  const pieces = setupPieces(asking.ledger, setup, glass);
  const all = rig.model.bodies.flatMap(({ name, centreMm, fixed }) => {
    const piece = pieces.get(rig.pieceOf(name));
    return piece === undefined || fixed === true || name === camera ? [] : [{ piece, name, centreMm, ...upright.motion.relative({ of: name, to: camera, atMm: centreMm }) }];
  });
  const [first] = all;
  if (first === undefined) return undefined;
  const most = (key: 'shiftMm' | 'turnDeg') => all.reduce((worst, one) => (length(one[key]) > length(worst[key]) ? one : worst), first);
  const [shifted, turned] = [most('shiftMm'), most('turnDeg')];
  return {
    shifted: hanging(rig, upright, { ...shifted, camera, by: 'forceN', way: shifted.shiftMm }),
    turned: hanging(rig, upright, { ...turned, camera, by: 'momentNm', way: turned.turnDeg }),
    blockDeg: block === undefined ? undefined : length(upright.motion.relative({ of: rig.bodyOf(block.ref), to: camera, atMm: [0, 0, 0] }).turnDeg),
  };
}

interface Probe {
  readonly piece: SetupPiece;
  readonly name: string;
  readonly camera: string;
  readonly centreMm: Vector;
  readonly by: 'forceN' | 'momentNm';
  readonly way: Vector;
}

/** Unit load method: what every joint carries under the weight, times what it carries under a unit load where the sag is asked for, over its stiffness. */
function hanging(rig: RigNetwork, upright: Answered, { piece, name, camera, centreMm, by, way }: Probe): Hanging {
  const amount = length(way);
  if (amount === 0) return { piece, amount, from: [], bending: 0 };
  const one = unit(way, [0, -1, 0]);
  const probe = rig.network.solve([{ body: name, [by]: one, atMm: centreMm }, { body: camera, [by]: scale(one, -1), atMm: centreMm }]);
  const [real, virtual] = [upright.springs(), probe.springs()];
  const toShown = by === 'forceN' ? 1e3 : 180 / Math.PI;
  const from = rig.springs.flatMap((spring, at) => {
    const [carried, asked, stiffness] = [real[at], virtual[at], rig.model.springs?.[at]?.stiffness];
    if (spring === 'ground' || carried === undefined || asked === undefined || stiffness === undefined) return [];
    const own = STIFFNESS_KEYS.reduce((sum, key, k) => {
      const [of, axis, perMetre] = k < 3 ? (['forceN', k, stiffness[key] * 1e3] as const) : (['momentNm', k - 3, stiffness[key]] as const);
      return perMetre > 0 ? sum + ((carried.onB[of][axis] as number) * (asked.onB[of][axis] as number)) / perMetre : sum;
    }, 0);
    return [{ hold: spring, amount: own * toShown }];
  });
  return { piece, amount, from: from.toSorted((a, b) => b.amount - a.amount), bending: amount - from.reduce((sum, joint) => sum + joint.amount, 0) };
}
