/** Hold, balance, swap and carry: every question of a 60-piece setup with one lens, and the order of a day; parts invented. */
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { dense, denseFrequencies } from './network.mjs';
import { bigShoot } from './space.mjs';
import { median, timed } from './timed.mjs';
import { rigNetwork } from '../../src/assembly/hold/rigNetwork.ts';
import { placeSetup } from '../../src/assembly/placing/placeSetup.ts';
import { swapOrder } from '../../src/calc/mechanics/swapOrder.ts';
import { Asking } from '../../src/check/Asking.ts';
import { questions } from '../../src/check/questions/index.generated.ts';
import { Ledger } from '../../src/shoot/ledger/Ledger.ts';

const SETUP = 'jetty-sticks';
const GLASS = 'glass-9';
const BLOCKS = 14;
/** So often is all asked before it counts as warm. */
const WARM = 100;

export async function bench() {
  const shoot = oneLens();
  const asked = questions.filter(({ id }) => /^(hold|balance|swap|carry)\./.test(id));
  const askAll = (wanted) => {
    const ledger = new Ledger(shoot);
    placeSetup(ledger, SETUP, GLASS);
    const asking = new Asking(ledger);
    return timed(() => wanted.forEach((question) => question.subjects(ledger).forEach((subject) => question.ask(asking, subject))));
  };
  const still = asked.filter(({ kind }) => kind === 'immediate');
  const stillMs = median(25, () => askAll(still), WARM);
  const allMs = median(15, () => askAll(asked), WARM);
  const { network, model } = rigNetwork(new Ledger(shoot), SETUP, GLASS, { key: 'held fast', heldFast: true });
  const { stiffness, mass } = dense(forDense(model), new network.constructor(forDense(model)));
  const loads = Matrix.columnVector(stiffness.to2DArray().map((_, k) => Math.sin(k)));
  const denseStillMs = median(5, () => timed(() => new CholeskyDecomposition(stiffness).solve(loads)));
  const denseAllMs = median(3, () => timed(() => denseFrequencies(stiffness, mass)));
  const day = freeDay(BLOCKS);
  return [
    { name: `hold, balance, swap, carry: 60 pieces, one lens, warm, ${still.length} questions`, ms: stillMs, aimMs: 20, floorName: 'one load case in ml-matrix, dense', floorMs: denseStillMs },
    { name: `the same with those that want frequencies, ${asked.length} questions`, ms: allMs, aimMs: 60, floorName: 'all frequencies in ml-matrix, dense', floorMs: denseAllMs },
    { name: `swap: the best order of ${BLOCKS} free blocks, exact`, ms: median(15, () => timed(() => swapOrder.answer(day))), floorName: 'bare sums over all sets', floorMs: median(15, () => timed(() => bareSets(day))) },
  ];
}

/** The 60 pieces with one lens of the twenty, and the shots that use it. */
function oneLens() {
  const shoot = bigShoot('perLens');
  const [shot] = Object.entries(shoot.shots).filter(([, { setup }]) => setup === SETUP);
  return {
    ...shoot, setups: { [SETUP]: { ...shoot.setups[SETUP], glasses: [GLASS] } }, glasses: { [GLASS]: shoot.glasses[GLASS] }, shots: { [shot[0]]: { ...shot[1], glass: GLASS } },
    needs: { ...shoot.needs, viewers: {} },
  };
}

/** The full matrices want the fixed body first, and something in every direction; the stretches of a rod have no inertia of their own. */
function forDense(model) {
  const bodies = model.bodies.toSorted((a, b) => Number(b.fixed === true) - Number(a.fixed === true));
  const least = (inertia = [[0, 0, 0], [0, 0, 0], [0, 0, 0]]) => inertia.map((row, i) => row.map((value, j) => (i === j ? Math.max(value, 1e-7) : value)));
  return { ...model, bodies: bodies.map((body) => ({ ...body, massG: Math.max(body.massG ?? 0, 0.1), inertiaKgM2: least(body.inertiaKgM2) })) };
}

/** Shots in any order, a change from each to each. */
const freeDay = (count) => ({
  blocks: Array.from({ length: count }, (_, k) => ({ name: `b${k}` })),
  costsMin: Array.from({ length: count }, (_, a) => Array.from({ length: count }, (_, b) => (a === b ? 0 : 1 + ((a * 7 + b * 3) % 11)))),
});

/** As many sums as the exact search has to make: for each set, each last and each next. */
function bareSets({ costsMin }) {
  const count = costsMin.length;
  let least = Infinity;
  for (let set = 1; set < 2 ** count; set += 1) {
    for (const [last, costs] of costsMin.entries()) least = Math.min(least, leastOnward(set, last, costs));
  }
  return least;
}

function leastOnward(set, last, costs) {
  if (((set >> last) & 1) === 0) return Infinity;
  let least = Infinity;
  for (let next = 0; next < costs.length; next += 1) if (((set >> next) & 1) === 0) least = Math.min(least, set + costs[next]);
  return least;
}
