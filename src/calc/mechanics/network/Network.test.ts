import { fc, test as property } from '@fast-check/vitest';
import { CholeskyDecomposition, EigenvalueDecomposition, Matrix, inverse } from 'ml-matrix';
import { expect, test } from 'vitest';
import { type Tensor, type Vector, cross, dot, minus, plus, times } from '../vector.ts';
import {
  STIFFNESS_KEYS, type NetworkBeam, type NetworkBody, type NetworkLoad, type NetworkModel, type NetworkSpring, type Stiffness,
} from './model.ts';
import { Network } from './Network.ts';

/** A random tree of bodies with some joints across, some of them bars, one body of six without mass; stiffness over four decades. */
type Rig = Required<Omit<NetworkModel, 'bonds'>>;
function randomRig(size: number, seed: number): Rig {
  let state = seed * 2 + 1;
  const random = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  const around = (reach: number): Vector => [reach * (random() - 0.5), reach * (random() - 0.5), reach * (random() - 0.5)];
  const bodies: NetworkBody[] = [{ name: 'ground', centreMm: [0, 0, 0], fixed: true }];
  const springs: NetworkSpring[] = [];
  const beams: NetworkBeam[] = [];
  const join = (a: number, b: number) => {
    const [from, to] = [bodies[a]!.centreMm, bodies[b]!.centreMm];
    const ends = { a: bodies[a]!.name, b: bodies[b]!.name };
    if (random() < 0.3) {
      beams.push({
        ...ends, fromMm: plus(from, around(10)), toMm: plus(to, around(10)), youngGPa: 71, shearGPa: 26.2,
        areaMm2: 60 + 90 * random(), iyMm4: 500 + 2000 * random(),
        izMm4: 500 + 2000 * random(), jMm4: 1000 + 3000 * random(), localY: around(1), ...(random() < 0.5 ? { shearAreaMm2: 40 } : {}),
      });
    } else {
      const firmness = 10 ** (4 * random());
      const stiffness = Object.fromEntries(STIFFNESS_KEYS.map((key) => [key, firmness * (0.5 + random())])) as unknown as Stiffness;
      springs.push({ ...ends, atMm: times(plus(from, to), 0.5), axes: turnedAxes(around(6)), stiffness });
    }
  };
  for (let i = 1; i < size; i++) {
    const parent = Math.floor(random() * i);
    const massG = i % 6 === 5 ? 0 : 50 + 2000 * random();
    const inertia = massG * 1e-6 * (0.5 + random());
    bodies.push(
      {
        name: `body ${i}`, centreMm: plus(bodies[parent]!.centreMm, around(150)), massG,
        inertiaKgM2: [[inertia, inertia / 5, 0], [inertia / 5, inertia, 0], [0, 0, inertia]],
      },
    );
    join(parent, i);
    if (random() < 0.2 && i > 2) join(Math.floor(random() * i), i);
  }
  return { bodies, springs, beams };
}

/** Axes turned by a rotation vector (Rodrigues). */
function turnedAxes(by: Vector): Tensor {
  const angle = Math.hypot(...by);
  const k = times(by, 1 / angle);
  const turn = (v: Vector): Vector =>
    plus(plus(times(v, Math.cos(angle)), times(cross(k, v), Math.sin(angle))), times(k, dot(k, v) * (1 - Math.cos(angle))));
  return [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])];
}

/**
 * The same by other means, dense, from energy: springs by their stretch; bars by the inverse of their flexibility at the free end
 * (l³/3EI and its kin), which the slope-deflection coefficients are not made from. Six unknowns for each body that moves.
 */
