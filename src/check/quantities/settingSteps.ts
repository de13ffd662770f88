import { carriedOn } from '../../assembly/hold/carriedOn.ts';
import { handMove } from '../../assembly/hold/handMove.ts';
import { type Placement, type SolvedSetting, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type RigJoint, rigJoints } from '../../assembly/placing/rigJoints.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import type { Asking } from '../Asking.ts';
import { moveWords } from '../settingWords.ts';
import type { SetupGlass } from '../subjects.ts';
import { type ChangeStep, NO_TIME, takes, toolOf } from './changeStep.ts';
import { endsOf } from './glassChange.ts';

/** Clamps, plates and arms of a build that stand elsewhere with the other glass. */
export interface SettingSteps {
  /** What the glass is fixed to, with all that carries it: set before the glass goes on. */
  readonly under: readonly ChangeStep[];
  /** The rest, as a motor: set once the glass is on. */
  readonly beside: readonly ChangeStep[];
}

export function settingSteps(asking: Asking, from: SetupGlass, to: SetupGlass): SettingSteps {
  const [then, now] = [placeSetup(asking.ledger, from.setup, from.glass), placeSetup(asking.ledger, to.setup, to.glass)];
  const holders = new Set(glassHolders(asking, to));
  // One clamp that is undone once may be slid and turned.
  const undone = new Set<string>();
  const steps = now.settings.flatMap((setting): { under: boolean; step: ChangeStep }[] => {
    const by = movedBy(asking, then, setting);
    if (by === undefined) return [];
    const { joint, key } = setting;
    const move = handMove(now, setting, by);
    const { does, way } = moveWords(now, setting, by, move);
    const again = undone.has(joint.b.ref);
    // A support on two rods is slid on both at once.
    if (undone.has(`${does} ${way}`)) return [];
    undone.add(joint.b.ref).add(`${does} ${way}`);
    const atEnd = setting.rangeKnown && setting.atLimit !== undefined ? ', the end of its way' : '';
    const time = again ? NO_TIME : takes(asking, swap.settingMin);
    const step: ChangeStep = { kind: 'move', says: does, by: { value: Math.abs(by), unit: unitOfKey(key) }, way: `${way}${atEnd}`, tool: toolOf(joint.a, joint.b), ...time };
    return [{ under: !move.on.piece.fromGlass && ridersOn(asking, to, move.moves.ref).some((ref) => holders.has(ref)), step }];
  });
  return { under: steps.filter(({ under }) => under).map(({ step }) => step), beside: steps.filter(({ under }) => !under).map(({ step }) => step) };
}

/** How much a setting differs from where it was; `undefined` where it was not, or not by so much that one undoes it. */
function movedBy(asking: Asking, then: Placement, { joint, key, value }: SolvedSetting): number | undefined {
  const was = then.settings.find((one) => one.key === key && (one.joint.path === joint.path || endsOf(one.joint) === endsOf(joint)));
  const least = asking.assume(key.endsWith('Deg') ? swap.movedDeg : swap.movedMm).value;
  return was === undefined || Math.abs(value - was.value) < least ? undefined : value - was.value;
}

const fixings = ({ ledger }: Asking, { setup, glass }: SetupGlass): RigJoint[] => rigJoints(ledger, setup, glass).joints.filter(({ mesh }) => !mesh);

/** Pieces of the build that the glass is fixed to: the body by its mount, a support, a collar. */
const glassHolders = (asking: Asking, subject: SetupGlass): string[] =>
  fixings(asking, subject).flatMap(({ a, b }) => (a.piece.fromGlass === b.piece.fromGlass ? [] : [a.piece.fromGlass ? b.ref : a.ref]));

/** A piece of the build with all of the build that it carries. */
function ridersOn(asking: Asking, subject: SetupGlass, ref: string): string[] {
  const inBuild = fixings(asking, subject).filter(({ a, b }) => !a.piece.fromGlass && !b.piece.fromGlass);
  const links = inBuild.map((joint) => carriedOn(asking.ledger, subject.setup, subject.glass, joint));
  const riders = [ref];
  for (const rider of riders) for (const { carried, carrier } of links) if (carrier.ref === rider && !riders.includes(carried.ref)) riders.push(carried.ref);
  return riders;
}
