import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type LeastSquaresResult, boundedLeastSquares } from './boundedLeastSquares.ts';
import { type Values, chainOf, settingsWith } from './chain.ts';
import { BY_HAND, type Constraint, FINE, type Tolerance, comesTogether, constraintsOf, evaluated } from './constraints.ts';
import { jointTransform } from './jointFrame.ts';
import { type RigModel, type Variable, rigModel } from './rigModel.ts';

/** A model with its constraints and the values found so far. */
export interface Solving {
  readonly model: RigModel;
  readonly constraints: readonly Constraint[];
  readonly values: Map<Variable, number>;
}

/** Values found for one glass, by the variable of its model, and by id for the next glass to start from. */
export interface Solved {
  readonly values: Values;
  readonly byId: ReadonlyMap<string, number>;
}

/**
 * The settings to be found, for one glass of a setup. Shared ones are found over the whole set; then each glass in the order of the set,
 * starting from where the one before it stood, so that of two ways to fit the nearer one is taken.
 */
export function solvedSettings(ledger: Ledger, setup: string, glass: string): Solved {
  return ledger.cell(`settings|${setup}|${glass}`, () => {
    const glasses = (ledger.at(`setups/${setup}/glasses`) ?? []) as readonly string[];
    const previous = glasses[glasses.indexOf(glass) - 1];
    const model = rigModel(ledger, setup, glass);
    const shared = sharedSettings(ledger, setup);
    const before = previous === undefined ? undefined : solvedSettings(ledger, setup, previous).byId;
    const start = model.variables.flatMap((variable) => {
      const known = shared.get(variable.id) ?? (variable.scope === 'perLens' ? before?.get(variable.id) : undefined);
      return known === undefined ? [] : [[variable, clampTo(variable, known)] as const];
    });
    const solving: Solving = { model, constraints: constraintsOf(model), values: new Map(start) };
    for (const { of, may, enough } of STAGES) {
      const some = { ...solving, constraints: solving.constraints.filter(of) };
      solveOpen(some, (variable) => may(variable) && variable.scope !== 'shared', enough);
    }
    return { values: solving.values, byId: new Map([...solving.values].map(([{ id }, value]) => [id, value])) };
  });
}

interface Stage {
  readonly of: (constraint: Constraint) => boolean;
  readonly may: (variable: Variable) => boolean;
  /** Leave alone what has come together within this. */
  readonly enough: Tolerance;
}

const toFind = ({ scope }: Variable): boolean => scope !== 'free';
/** Where the file says what is to be found, nothing else gives way. */
const isOpen = ({ variables }: Constraint): boolean => !variables.some(toFind);

/**
 * First what is to be found. Then, where the file leaves it open and things do not fit, what nothing states on rods and arms; for loops the plates
 * under the camera last. In the end what is to be found once more, in case the ground has moved.
 */
const STAGES: readonly Stage[] = [
  { of: () => true, may: toFind, enough: FINE },
  { of: isOpen, may: ({ givesWay }) => givesWay === 'first', enough: BY_HAND },
  { of: (constraint) => isOpen(constraint) && constraint.pair === undefined, may: () => true, enough: BY_HAND },
  { of: () => true, may: toFind, enough: FINE },
];

/** Values of the settings that serve the whole set, by id. */
function sharedSettings(ledger: Ledger, setup: string): ReadonlyMap<string, number> {
  return ledger.cell(`shared settings|${setup}`, () => {
    const glasses = (ledger.at(`setups/${setup}/glasses`) ?? []) as readonly string[];
    const models = glasses.map((glass) => rigModel(ledger, setup, glass));
    const all = models.map((model): Solving => ({ model, constraints: constraintsOf(model), values: new Map() }));
    const hasShared = ({ constraint: { variables } }: Open): boolean => variables.some(({ scope }) => scope === 'shared');
    const may = ({ scope }: Variable): boolean => scope !== 'free';
    for (const group of groupsOf(openOf(all), may)) if (group.some(hasShared)) solveGroup(group, may);
    return new Map(all.flatMap(({ values }) => [...values].flatMap(([variable, value]) => (variable.scope === 'shared' ? [[variable.id, value] as const] : []))));
  });
}

const clampTo = ({ low, high }: Variable, value: number): number => Math.min(Math.max(value, low), high);

/** A constraint of one of several models. */
interface Open {
  readonly of: Solving;
  readonly constraint: Constraint;
}

const openOf = (all: readonly Solving[]): Open[] => all.flatMap((of) => of.constraints.map((constraint) => ({ of, constraint })));

/** Solves every group of constraints that hang together by variables, where one of them has not come together yet. */
function solveOpen(solving: Solving, may: (variable: Variable) => boolean, enough: Tolerance): void {
  for (const group of groupsOf(openOf([solving]), may)) {
    const some = group.some(({ constraint }) => constraint.variables.some(may));
    if (some && !group.every((one) => isTogether(one, enough) && !isNew(one))) solveGroup(group, may);
  }
}

function isTogether({ of, constraint }: Open, enough: Tolerance): boolean {
  const { joint, way } = constraint;
  const wanted = jointTransform(joint.joint.a.point.kind, settingsWith(joint, of.values));
  return comesTogether(constraint, chainOf(way, of.values, new Map())(NOTHING), wanted, enough);
}

const NOTHING = new Float64Array(0);

