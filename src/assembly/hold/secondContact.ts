import { STIFFNESS_KEYS, type NetworkSpring, type Stiffness } from '../../calc/mechanics/network/model.ts';
import { type JointType, jointType } from '../../standards/jointTypes.ts';
import { type JointHold, armOf, stiffnessOf } from './jointHold.ts';
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

type Rig = Pick<RigNetwork, 'model' | 'springs'>;

/** `undefined` where nothing usual would help: a mount, a wedge, two screws. */
export function secondContact(hold: JointHold, rig: Rig): SecondContact | undefined {
  const { joint, type } = hold;
  const arm = armOf(joint);
  if (arm !== undefined) return secondArm(arm, rig);
  const beside = BESIDE[type.name];
  if (beside === undefined) return undefined;
  const [what, name] = beside;
  const springs = added(hold, rig, name === 'again' ? undefined : jointType(name));
  return springs.length === 0 ? undefined : { says: `${what} between ${joint.b.piece.name} and ${joint.a.piece.name}`, variation: { key: `second contact ${joint.path}`, springs } };
}

/** Another screw at its foot leaves the elbow of an arm as soft as it is: only another arm helps, with all its joints. */
function secondArm({ ref, piece }: NonNullable<ReturnType<typeof armOf>>, rig: Rig): SecondContact {
  const own = rig.springs.flatMap((one) => (one !== 'ground' && armOf(one.joint)?.ref === ref ? [one] : []));
  return { says: `a second arm beside ${piece.name}`, variation: { key: `second arm ${ref}`, springs: own.flatMap((one) => added(one, rig, undefined)) } };
}

/** The spring beside a joint that makes it as stiff as another type, or twice as stiff as it is. */
function added({ joint, type, at, stiffness }: JointHold, { model, springs }: Rig, as: JointType | undefined): NetworkSpring[] {
  const own = model.springs?.[springs.findIndex((spring) => spring !== 'ground' && spring.joint.path === joint.path)];
  if (own === undefined) return [];
  const better = as === undefined ? undefined : stiffnessOf(joint, type, as);
  const more = Object.fromEntries(STIFFNESS_KEYS.map((key) => [key, better === undefined ? stiffness[key] : Math.max(0, better[key] - stiffness[key])])) as unknown as Stiffness;
  return [{ a: own.a, b: own.b, atMm: at.t, axes: axesOf(at), stiffness: more }];
}
