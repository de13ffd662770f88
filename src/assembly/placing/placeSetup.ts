import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type LeastSquaresResult, boundedLeastSquares } from './boundedLeastSquares.ts';
import { type Gear, type MeshFit, gearOf, meshFitOf } from './meshFit.ts';
import { type Values, loopError, placePieces, residualsOf } from './residuals.ts';
import type { RigJoint } from './rigJoints.ts';
import { type ModelJoint, type RigModel, type SettingKey, type Unplaced, type Variable, rigModel } from './rigModel.ts';
import { type Transform, length } from './Transform.ts';

/** A setting as it was found. */
export interface SolvedSetting {
  readonly joint: RigJoint;
  readonly key: SettingKey;
  readonly scope: 'perLens' | 'shared';
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** The end of its range that it stands at, if at one. */
  readonly atLimit: 'low' | 'high' | undefined;
}

/** A joint that closes a loop, and how well it does. */
export interface LoopResult {
  readonly joint: RigJoint;
  readonly misfitMm: number;
  readonly misfitDeg: number;
  readonly closes: boolean;
  /** Settings that stand at the end of their range where it does not close. */
  readonly stoppedBy: readonly SolvedSetting[];
}

export interface MeshResult extends MeshFit {
  readonly joint: RigJoint;
  readonly gearA: Gear | 'none';
  readonly gearB: Gear | 'none';
}

/** A setup placed for one glass. Places are of each part's own frame, in the frame of its build's root. */
export interface Placement {
  readonly setup: string;
  readonly glass: string;
  readonly places: ReadonlyMap<string, Transform>;
  readonly unplaced: readonly Unplaced[];
  readonly settings: readonly SolvedSetting[];
  readonly loops: readonly LoopResult[];
  readonly meshes: readonly MeshResult[];
  /** The steps that put each piece where it is, roots first. */
  readonly model: RigModel;
}

/** A loop is closed when its ends meet within what a hand gives: half a millimetre and a third of a degree. */
const CLOSED_MM = 0.5;
const CLOSED_DEG = 0.33;

/** Where every piece of a setup stands with one of its glasses on. Shared settings are found over the whole set. */
export function placeSetup(ledger: Ledger, setup: string, glass: string): Placement {
  return ledger.cell(`placement|${setup}|${glass}`, () => {
    const solved = solvedSettings(ledger, setup);
    const model = rigModel(ledger, setup, glass);
    return placementOf(model, solved.get(glass) ?? new Map());
  });
}

/** The values of every variable, glass by glass, for a setup's whole set. Glasses are solved in order, each from where the last one stood. */
function solvedSettings(ledger: Ledger, setup: string): ReadonlyMap<string, Values> {
  return ledger.cell(`solved settings|${setup}`, () => {
    const glasses = (ledger.at(`setups/${setup}/glasses`) ?? []) as readonly string[];
    const models = glasses.map((glass) => rigModel(ledger, setup, glass));
    const shared = models.some(({ variables }) => variables.some(({ scope }) => scope === 'shared'));
    if (shared) return solveTogether(models);
    const solved = new Map<string, Values>();
    let last: Values | undefined;
    for (const model of models) {
      last = solveTogether([model], last).get(model.glass) ?? new Map();
      solved.set(model.glass, last);
    }
    return solved;
  });
}

const keyOf = ({ joint, key }: Variable): string => `${joint.path}/${key}`;

/** One variable of the solver: a shared setting stands for the same setting in every model, one of its own for one model alone. */
interface Unknown {
  readonly first: Variable;
  /** Which models it moves, and their own variable for it. */
  readonly in: readonly { readonly model: number; readonly variable: Variable }[];
}

function unknownsOf(models: readonly RigModel[]): Unknown[] {
  const unknowns = new Map<string, { first: Variable; in: { model: number; variable: Variable }[] }>();
  models.forEach((model, at) => {
    for (const variable of model.variables) {
      const key = variable.scope === 'shared' ? keyOf(variable) : `${keyOf(variable)}|${at}`;
      const known = unknowns.get(key) ?? { first: variable, in: [] };
      known.in.push({ model: at, variable });
      unknowns.set(key, known);
    }
  });
  return [...unknowns.values()];
}