/** Gears that have never been set are set to the middle of their faces; later they stay where they are while they mesh. */
const isNew = ({ of, constraint }: Open): boolean => constraint.pair !== undefined && constraint.variables.some((variable) => variable.scope !== 'free' && !of.values.has(variable));

/** What a variable is the same thing as, over several models: itself, or everything under its id where it is shared. */
const identity = (variable: Variable): Variable | string => (variable.scope === 'shared' ? variable.id : variable);

function groupsOf(open: readonly Open[], may: (variable: Variable) => boolean): Open[][] {
  const groups: { readonly members: Open[]; readonly by: Set<Variable | string> }[] = [];
  for (const one of open) {
    const own = new Set(one.constraint.variables.filter(may).map(identity));
    const joined = groups.filter(({ by }) => [...own].some((key) => by.has(key)));
    const members = [...joined.flatMap((group) => group.members), one];
    const by = new Set([...joined.flatMap((group) => [...group.by]), ...own]);
    for (const group of joined) groups.splice(groups.indexOf(group), 1);
    groups.push({ members, by });
  }
  return groups.map(({ members }) => members);
}

/** One number of the solver: a variable, or all variables of one shared id. */
interface Unknown {
  readonly variables: readonly { readonly of: Solving; readonly variable: Variable }[];
  readonly low: number;
  readonly high: number;
  readonly start: number;
}

function unknownsOf(group: readonly Open[], may: (variable: Variable) => boolean): Unknown[] {
  const found = new Map<Variable | string, { of: Solving; variable: Variable }[]>();
  for (const { of, constraint } of group) {
    for (const variable of constraint.variables.filter(may)) {
      const same = found.get(identity(variable)) ?? [];
      if (!same.some((one) => one.variable === variable)) same.push({ of, variable });
      found.set(identity(variable), same);
    }
  }
  return [...found.values()].map((variables) => {
    const [low, high] = [Math.max(...variables.map(({ variable }) => variable.low)), Math.min(...variables.map(({ variable }) => variable.high))];
    const first = variables[0] as { of: Solving; variable: Variable };
    return { variables, low, high: Math.max(low, high), start: Math.min(Math.max(first.of.values.get(first.variable) ?? first.variable.start, low), Math.max(low, high)) };
  });
}

/** Solves from where things stand; where that does not bring all together, from elsewhere too. The best stays, of equals the nearest. */
function solveGroup(group: readonly Open[], may: (variable: Variable) => boolean): void {
  const unknowns = unknownsOf(group, may);
  const solve = solverOf(group, unknowns);
  const settle = ({ x }: LeastSquaresResult): void => unknowns.forEach(({ variables }, at) => variables.forEach(({ of, variable }) => of.values.set(variable, x[at] as number)));
  const [here, ...elsewhere] = startsFor(unknowns) as [number[], ...number[][]];
  let best = solve(here);
  settle(best);
  for (const start of elsewhere) {
    if (group.every((one) => isTogether(one, BY_HAND))) return;
    const other = solve(start);
    const better = other.cost < best.cost - 1e-9 || (other.cost <= best.cost + 1e-9 && far(other.x, here) < far(best.x, here) - 1e-9);
    if (!better) continue;
    best = other;
    settle(best);
  }
}

const far = (x: ArrayLike<number>, from: readonly number[] | undefined): number => (from ?? []).reduce((sum, value, at) => sum + ((x[at] ?? 0) - value) ** 2, 0);

/** From where things stand; then from the middle, and a quarter into the ranges from either end, in step and against each other. */
function startsFor(unknowns: readonly Unknown[]): number[][] {
  const into = (share: (at: number) => number) => unknowns.map(({ low, high }, at) => low + share(at) * (high - low));
  const patterns = unknowns.length === 1 ? [0.5, 0.25, 0.75, 0.1, 0.9].map((share) => () => share) : [() => 0.5, () => 0.25, () => 0.75, (at: number) => (at % 2 === 0 ? 0.25 : 0.75), (at: number) => (at % 2 === 0 ? 0.75 : 0.25)];
  return [unknowns.map(({ start }) => start), ...patterns.map(into)];
}

function solverOf(group: readonly Open[], unknowns: readonly Unknown[]): (start: readonly number[]) => LeastSquaresResult {
  const slots = new Map<Solving, Map<Variable, number>>();
  unknowns.forEach(({ variables }, at) => {
    for (const { of, variable } of variables) slots.set(of, (slots.get(of) ?? new Map<Variable, number>()).set(variable, at));
  });
  let size = 0;
  const stretches = group.map(({ of, constraint }, key) => {
    const slotOf = slots.get(of) ?? new Map<Variable, number>();
    const one = evaluated(constraint, of.values, slotOf);
    const from = size;
    size += one.size;
    return { key, from, to: size, one, ats: new Set(constraint.variables.flatMap((variable) => slotOf.get(variable) ?? [])) };
  });
  const residuals = (x: Float64Array): Float64Array => {
    const into = new Float64Array(size);
    for (const { one, from } of stretches) one.write(x, into, from);
    return into;
  };
  const problem = {
    low: unknowns.map(({ low }) => low), high: unknowns.map(({ high }) => high), residuals,
    touched: unknowns.map((_, at) => stretches.filter(({ ats }) => ats.has(at))),
    stretch: (x: Float64Array, { key, from }: { key: number; from: number }, into: Float64Array) => stretches[key]?.one.write(x, into, from),
  };
  return (start) => boundedLeastSquares({ start, ...problem });
}