function denseStiffness(model: Rig): Matrix {
  const index = new Map(model.bodies.map((body, i) => [body.name, i - 1]));
  const size = 6 * (model.bodies.length - 1);
  const whole = Matrix.zeros(size, size);
  const motion = (body: number, place: Vector, unknown: number): [Vector, Vector] => {
    const k = unknown - body * 6;
    if (body < 0 || k < 0 || k > 5) return [[0, 0, 0], [0, 0, 0]];
    const unit: Vector = [k % 3 === 0 ? 1 : 0, k % 3 === 1 ? 1 : 0, k % 3 === 2 ? 1 : 0];
    return k < 3 ? [unit, [0, 0, 0]] : [cross(unit, minus(place, times(model.bodies[body + 1]!.centreMm, 1e-3))), unit];
  };
  const addJoint = (a: number, b: number, placeA: Vector, placeB: Vector, axes: Tensor, stiffness: Matrix) => {
    const strains = Array.from({ length: size }, (_, unknown) => {
      const [[shiftA, turnA], [shiftB, turnB]] = [motion(a, placeA, unknown), motion(b, placeB, unknown)];
      // B as seen by someone who rides on A.
      const shift = minus(shiftB, plus(shiftA, cross(turnA, minus(placeB, placeA))));
      const turn = minus(turnB, turnA);
      return [...axes.map((axis) => dot(axis, shift)), ...axes.map((axis) => dot(axis, turn))];
    });
    const strain = new Matrix(strains);
    whole.add(strain.mmul(stiffness).mmul(strain.transpose()));
  };
  for (const { a, b, atMm, axes, stiffness } of model.springs) {
    const place = times(atMm, 1e-3);
    addJoint(
      index.get(a)!, index.get(b)!, place, place, axes!, Matrix.diag(STIFFNESS_KEYS.map((key) => stiffness[key] * (key.endsWith('Mm') ? 1000 : 1))),
    );
  }
  for (const beam of model.beams) {
    const [placeA, placeB] = [times(beam.fromMm, 1e-3), times(beam.toMm, 1e-3)];
    const span = minus(placeB, placeA);
    const l = Math.hypot(...span);
    const x = times(span, 1 / l);
    const across = minus(beam.localY!, times(x, dot(x, beam.localY!)));
    const y = times(across, 1 / Math.hypot(...across));
    const [young, shear] = [beam.youngGPa * 1e9, beam.shearGPa * 1e9];
    const [ey, ez] = [young * beam.iyMm4 * 1e-12, young * beam.izMm4 * 1e-12];
    const slack = beam.shearAreaMm2 === undefined ? 0 : l / (shear * beam.shearAreaMm2 * 1e-6);
    const flexibility = Matrix.diag(
      [l / (young * beam.areaMm2 * 1e-6), l ** 3 / (3 * ez) + slack, l ** 3 / (3 * ey) + slack, l / (shear * beam.jMm4 * 1e-12), l / ey, l / ez],
    );
    flexibility.set(1, 5, l ** 2 / (2 * ez)).set(5, 1, l ** 2 / (2 * ez));
    flexibility.set(2, 4, -(l ** 2) / (2 * ey)).set(4, 2, -(l ** 2) / (2 * ey));
    addJoint(index.get(beam.a)!, index.get(beam.b)!, placeA, placeB, [x, y, cross(x, y)], inverse(flexibility));
  }
  return whole;
}

/** The six lowest frequencies by the library: 1/ω² of Lᵀ·K⁻¹·L, with a full eigen decomposition. */
function denseFrequencies(model: Rig, stiffness: Matrix): number[] {
  const bodies = model.bodies.slice(1);
  const half = Matrix.zeros(stiffness.rows, stiffness.rows);
  bodies.forEach(({ massG, inertiaKgM2 }, i) => {
    if (massG === 0) return;
    for (let k = 0; k < 3; k++) half.set(i * 6 + k, i * 6 + k, Math.sqrt(massG! * 1e-3));
    half.setSubMatrix(new CholeskyDecomposition(new Matrix(inertiaKgM2!.map((row) => [...row]))).lowerTriangularMatrix, i * 6 + 3, i * 6 + 3);
  });
  const symmetric = Matrix.add(stiffness, stiffness.transpose()).div(2);
  const flexible = half.transpose().mmul(new CholeskyDecomposition(symmetric).solve(half));
  const { realEigenvalues } = new EigenvalueDecomposition(flexible.add(flexible.transpose()).div(2), { assumeSymmetric: true });
  return realEigenvalues.sort((a, b) => b - a).slice(0, 6).map((value) => 1 / (2 * Math.PI * Math.sqrt(value)));
}

const seeds = fc.integer({ min: 1, max: 100_000 });

const rigs = (most: number, numRuns: number) => property.prop([fc.integer({ min: 3, max: most }), seeds], { numRuns });

rigs(22, 25)('a random rig moves and swings as a dense model made by other means, solved by a general library', (size, seed) => {
  const model = randomRig(size, seed);
  const network = new Network(model);
  const dense = denseStiffness(model);
  const last = model.bodies.at(-1)!.name;
  const motion = network.solve([{ body: last, forceN: [1, -20, 3], momentNm: [0.1, 0.2, -0.3] }]).motion;
  const load = Matrix.zeros(dense.rows, 1);
  [1, -20, 3, 0.1, 0.2, -0.3].forEach((value, k) => load.set(dense.rows - 6 + k, 0, value));
  const expected = new CholeskyDecomposition(Matrix.add(dense, dense.transpose()).div(2)).solve(load).to1DArray();
  const moved = motion.bodies().slice(1).flatMap(({ shiftMm, turnDeg }) => [...times(shiftMm, 1e-3), ...times(turnDeg, Math.PI / 180)]);
  const largest = Math.max(...expected.map(Math.abs));
  expected.forEach((value, i) => expect(Math.abs(moved[i]! - value) / largest).toBeLessThan(1e-6));
  const modes = network.modes(6);
  denseFrequencies(model, dense).forEach((value, k) => expect(Math.abs(modes[k]!.frequencyHz / value - 1)).toBeLessThan(1e-6));
});

