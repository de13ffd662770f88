import type { Vector } from '../vector.ts';
import { times } from '../vector.ts';
import { exactAxes, checkModel, isRigid, needsBody } from './checkModel.ts';
import { type Element, beamElement, springElement } from './element.ts';
import { type Grouping, groupBodies } from './groups.ts';
import type { NetworkModel } from './model.ts';

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
  readonly springs: readonly (Element | undefined)[];
  readonly beams: readonly Element[];
  readonly bonds: readonly Bond[];
  /** Which bond stands for a rigid spring. */
  readonly bondOfSpring: ReadonlyMap<number, number>;
}

export function frameOf(model: NetworkModel): Frame {
  const indexes = checkModel(model);
  const indexOf = (name: string, path: string) => needsBody(indexes, name, path);
  const centres = model.bodies.map((body) => times(body.centreMm, 1e-3));
  const ends = ({ a, b }: { readonly a: string; readonly b: string }) => [indexOf(a, ''), indexOf(b, '')] as const;
  const bonds = (model.bonds ?? []).map((bond): Bond => {
    const [a, b] = ends(bond);
    return { a, b, place: bond.atMm === undefined ? centres[b]! : times(bond.atMm, 1e-3) };
  });
  const bondOfSpring = new Map<number, number>();
  const springs = (model.springs ?? []).map((spring, i) => {
    const [a, b] = ends(spring);
    if (!isRigid(spring.stiffness)) return springElement(exactAxes(spring), a, b);
    bondOfSpring.set(i, bonds.length);
    bonds.push({ a, b, place: times(spring.atMm, 1e-3) });
    return undefined;
  });
  const beams = (model.beams ?? []).map((beam) => beamElement(beam, ...ends(beam)));
  const links = [...springs, ...beams].flatMap((element) => (element === undefined ? [] : [[element.a, element.b] as const]));
  return {
    names: model.bodies.map((body) => body.name),
    indexOf,
    centres,
    fixed: model.bodies.map((body) => body.fixed === true),
    grouping: groupBodies(model.bodies, bonds.map(({ a, b }) => [a, b] as const), links),
    springs,
    beams,
    bonds,
    bondOfSpring,
  };
}

/** The springy elements, springs first. */
export const elementsOf = (frame: Frame): readonly Element[] => [...frame.springs.filter((one) => one !== undefined), ...frame.beams];