function solveTogether(models: readonly RigModel[], before?: Values): Map<string, Values> {
  const unknowns = unknownsOf(models);
  const blocks = models.map(residuals);
  const valuesFor = (x: readonly number[], model: number): Values =>
    new Map(unknowns.flatMap((unknown, at) => unknown.in.filter((one) => one.model === model).map(({ variable }) => [variable, x[at] ?? variable.start] as const)));
  let base: readonly (readonly number[])[] = [];
  const solve = (start: readonly number[]): LeastSquaresResult =>
    boundedLeastSquares({
      start,
      low: unknowns.map(({ first }) => first.low),
      high: unknowns.map(({ first }) => first.high),
      residuals: (x) => {
        base = blocks.map((block, at) => block(valuesFor(x, at)));
        return base.flat();
      },
      // A setting of one lens leaves the others where they are.
      partial: (x, variable) => {
        const touched = new Set(unknowns[variable]?.in.map(({ model }) => model));
        return base.flatMap((known, at) => (touched.has(at) ? (blocks[at]?.(valuesFor(x, at)) ?? known) : known));
      },
    });
  const previous = startNear(unknowns, before);
  const { x } = nearestBest(startsFor(unknowns, previous).map(solve), previous);
  return new Map(models.map((model, at) => [model.glass, valuesFor(x, at)]));
}

/** Gears are looked up once a model, not once an evaluation. */
function residuals(model: RigModel): (values: Values) => number[] {
  const gears = new Map(model.meshes.map((mesh) => [mesh, [gearOf(mesh.joint.a.piece), gearOf(mesh.joint.b.piece)] as const]));
  return residualsOf(model, (mesh, places) => {
    const [a, b] = gears.get(mesh) ?? ['none', 'none'];
    return a === 'none' || b === 'none' ? { gapMm: 0, offsetMm: 0, leanRad: 0, centreDistanceMm: 0 } : meshFitOf(mesh, a, b, places);
  });
}

function startNear(unknowns: readonly Unknown[], before: Values | undefined): number[] {
  const known = new Map([...(before ?? [])].map(([variable, value]) => [keyOf(variable), value]));
  return unknowns.map(({ first }) => known.get(keyOf(first)) ?? first.start);
}

/** Several starts: where the last lens stood, and a quarter, half and three quarters into every range. */
function startsFor(unknowns: readonly Unknown[], previous: readonly number[]): number[][] {
  if (unknowns.length === 0) return [[]];
  const into = (share: number) => unknowns.map(({ first: { low, high } }) => low + share * (high - low));
  return [[...previous], into(0.5), into(0.25), into(0.75)];
}

/** The best solution; among those equally good, the one nearest to where the last lens stood. */
function nearestBest(results: readonly LeastSquaresResult[], previous: readonly number[]): LeastSquaresResult {
  const best = Math.min(...results.map(({ cost }) => cost));
  const far = ({ x }: LeastSquaresResult) => x.reduce((sum, value, at) => sum + (value - (previous[at] ?? 0)) ** 2, 0);
  const good = results.filter(({ cost }) => cost <= best + 1e-6);
  return good.toSorted((a, b) => far(a) - far(b))[0] as LeastSquaresResult;
}

function placementOf(model: RigModel, values: Values): Placement {
  const places = placePieces(model, values);
  const settings = model.variables.map((variable) => solvedSetting(variable, values));
  const meshes = model.meshes.map((mesh): MeshResult => {
    const [gearA, gearB] = [gearOf(mesh.joint.a.piece), gearOf(mesh.joint.b.piece)];
    const fit = gearA === 'none' || gearB === 'none' ? { gapMm: Infinity, offsetMm: 0, leanRad: 0, centreDistanceMm: 0 } : meshFitOf(mesh, gearA, gearB, places);
    return { joint: mesh.joint, gearA, gearB, ...fit };
  });
  return { setup: model.setup, glass: model.glass, places, unplaced: model.unplaced, settings, loops: model.loops.map((loop) => loopResult(loop, places, values, settings)), meshes, model };
}

function solvedSetting(variable: Variable, values: Values): SolvedSetting {
  const { joint, key, scope, low, high } = variable;
  const value = values.get(variable) ?? variable.start;
  const near = 1e-4 * Math.max(1, high - low);
  return { joint, key, scope, value, low, high, atLimit: value <= low + near ? 'low' : value >= high - near ? 'high' : undefined };
}

function loopResult(loop: ModelJoint, places: ReadonlyMap<string, Transform>, values: Values, settings: readonly SolvedSetting[]): LoopResult {
  const { shift, turn } = loopError(loop, places, values);
  const misfitMm = length(shift as [number, number, number]);
  const misfitDeg = (length(turn as [number, number, number]) * 180) / Math.PI;
  const closes = misfitMm <= CLOSED_MM && misfitDeg <= CLOSED_DEG;
  return { joint: loop.joint, misfitMm, misfitDeg, closes, stoppedBy: closes ? [] : settings.filter(({ atLimit }) => atLimit !== undefined) };
}