rigs(60, 30)('what the ground gives is the loads turned round, and loads move each other\'s places mutually (Maxwell)', (size, seed) => {
  const model = randomRig(size, seed);
  const network = new Network(model);
  const [one, other] = [model.bodies[1]!, model.bodies[size - 1]!];
  const [here, there]: [Vector, Vector] = [plus(one.centreMm, [5, 7, -3]), plus(other.centreMm, [-8, 2, 4])];
  const [p, q]: [Vector, Vector] = [[3, -5, 2], [1, 4, -2]];
  const first: NetworkLoad = { body: one.name, forceN: p, atMm: here };
  const second: NetworkLoad = { body: other.name, forceN: q, momentNm: [0, 0, 0], atMm: there };
  const [a, b] = [network.solve([first]), network.solve([second])];
  const [forth, back] = [dot(p, b.motion.shiftAt(one.name, here)), dot(q, a.motion.shiftAt(other.name, there))];
  const own = dot(p, a.motion.shiftAt(one.name, here));
  expect(Math.abs(forth - back)).toBeLessThan(1e-6 * own);
  const { forceN, momentNm } = network.solve([first, second]).reaction([0, 0, 0]);
  const sum = plus(p, q);
  const moment = times(plus(cross(here, p), cross(there, q)), 1e-3);
  forceN.forEach((value, k) => expect(value).toBeCloseTo(-sum[k]!, 5));
  momentNm.forEach((value, k) => expect(value).toBeCloseTo(-moment[k]!, 5));
});

property.prop(
  [fc.integer({ min: 3, max: 40 }), seeds, fc.double({ min: 0.1, max: 3, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true })],
  { numRuns: 20 },
)(
  'a rig turned and carried elsewhere swings at the same frequencies',
  (size, seed, one, other) => {
    const model = randomRig(size, seed);
    const axes = turnedAxes([one, other, 0.3]);
    const turn = (v: Vector): Vector => plus(plus(times(axes[0], v[0]), times(axes[1], v[1])), times(axes[2], v[2]));
    const carry = (v: Vector): Vector => plus(turn(v), [300, -200, 900]);
    // J → R·J·Rᵀ, R with the axes as columns.
    const turnTensor = (j: Tensor): Tensor => {
      const r = new Matrix(axes.map((row) => [...row])).transpose();
      return r.mmul(new Matrix(j.map((row) => [...row]))).mmul(r.transpose()).to2DArray() as unknown as Tensor;
    };
    const moved: NetworkModel = {
      bodies: model.bodies.map((body) => ({
        ...body, centreMm: carry(body.centreMm), inertiaKgM2: body.inertiaKgM2 && turnTensor(body.inertiaKgM2),
      })),
      springs: model.springs.map((spring) => ({ ...spring, atMm: carry(spring.atMm), axes: spring.axes!.map(turn) as unknown as Tensor })),
      beams: model.beams.map((beam) => ({ ...beam, fromMm: carry(beam.fromMm), toMm: carry(beam.toMm), localY: turn(beam.localY!) })),
    };
    const [before, after] = [new Network(model).modes(6), new Network(moved).modes(6)];
    expect(after).toHaveLength(before.length);
    before.forEach(({ frequencyHz }, k) => expect(after[k]!.frequencyHz / frequencyHz).toBeCloseTo(1, 6));
  },
);

property.prop([fc.integer({ min: 3, max: 60 }), seeds, fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 5 })], { numRuns: 60 })(
  'a joint let go in one way, however it is turned, names what hangs on it and nothing else',
  (size, seed, which, way) => {
    const { bodies, springs, beams } = randomRig(size, seed);
    const parents = [...springs, ...beams];
    // Without the joints that close loops: the first to name a body is the one it hangs on.
    const hangsOn = new Map<string, string>();
    const inOrder = parents.toSorted((a, b) => Number(a.b.slice(5)) - Number(b.b.slice(5)));
    const tree = inOrder.filter(({ a, b }) => !hangsOn.has(b) && hangsOn.set(b, a));
    const treeSprings = springs.filter((spring) => tree.includes(spring));
    const target = treeSprings[which % treeSprings.length];
    if (target === undefined) return;
    const loose = treeSprings.map((spring) => (spring === target ? {
      ...spring, stiffness: { ...spring.stiffness, [STIFFNESS_KEYS[way]!]: 0 },
    } : spring));
    const { freeMotions } = new Network({ bodies, springs: loose, beams: beams.filter((beam) => tree.includes(beam)) });
    const behind = (name: string): boolean => name === target.b || (hangsOn.has(name) && behind(hangsOn.get(name)!));
    expect(freeMotions.map((found) => [...found.bodies].sort())).toEqual([bodies.map(({ name }) => name).filter(behind).sort()]);
    expect(freeMotions[0]!.ways).toBe(1);
  },
);

