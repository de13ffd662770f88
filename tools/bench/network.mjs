/** The network of a 60-piece rig, static and with six frequencies, beside the dense general-purpose matrix library on the same system. */
import { CholeskyDecomposition, EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { median, timed } from './timed.mjs';
import { Network } from '../../src/calc/mechanics/network/Network.ts';

const PIECES = 60;

export async function bench() {
  const model = rig(PIECES);
  const loads = [{ body: 'piece 40', forceN: [0, -20, 5], momentNm: [0.1, 0, 0] }];
  const staticMs = median(40, () => timed(() => new Network(model).solve(loads).motion.bodies()));
  const sixMs = median(25, () => timed(() => {
    const network = new Network(model);
    network.solve(loads).motion.bodies();
    return network.modes(6);
  }));
  const { stiffness, mass } = dense(model, new Network(model));
  const loadVector = Matrix.columnVector(stiffness.to2DArray().map((_, k) => Math.sin(k)));
  const denseStaticMs = median(5, () => timed(() => new CholeskyDecomposition(stiffness).solve(loadVector)));
  const denseSixMs = median(3, () => timed(() => denseFrequencies(stiffness, mass)));
  const floorName = 'ml-matrix, dense';
  return [
    { name: `network: ${PIECES} pieces, one load case`, ms: staticMs, aimMs: 20, floorName, floorMs: denseStaticMs, limitRatio: 1 },
    { name: `network: ${PIECES} pieces, one load case and six frequencies`, ms: sixMs, aimMs: 60, floorName, floorMs: denseSixMs, limitRatio: 1 },
  ];
}

/** An invented rig: a tree of joints of stiffness over two decades, with some across. */
function rig(size) {
  let state = 11;
  const random = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  const bodies = [{ name: 'piece 0', centreMm: [0, 0, 0], fixed: true }];
  const springs = [];
  const join = (a, b) => {
    const firmness = 10 ** (2 * random());
    const [across, nodding] = [300 * firmness, 20 * firmness];
    springs.push({
      a: `piece ${a}`, b: `piece ${b}`, atMm: bodies[a].centreMm.map((x, k) => (x + bodies[b].centreMm[k]) / 2),
      stiffness: { xNPerMm: across, yNPerMm: across, zNPerMm: 2 * across, xNmPerRad: nodding, yNmPerRad: nodding, zNmPerRad: nodding },
    });
  };
  for (let i = 1; i < size; i++) {
    const parent = Math.floor(random() * i);
    const massG = 100 + 1500 * random();
    const inertia = massG * 1e-6 * (1 + random());
    const centreMm = bodies[parent].centreMm.map((x) => x + 120 * (random() - 0.5));
    bodies.push({ name: `piece ${i}`, massG, centreMm, inertiaKgM2: [[inertia, 0, 0], [0, inertia, 0], [0, 0, inertia]] });
    join(parent, i);
    if (i > 3 && random() < 0.2) join(Math.floor(random() * i), i);
  }
  return { bodies, springs };
}

/** The same system as full matrices: flexibility column by column, then its inverse. */
export function dense(model, network) {
  const free = model.bodies.slice(1);
  const columns = free.flatMap(({ name }) =>
    [0, 1, 2, 3, 4, 5].map((k) => {
      const unit = [0, 1, 2].map((axis) => (axis === k % 3 ? 1 : 0));
      const { motion } = network.solve([k < 3 ? { body: name, forceN: unit } : { body: name, momentNm: unit }]);
      return motion.bodies().slice(1).flatMap(({ shiftMm, turnDeg }) => [...shiftMm.map((x) => x / 1000), ...turnDeg.map((x) => (x * Math.PI) / 180)]);
    }),
  );
  const flexibility = new Matrix(columns);
  const stiffness = new CholeskyDecomposition(flexibility.add(flexibility.transpose()).div(2)).solve(Matrix.eye(columns.length));
  const mass = free.flatMap(({ massG, inertiaKgM2 }) => [...Array(3).fill(massG / 1000), ...inertiaKgM2.map((row, k) => row[k])]);
  return { stiffness: stiffness.add(stiffness.transpose()).div(2), mass };
}

export function denseFrequencies(stiffness, mass) {
  const half = Matrix.diag(mass.map((one) => 1 / Math.sqrt(one)));
  const scaled = half.mmul(stiffness).mmul(half);
  return new EigenvalueDecomposition(scaled.add(scaled.transpose()).div(2), { assumeSymmetric: true }).realEigenvalues.sort((a, b) => a - b).slice(0, 6);
}
