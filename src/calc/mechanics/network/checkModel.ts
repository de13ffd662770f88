import { nearestName } from '../../../faults/nearestName.ts';
import { NoAnswer } from '../../calculator.ts';
import { NO_INERTIA } from '../massProperties.ts';
import { type Tensor, type Vector, cross, length, minus, squared } from '../vector.ts';
import { STIFFNESS_KEYS, type NetworkBeam, type NetworkBody, type NetworkModel, type NetworkSpring, type Stiffness } from './model.ts';

/** Further out than this, or shorter, a place was written in another unit. */
const FURTHEST_MM = 1e8;
const SHORTEST_MM = 1e-3;
/** A unit vector written with three digits is still one. */
const AXES_WITHIN = 2e-3;

/** What is known of a model once it is checked. */
export interface Checked {
  /** The place of each body by its name. */
  readonly indexOf: ReadonlyMap<string, number>;
  /** Axes of each spring made exactly square, so that turning a body as a whole strains nothing; `undefined`: the common axes. */
  readonly axes: readonly (Tensor | undefined)[];
}

/** Refuses what no network can be made of, naming the entry. */
export function checkModel({ bodies, springs = [], beams = [], bonds = [] }: NetworkModel): Checked {
  const indexOf = new Map<string, number>();
  for (const [i, body] of bodies.entries()) {
    if (indexOf.has(body.name)) throw new NoAnswer(`bodies/${i}/name`, `There are two bodies named "${body.name}". Give each a name of its own.`);
    indexOf.set(body.name, i);
    checkBody(body, i);
  }
  if (indexOf.size === 0) throw new NoAnswer('bodies', 'There is no body. Give at least one.');
  checkEnds(indexOf, 'springs', springs);
  checkEnds(indexOf, 'beams', beams);
  checkEnds(indexOf, 'bonds', bonds);
  const axes = springs.map(checkSpring);
  beams.forEach(checkBeam);
  return { indexOf, axes };
}

/** Paths are put together only where something is amiss: a rig is checked anew for every cure that is tried. */
function checkEnds(indexOf: ReadonlyMap<string, number>, kind: 'springs' | 'beams' | 'bonds', all: readonly { readonly a: string; readonly b: string }[]): void {
  for (const [i, { a, b }] of all.entries()) {
    if (!indexOf.has(a)) needsBody(indexOf, a, `${kind}/${i}/a`);
    if (!indexOf.has(b)) needsBody(indexOf, b, `${kind}/${i}/b`);
    if (a === b) throw new NoAnswer(`${kind}/${i}`, `Both ends are on "${a}". Name two bodies.`);
  }
}

export function needsBody(indexOf: ReadonlyMap<string, number>, name: string, path: string): number {
  const index = indexOf.get(name);
  if (index !== undefined) return index;
  const near = nearestName(name, indexOf.keys());
  throw new NoAnswer(path, `There is no body named "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`}`);
}

const isNear = (value: number): boolean => !(Math.abs(value) > FURTHEST_MM);

function checkPlace(place: Vector, kind: string, i: number, key: string): void {
  if (isNear(place[0]) && isNear(place[1]) && isNear(place[2])) return;
  const k = place.findIndex((value) => !isNear(value));
  throw new NoAnswer(`${kind}/${i}/${key}/${k}`, `Found ${place[k]} mm; a rig ends within ${FURTHEST_MM} mm. Check the unit.`);
}

function checkBody({ name, fixed, massG, centreMm, inertiaKgM2 }: NetworkBody, i: number): void {
  checkPlace(centreMm, 'bodies', i, 'centreMm');
  if (fixed !== true && massG === undefined) throw new NoAnswer(`bodies/${i}/massG`, `"${name}" has no mass. Give it; 0 is allowed.`);
  if (inertiaKgM2 !== undefined && inertiaKgM2 !== NO_INERTIA) checkInertia(inertiaKgM2, i);
}

/** No motion may have less than no energy; rounding of written digits is allowed for. */
function checkInertia(j: Tensor, i: number): void {
  const least = Math.min(j[0][0], j[1][1], j[2][2]);
  const size = Math.max(j[0][0], j[1][1], j[2][2], 0);
  const slack = 1e-6 * size;
  const skew = Math.max(Math.abs(j[0][1] - j[1][0]), Math.abs(j[1][2] - j[2][1]), Math.abs(j[2][0] - j[0][2]));
  if (skew > slack) throw new NoAnswer(`bodies/${i}/inertiaKgM2`, 'The tensor is not symmetric: entries across its diagonal must be equal.');
  const leastMinor = Math.min(minor(j, 0, 1), minor(j, 1, 2), minor(j, 2, 0));
  if (least < 0 || leastMinor < -slack * size || determinant(j) < -slack * size * size) {
    throw new NoAnswer(
      `bodies/${i}/inertiaKgM2`, 'No body has this tensor: it would have negative energy about some axis. Check the signs of its products of inertia.',
    );
  }
}

const minor = (j: Tensor, p: 0 | 1 | 2, q: 0 | 1 | 2) => j[p][p] * j[q][q] - j[p][q] * j[q][p];

function determinant(rows: Tensor): number {
  const a = rows[0];
  const b = rows[1];
  const c = rows[2];
  return a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
}

function checkSpring({ stiffness, axes, atMm }: NetworkSpring, i: number): Tensor | undefined {
  checkPlace(atMm, 'springs', i, 'atMm');
  if (STIFFNESS_KEYS.some((key) => stiffness[key] === Infinity) && !isRigid(stiffness)) {
    throw new NoAnswer(
      `springs/${i}/stiffness/${STIFFNESS_KEYS.find((key) => stiffness[key] === Infinity)}`,
      'Found infinity (null) beside finite values. Give a finite stiffness, or infinity for all six, which makes the two bodies one.',
    );
  }
  if (axes === undefined) return undefined;
  const square = squared(axes, AXES_WITHIN);
  if (square === undefined) throw new NoAnswer(`springs/${i}/axes`, 'The three axes must be unit vectors square to one another.');
  return square;
}

export const isRigid = (stiffness: Stiffness): boolean => STIFFNESS_KEYS.every((key) => stiffness[key] === Infinity);

function checkBeam({ fromMm, toMm, localY, iyMm4, izMm4 }: NetworkBeam, i: number): void {
  checkPlace(fromMm, 'beams', i, 'fromMm');
  checkPlace(toMm, 'beams', i, 'toMm');
  const span = minus(toMm, fromMm);
  if (!(length(span) >= SHORTEST_MM)) throw new NoAnswer(`beams/${i}/toMm`, 'The beam begins where it ends. Give two places apart.');
  if (localY === undefined && iyMm4 !== izMm4) {
    throw new NoAnswer(
      `beams/${i}/localY`, 'This is missing, and the beam bends more easily one way than the other. Give the direction of its local y.',
    );
  }
  if (localY !== undefined && !(sine(localY, span) > 1e-6)) {
    throw new NoAnswer(`beams/${i}/localY`, 'Local y lies along the beam, or is nothing. Give a direction across it.');
  }
}

const sine = (a: Vector, b: Vector) => length(cross(a, b)) / (length(a) * length(b));
