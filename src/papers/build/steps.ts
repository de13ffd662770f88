import { type SolvedSetting, placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { type AssemblyStep, orderOfAssembly } from '../../assembly/space/orderOfAssembly.ts';
import type { Setting } from '../../shoot/schema/build.ts';
import { printAmount } from '../../units/print.ts';
import type { MakingOfSetup } from '../paper.ts';
import { fixedWords, howWords } from './jointWords.ts';
import { type Stands, settingPlace } from './settingPlace.ts';

/** A step of building: the pieces that go on, how each is fixed, what to look at afterwards. */
export interface BuildStep {
  readonly build: string;
  /** What goes on, in words. */
  readonly title: string;
  readonly fresh: readonly SetupPiece[];
  readonly fixings: readonly Fixing[];
  readonly after: readonly string[];
}

export interface Fixing {
  readonly says: string;
  /** Screw, key, how firmly, pins, where it is set. */
  readonly how: string;
}

const MOST_AT_ONCE = 3;

/** The steps of a setup with one glass, build by build: up to three pieces at a time. */
export function buildSteps(making: MakingOfSetup, glass: string): BuildStep[] {
  const { ledger, setup } = making;
  const pieces = setupPieces(ledger, setup, glass);
  const { steps } = orderOfAssembly(ledger, setup, glass);
  const builds = [...new Set(steps.map(({ ref }) => pieces.get(ref)?.build ?? ''))];
  return builds.flatMap((build) => {
    const own = steps.filter(({ ref }) => pieces.get(ref)?.build === build);
    return atOnce(own).map((some): BuildStep => {
      const joints = some.flatMap(({ ref, joints: these }) => these.map(({ joint }) => ({ ref, joint })));
      return {
        build, title: titleOf(some, (ref) => pieces.get(ref)?.name ?? ref), fresh: some.flatMap(({ ref }) => pieces.get(ref) ?? []),
        fixings: joints.map(({ ref, joint }) => fixingOf(making, glass, joint, ref)), after: [...new Set([...joints.flatMap(({ joint }) => afterOf(joint)), ...some.flatMap(({ ref }) => bagsOn(making, pieces.get(ref)))])],
      };
    });
  });
}

/** Up to three pieces; what is begun apart, and what goes on together, are steps by themselves. */
function atOnce(steps: readonly AssemblyStep[]): AssemblyStep[][] {
  const groups: AssemblyStep[][] = [];
  for (const step of steps) {
    const last = groups.at(-1);
    if (last === undefined || last.length === MOST_AT_ONCE || step.apart === true || step.along !== undefined || last[0]?.along !== undefined) groups.push([step]);
    else last.push(step);
  }
  return groups;
}

function titleOf(steps: readonly AssemblyStep[], name: (ref: string) => string): string {
  const names = steps.map(({ ref }) => name(ref)).join(', ');
  const [first] = steps;
  if (first?.along !== undefined) return `${names}, with ${first.along.map(name).join(', ')}, as put together`;
  return first?.apart === true ? `Apart from the rig: ${names}` : names;
}

/** Sandbags that the shoot puts on the feet of legs or a stand. */
function bagsOn({ ledger, press }: MakingOfSetup, piece: SetupPiece | undefined): string[] {
  const ballastG = piece === undefined ? undefined : (ledger.at(`${piece.path}/ballastG`) as number | undefined);
  return ballastG === undefined || ballastG === 0 ? [] : [`Sandbags of ${printAmount({ value: ballastG, unit: 'g' }, press.system)} on the feet of ${piece?.name ?? ''}, evenly, before anything heavy goes up.`];
}

/** One joint of the piece that goes on, which is told first. */
function fixingOf({ ledger, setup, press: { system } }: MakingOfSetup, glass: string, joint: RigJoint, goesOn: string): Fixing {
  const { a, b, mesh } = joint;
  if (mesh) return { says: `${a.piece.name} and ${b.piece.name}: gears in mesh`, how: 'a sheet of paper between the teeth, then out' };
  const pins = a.point.pins === true && b.point.pins === true ? ['pins in their holes'] : [];
  const solved = placeSetup(ledger, setup, glass).settings.filter((one) => one.joint.path === joint.path).map((one) => ({ ...one, low: one.rangeKnown ? one.low : undefined }));
  const stated = Object.entries(joint.settings).flatMap(([key, setting]) => statedOf(joint, key as SolvedSetting['key'], setting, glass));
  const set = [...stated, ...solved].map((one) => settingPlace({ ledger, setup, glass, system }, one, goesOn));
  return { says: a.ref === goesOn ? fixedWords(a, b) : fixedWords(b, a), how: [...howWords(joint, system), ...pins, ...set].join(', ') };
}

function statedOf(joint: RigJoint, key: SolvedSetting['key'], setting: Setting | undefined, glass: string): Stands[] {
  const value = typeof setting === 'number' ? setting : setting !== undefined && 'pinned' in setting ? (setting.pinned[glass] ?? setting.otherwise) : undefined;
  return value === undefined || value === 0 ? [] : [{ joint, key, value }];
}

/** What to look at once it is on. Common practice. */
function afterOf({ a, b, mesh }: RigJoint): string[] {
  if (mesh) return ['Turn the ring by hand from end to end: free, and no click.'];
  const kinds = [a.point.kind, b.point.kind];
  const has = (kind: string) => kinds.some((one) => one === kind);
  if (has('lens mount')) return ['Mount locked; the lens does not turn or rock.'];
  if (has('rod') || has('rod clamp')) return ['Rods parallel and clamped; nothing slides when pushed.'];
  if (has('battery plate') || has('quick release') || has('wedge')) return ['Latch closed; pull it: it stays.'];
  if (has('surface')) return ['The support just touches: it carries, it does not lift.'];
  if (has('thread') && a.point.pins !== true) return ['Twist it by hand: without pins only friction holds it.'];
  return [];
}
