import type { Vector } from '../vector.ts';
import { times } from '../vector.ts';
import { checkModel, isRigid, needsBody } from './checkModel.ts';
import { type BeamElement, type Element, type SpringElement, beamElement, springElement } from './element.ts';
import { type Grouping, groupBodies } from './groups.ts';
import type { NetworkBody, NetworkModel } from './model.ts';

/** A bond between two bodies, and where what it carries is stated, in metres. */
export interface Bond {
  readonly a: number;
  readonly b: number;
  readonly place: Vector;
}

/** A checked model by numbers instead of names: the ground on which motion, forces and modes are reckoned. */
export interface Frame {
  readonly names: readonly string[];
  /** Place of a body in the model; a `NoAnswer` at this path where there is none of that name. */
  readonly indexOf: (name: string, path: string) => number;
  /** Centres of the bodies, in metres. */
  readonly centres: readonly Vector[];
  readonly fixed: readonly boolean[];
  readonly grouping: Grouping;
  /** One for each spring, then one for each beam; a rigid spring has none. */
  readonly springs: readonly (SpringElement | undefined)[];
  readonly beams: readonly BeamElement[];
  readonly bonds: readonly Bond[];
  /** Which bond stands for a rigid spring. */
  readonly bondOfSpring: ReadonlyMap<number, number>;
}

export function frameOf(model: NetworkModel): Frame {
  const { indexOf, axes } = checkModel(model);
  const centres = model.bodies.map((body) => times(body.centreMm, 1e-3));
  const ends = ({ a, b }: { readonly a: string; readonly b: string }) => [indexOf.get(a)!, indexOf.get(b)!] as const;
  const bonds = (model.bonds ?? []).map((bond): Bond => {
    const [a, b] = ends(bond);
    return { a, b, place: bond.atMm === undefined ? centres[b]! : times(bond.atMm, 1e-3) };
  });
  const bondOfSpring = new Map<number, number>();
  const springs = (model.springs ?? []).map((spring, i) => {
    const [a, b] = ends(spring);
    if (!isRigid(spring.stiffness)) return springElement(spring, axes[i], a, b);
    bondOfSpring.set(i, bonds.length);
    bonds.push({ a, b, place: times(spring.atMm, 1e-3) });
    return undefined;
  });
  const beams = (model.beams ?? []).map((beam) => beamElement(beam, ...ends(beam)));
  const names = model.bodies.map((body) => body.name);
  return grouped({ names, indexOf: (name, path) => needsBody(indexOf, name, path), centres, springs, beams, bonds, bondOfSpring }, model.bodies);
}

/** The same, with other bodies of it held. */
export const holding = (frame: Frame, bodies: readonly NetworkBody[]): Frame => grouped(frame, bodies);

function grouped(frame: Omit<Frame, 'fixed' | 'grouping'>, bodies: readonly NetworkBody[]): Frame {
  return { ...frame, fixed: bodies.map((body) => body.fixed === true), grouping: groupBodies(bodies, frame.bonds, elementsOf(frame)) };
}

/** The springy elements, springs first. */
export const elementsOf = ({ springs, beams }: Pick<Frame, 'springs' | 'beams'>): readonly Element[] => [...springs.filter((one) => one !== undefined), ...beams];