test('held rigs over four decades of stiffness are never called loose', () => {
  for (let seed = 1; seed <= 200; seed++) expect(new Network(randomRig(40, seed)).freeMotions).toEqual([]);
});

test('many load cases on one factoring add up', () => {
  const network = new Network(randomRig(30, 7));
  const shift = (loads: NetworkLoad[]) => network.solve(loads).motion.shiftAt('body 20', [0, 0, 0]);
  const [a, b]: [NetworkLoad, NetworkLoad] = [{ body: 'body 20', forceN: [0, -5, 0] }, { body: 'body 4', momentNm: [0.2, 0, 0.1] }];
  const [alone, too, both] = [shift([a]), shift([b]), shift([a, b])];
  both.forEach((value, k) => expect(value).toBeCloseTo(alone[k]! + too[k]!, 9));
});

test('of a lens as seen from the sensor, only what lies between them counts', () => {
  const network = new Network({
    bodies: [
      { name: 'ground', centreMm: [0, 0, 0], fixed: true }, { name: 'body', massG: 2000, centreMm: [0, 0, 0] },
      { name: 'lens', massG: 1500, centreMm: [0, 0, 100] },
    ],
    springs: [
      { a: 'ground', b: 'body', atMm: [0, -60, 0], stiffness: { xNPerMm: 1, yNPerMm: 1, zNPerMm: 1, xNmPerRad: 10, yNmPerRad: 10, zNmPerRad: 10 } },
      {
        a: 'body', b: 'lens', atMm: [0, 0, 50],
        stiffness: { xNPerMm: 500, yNPerMm: 500, zNPerMm: 500, xNmPerRad: 2000, yNmPerRad: 2000, zNmPerRad: 2000 },
      },
    ],
  });
  const { motion } = network.solve([{ body: 'lens', forceN: [10, 0, 0], atMm: [0, 0, 50] }]);
  const { shiftMm, turnDeg } = motion.relative({ of: 'lens', to: 'body', atMm: [0, 0, 50] });
  expect(shiftMm[0]).toBeCloseTo(10 / 500, 9);
  turnDeg.forEach((value) => expect(value).toBeCloseTo(0, 9));
  expect(motion.shiftAt('lens', [0, 0, 50])[0]).toBeGreaterThan(10);
});

test('a network that does not hold is a mistake to solve', () => {
  const network = new Network({ bodies: [{ name: 'lone', massG: 1, centreMm: [0, 0, 0] }] });
  expect(network.freeMotions[0]).toMatchObject({ bodies: ['lone'], ways: 6 });
  expect(() => network.solve([])).toThrow('does not hold together');
});

property.prop([fc.integer({ min: 2, max: 6 }), fc.integer({ min: 1, max: 500 })])('all modes together, each with the work of a force in it over ω², make the static shift', (size, seed) => {
  // Modal superposition of a static load (any textbook of structural dynamics); exact where every direction has mass.
  const rig = randomRig(size, seed);
  const solid = { ...rig, bodies: rig.bodies.map((body) => (body.fixed === true ? body : { ...body, massG: 500, inertiaKgM2: [[2e-4, 0, 0], [0, 2e-4, 0], [0, 0, 2e-4]] as Tensor })) };
  const network = new Network(solid);
  const [body, atMm, forceN] = [`body ${size - 1}`, solid.bodies[size - 1]!.centreMm, [3, -20, 5] as Vector];
  const modes = network.modes(6 * (size - 1));
  const sum = modes.reduce<Vector>((all, { shape, frequencyHz }) => {
    const moved = shape.shiftAt(body, atMm);
    return plus(all, times(moved, (dot(moved, forceN) * 1e-3) / (2 * Math.PI * frequencyHz) ** 2));
  }, [0, 0, 0]);
  const still = network.solve([{ body, forceN, atMm }]).motion.shiftAt(body, atMm);
  expect(Math.hypot(...minus(sum, still))).toBeLessThan(1e-6 * Math.hypot(...still));
});
