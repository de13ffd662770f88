import { nearestName } from '../../../faults/nearestName.ts';
import { NoAnswer } from '../../calculator.ts';
import { type Tensor, type Vector, cross, length, minus, squared } from '../vector.ts';
import { STIFFNESS_KEYS, type NetworkBeam, type NetworkBody, type NetworkModel, type NetworkSpring, type Stiffness } from './model.ts';

/** Further out than this, or shorter, a place was written in another unit. */
const FURTHEST_MM = 1e8;
const SHORTEST_MM = 1e-3;
/** A unit vector written with three digits is still one. */
const AXES_WITHIN = 2e-3;

/** Refuses what no network can be made of, naming the entry. Gives the place of each body by its name. */
export function checkModel(model: NetworkModel): ReadonlyMap<string, number> {
  const indexOf = new Map<string, number>();
  model.bodies.forEach((body, i) => {
    if (indexOf.has(body.name)) throw new NoAnswer(`bodies/${i}/name`, `There are two bodies named "${body.name}". Give each a name of its own.`);
    indexOf.set(body.name, i);
    checkBody(body, `bodies/${i}`);
  });
  if (indexOf.size === 0) throw new NoAnswer('bodies', 'There is no body. Give at least one.');
  for (const kind of ['springs', 'beams', 'bonds'] as const) {
    (model[kind] ?? []).forEach(({ a, b }, i) => {
      for (const [key, name] of [['a', a], ['b', b]] as const) needsBody(indexOf, name, `${kind}/${i}/${key}`);
      if (a === b) throw new NoAnswer(`${kind}/${i}`, `Both ends are on "${a}". Name two bodies.`);
    });
  }
  (model.springs ?? []).forEach((spring, i) => checkSpring(spring, `springs/${i}`));
  (model.beams ?? []).forEach((beam, i) => checkBeam(beam, `beams/${i}`));
  return indexOf;
}

export function needsBody(indexOf: ReadonlyMap<string, number>, name: string, path: string): number {
  const index = indexOf.get(name);
  if (index !== undefined) return index;
  const near = nearestName(name, indexOf.keys());
  throw new NoAnswer(path, `There is no body named "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`}`);
}

function checkPlace(place: Vector, path: string): void {
  const k = place.findIndex((value) => Math.abs(value) > FURTHEST_MM);
  if (k >= 0) throw new NoAnswer(`${path}/${k}`, `Found ${place[k]} mm; a rig ends within ${FURTHEST_MM} mm. Check the unit.`);
}

function checkBody(body: NetworkBody, path: string): void {
  checkPlace(body.centreMm, `${path}/centreMm`);
  if (body.fixed !== true && body.massG === undefined) throw new NoAnswer(`${path}/massG`, `"${body.name}" has no mass. Give it; 0 is allowed.`);
  if (body.inertiaKgM2 !== undefined) checkInertia(body.inertiaKgM2, `${path}/inertiaKgM2`);
}

/** No motion may have less than no energy; rounding of written digits is allowed for. */
function checkInertia(j: Tensor, path: string): void {
  const size = Math.max(j[0][0], j[1][1], j[2][2], 0);
  const slack = 1e-6 * size;
  const pairs = [[j[0][1], j[1][0]], [j[1][2], j[2][1]], [j[2][0], j[0][2]]] as const;
  if (pairs.some(([upper, lower]) => Math.abs(upper - lower) > slack)) {
    throw new NoAnswer(path, 'The tensor is not symmetric: entries across its diagonal must be equal.');
  }
  const minors = [j[0][0], j[1][1], j[2][2], minor(j, 0, 1), minor(j, 1, 2), minor(j, 2, 0)];
  if (minors.slice(0, 3).some((one) => one < 0) || minors.slice(3).some((one) => one < -slack * size) || determinant(j) < -slack * size * size) {
    throw new NoAnswer(path, 'No body has this tensor: it would have negative energy about some axis. Check the signs of its products of inertia.');
  }
}

const minor = (j: Tensor, p: 0 | 1 | 2, q: 0 | 1 | 2) => j[p][p] * j[q][q] - j[p][q] * j[q][p];

function determinant([a, b, c]: Tensor): number {
  const [x, y, z] = cross(b, c);
  return a[0] * x + a[1] * y + a[2] * z;
}

function checkSpring({ stiffness, axes, atMm }: NetworkSpring, path: string): void {
  checkPlace(atMm, `${path}/atMm`);
  const infinite = STIFFNESS_KEYS.filter((key) => stiffness[key] === Infinity);
  if (infinite.length > 0 && infinite.length < STIFFNESS_KEYS.length) {
    throw new NoAnswer(
      `${path}/stiffness/${infinite[0]}`,
      'Found infinity (null) beside finite values. Give a finite stiffness, or infinity for all six, which makes the two bodies one.',
    );
  }
  if (axes !== undefined && squared(axes, AXES_WITHIN) === undefined) {
    throw new NoAnswer(`${path}/axes`, 'The three axes must be unit vectors square to one another.');
  }
}

export const isRigid = (stiffness: Stiffness): boolean => STIFFNESS_KEYS.every((key) => stiffness[key] === Infinity);

/** The axes made exactly square, so that turning a body as a whole strains nothing. */
export function exactAxes(spring: NetworkSpring): NetworkSpring {
  return spring.axes === undefined ? spring : { ...spring, axes: squared(spring.axes, AXES_WITHIN) };
}

function checkBeam(beam: NetworkBeam, path: string): void {
  checkPlace(beam.fromMm, `${path}/fromMm`);
  checkPlace(beam.toMm, `${path}/toMm`);
  const span = minus(beam.toMm, beam.fromMm);
  if (!(length(span) >= SHORTEST_MM)) throw new NoAnswer(`${path}/toMm`, 'The beam begins where it ends. Give two places apart.');
  if (beam.localY === undefined && beam.iyMm4 !== beam.izMm4) {
    throw new NoAnswer(
      `${path}/localY`, 'This is missing, and the beam bends more easily one way than the other. Give the direction of its local y.',
    );
  }
  if (beam.localY !== undefined && !(sine(beam.localY, span) > 1e-6)) {
    throw new NoAnswer(`${path}/localY`, 'Local y lies along the beam, or is nothing. Give a direction across it.');
  }
}

const sine = (a: Vector, b: Vector) => length(cross(a, b)) / (length(a) * length(b));
