import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { JointEnd, RigJoint } from '../../assembly/placing/rigJoints.ts';
import { rigJoints } from '../../assembly/placing/rigJoints.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Assumption } from '../../standards/Assumption.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import type { Amount } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import { moveWords } from '../settingWords.ts';
import type { SetupGlass } from '../subjects.ts';

/** One thing to do at a change, with the time it takes by the model of `standards/assumptions/swap`. */
export interface ChangeStep {
  readonly kind: 'off' | 'on' | 'open' | 'close' | 'move' | 'roll' | 'calibrate' | 'build';
  readonly says: string;
  /** By how much something moves, and which way: "forward on 15 mm rod". */
  readonly by?: Amount;
  readonly way?: string;
  readonly tool?: string;
  readonly minutes: number;
  /** The time within the bounds of the model. */
  readonly low: number;
  readonly high: number;
}

export interface LensChange extends Pick<ChangeStep, 'minutes' | 'low' | 'high'> {
  readonly steps: readonly ChangeStep[];
}

/** What is to be done to go from one setup and glass to another. */
export function lensChange(asking: Asking, from: SetupGlass, to: SetupGlass): LensChange {
  return asking.ledger.cell(`lens change|${from.setup}|${from.glass}|${to.setup}|${to.glass}`, () => {
    const steps = from.setup === to.setup && from.glass === to.glass ? [] : [...buildSteps(asking, from, to), ...glassSteps(asking, from, to), ...settingSteps(asking, from, to), ...afterwards(asking, from, to)];
    const sum = (of: (step: ChangeStep) => number): number => steps.reduce((all, step) => all + of(step), 0);
    return { steps, minutes: sum(({ minutes }) => minutes), low: sum(({ low }) => low), high: sum(({ high }) => high) };
  });
}

/** The time that one thing takes by the model. */
function takes(asking: Asking, model: Assumption): Pick<ChangeStep, 'minutes' | 'low' | 'high'> {
  const { value, low, high } = asking.assume(model);
  return { minutes: value, low, high };
}

/** Done along with another. */
const NO_TIME = { minutes: 0, low: 0, high: 0 };

const cameraOf = ({ ledger }: Asking, { setup }: SetupGlass) => ledger.at(`setups/${setup}/camera`) as string;

function buildSteps(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const [one, other] = [cameraOf(asking, from), cameraOf(asking, to)];
  if (one === other) return [];
  const name = named((asking.ledger.at(`builds/${other}/name`) as string | undefined) ?? other);
  const body = (subject: SetupGlass) => opticalPath(asking.ledger, subject.setup, subject.glass).body?.part.id;
  return body(from) === body(to)
    ? [{ kind: 'build', says: `change over to ${name}`, ...takes(asking, swap.buildMin) }]
    : [{ kind: 'build', says: `go over to ${name}, which stands ready`, ...takes(asking, swap.standbyMin) }];
}

interface Held {
  readonly of: string;
  readonly name: string;
}

/** Pieces of the glass, by their id; the same part under the same id stays in the hand. */
function glassOf(asking: Asking, { setup, glass }: SetupGlass): Map<string, Held> {
  return new Map([...setupPieces(asking.ledger, setup, glass).values()].filter(({ fromGlass }) => fromGlass).map((piece) => [piece.ref, { of: piece.part.id, name: piece.name }]));
}

function glassSteps(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  if (cameraOf(asking, from) !== cameraOf(asking, to) && from.glass === to.glass) return [];
  const [before, after] = [glassOf(asking, from), glassOf(asking, to)];
  const stays = (ref: string): boolean => before.get(ref)?.of !== undefined && before.get(ref)?.of === after.get(ref)?.of;
  const each = takes(asking, swap.offMin);
  const off = [...before].filter(([ref]) => !stays(ref)).map(([, { name }]): ChangeStep => ({ kind: 'off', says: `take off ${named(name)}`, ...each }));
  const on = [...after].filter(([ref]) => !stays(ref)).map(([, { name }]): ChangeStep => ({ kind: 'on', says: `put on ${named(name)}`, ...each }));
  const [opened, closed] = [jointsTouched(asking, from, to, before, stays), jointsTouched(asking, to, from, after, stays)];
  return [...opened.map((joint) => jointStep(asking, joint, 'open')), ...off, ...on, ...closed.map((joint) => jointStep(asking, joint, 'close'))];
}

