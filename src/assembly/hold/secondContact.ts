import { STIFFNESS_KEYS, type NetworkSpring, type Stiffness } from '../../calc/mechanics/network/model.ts';
import { jointType } from '../../standards/jointTypes.ts';
import type { JointHold } from './jointHold.ts';
import { axesOf } from './pieceMasses.ts';
import type { RigNetwork, Variation } from './rigNetwork.ts';

/** What would hold a joint better, and the same rig with it. */
export interface SecondContact {
  readonly says: string;
  readonly variation: Variation;
}

/** What is put beside a joint of each type, and the type it then is as stiff as. `again`: the same once more. */
const BESIDE: Readonly<Record<string, readonly [says: string, type: string | 'again']>> = {
  'one screw': ['a second screw', 'two screws'], 'screw with pins': ['a second screw', 'two screws'], 'clamp on one rod': ['a clamp on both rods', 'clamp on two rods'],
  'friction arm': ['a second arm', 'again'], shoe: ['a screw with pins in place of the shoe', 'screw with pins'], 'quick release': ['a wedge with a jaw in place of the catch', 'wedge'],
  'battery plate': ['a strap or a second plate', 'again'], 'sprung bayonet': ['a mount that clamps', 'lens mount'],
};

/** `undefined` where nothing usual would help: a mount, a wedge, two screws. */
export function secondContact({ joint, type, at, stiffness }: JointHold, { model, springs }: Pick<RigNetwork, 'model' | 'springs'>): SecondContact | undefined {
  const beside = BESIDE[type.name];
  const own = model.springs?.[springs.findIndex((spring) => spring !== 'ground' && spring.joint.path === joint.path)];
  if (beside === undefined || own === undefined) return undefined;
  const [what, name] = beside;
  const better = name === 'again' ? undefined : jointType(name)?.stiffness;
  const added = Object.fromEntries(STIFFNESS_KEYS.map((key) => [key, better === undefined ? stiffness[key] : Math.max(0, better[key] - stiffness[key])])) as unknown as Stiffness;
  const spring: NetworkSpring = { a: own.a, b: own.b, atMm: at.t, axes: axesOf(at), stiffness: added };
  return { says: `${what} between ${joint.b.piece.name} and ${joint.a.piece.name}`, variation: { key: `second contact ${joint.path}`, springs: [spring] } };
}