/** Joints of a glass that the other glass does not have between the same two pieces at the same points. */
function jointsTouched(asking: Asking, { setup, glass }: SetupGlass, other: SetupGlass, own: ReadonlyMap<string, Held>, stays: (ref: string) => boolean): RigJoint[] {
  const kept = new Set(rigJoints(asking.ledger, other.setup, other.glass).joints.map(endsOf));
  const there = (ref: string) => !own.has(ref) || stays(ref);
  return rigJoints(asking.ledger, setup, glass).joints.filter((joint) => !joint.mesh && (own.has(joint.a.ref) || own.has(joint.b.ref)) && !(kept.has(endsOf(joint)) && there(joint.a.ref) && there(joint.b.ref)));
}

const endsOf = ({ a, b }: RigJoint): string => `${a.ref}/${a.pointId}|${b.ref}/${b.pointId}`;

/** The key that a joint wants: as its points say, else a hand. */
export function toolOf(...ends: readonly JointEnd[]): string {
  return ends.map(({ point }) => point.tool).find((tool) => tool !== undefined && tool !== 'hand') ?? 'hand';
}

function jointStep(asking: Asking, { a, b }: RigJoint, kind: 'open' | 'close'): ChangeStep {
  const tool = toolOf(a, b);
  return { kind, says: kind === 'open' ? `open ${named(b.piece.name)} from ${named(a.piece.name)}` : `fix ${named(b.piece.name)} to ${named(a.piece.name)}`, tool, ...takes(asking, tool === 'hand' ? swap.handMin : swap.keyMin) };
}

/** Clamps, plates and arms of the build that stand elsewhere with the other glass. */
function settingSteps(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  if (cameraOf(asking, from) !== cameraOf(asking, to)) return [];
  const [then, now] = [placeSetup(asking.ledger, from.setup, from.glass), placeSetup(asking.ledger, to.setup, to.glass)];
  const [leastMm, leastDeg] = [asking.assume(swap.movedMm).value, asking.assume(swap.movedDeg).value];
  // One clamp that is undone once may be slid and turned.
  const undone = new Set<string>();
  return now.settings.flatMap((setting): ChangeStep[] => {
    const was = then.settings.find(({ joint, key }) => key === setting.key && (joint.path === setting.joint.path || endsOf(joint) === endsOf(setting.joint)));
    if (was === undefined || Math.abs(setting.value - was.value) < (setting.key.endsWith('Deg') ? leastDeg : leastMm)) return [];
    const by = setting.value - was.value;
    const { does, way } = moveWords(now, setting, by);
    const again = undone.has(setting.joint.b.ref);
    // A support on two rods is slid on both at once.
    if (undone.has(`${does} ${way}`)) return [];
    undone.add(setting.joint.b.ref).add(`${does} ${way}`);
    return [{ kind: 'move', says: does, by: { value: Math.abs(by), unit: unitOfKey(setting.key) }, way, tool: toolOf(setting.joint.a, setting.joint.b), ...(again ? NO_TIME : takes(asking, swap.settingMin)) }];
  });
}

/** What a new lens always asks: its axis upright, its motor calibrated. */
function afterwards(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  if (from.glass === to.glass) return [];
  const { block } = opticalPath(asking.ledger, to.setup, to.glass);
  const motor = [...setupPieces(asking.ledger, to.setup, to.glass).values()].find((piece) => piece.part.has('motor'));
  const roll = block === undefined ? [] : [{ kind: 'roll' as const, says: `set the squeeze axis of ${named(block.name)} upright`, ...takes(asking, swap.rollMin) }];
  const calibrate = motor === undefined ? [] : [{ kind: 'calibrate' as const, says: `calibrate ${named(motor.name)}, fingers clear`, ...takes(asking, swap.calibrateMin) }];
  return [...roll, ...calibrate];
}
