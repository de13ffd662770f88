import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { orderOfAssembly } from '../../assembly/space/orderOfAssembly.ts';
import type { Setting } from '../../shoot/schema/build.ts';
import { printAmount } from '../../units/print.ts';
import type { MakingOfSetup } from '../paper.ts';

/** A step of building: the pieces that go on, how each is fixed, what to look at afterwards. */
export interface BuildStep {
  readonly build: string;
  readonly fresh: readonly SetupPiece[];
  readonly fixings: readonly Fixing[];
  readonly after: readonly string[];
}

export interface Fixing {
  readonly says: string;
  /** Screw, key, how firmly, setting, pins. */
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
    return Array.from({ length: Math.ceil(own.length / MOST_AT_ONCE) }, (_, at): BuildStep => {
      const some = own.slice(at * MOST_AT_ONCE, (at + 1) * MOST_AT_ONCE);
      const joints = some.flatMap(({ joints: these }) => these.map(({ joint }) => joint));
      return {
        build, fresh: some.flatMap(({ ref }) => pieces.get(ref) ?? []),
        fixings: joints.map((joint) => fixingOf(making, glass, joint)), after: [...new Set([...joints.flatMap((joint) => afterOf(joint)), ...some.flatMap(({ ref }) => bagsOn(making, pieces.get(ref)))])],
      };
    });
  });
}

/** Sandbags that the shoot puts on the feet of legs or a stand. */
function bagsOn({ ledger, press }: MakingOfSetup, piece: SetupPiece | undefined): string[] {
  const ballastG = piece === undefined ? undefined : (ledger.at(`${piece.path}/ballastG`) as number | undefined);
  return ballastG === undefined || ballastG === 0 ? [] : [`Sandbags of ${printAmount({ value: ballastG, unit: 'g' }, press.system)} on the feet of ${piece?.name ?? ''}, evenly, before anything heavy goes up.`];
}

function fixingOf({ ledger, setup, press }: MakingOfSetup, glass: string, joint: RigJoint): Fixing {
  const { a, b, torqueNm, mesh } = joint;
  if (mesh) return { says: `${a.piece.name} and ${b.piece.name}: gears in mesh`, how: 'a sheet of paper between the teeth, then out' };
  const tool = [a, b].map(({ point }) => point.tool).find((one) => one !== undefined);
  const screws = [a, b].map(({ point }) => point.screws ?? 1).reduce((most, one) => Math.max(most, one), 1);
  const kind = a.point.class ?? b.point.class ?? a.point.kind;
  const pins = a.point.pins === true && b.point.pins === true ? 'pins in their holes' : undefined;
  const solved = placeSetup(ledger, setup, glass).settings.filter((one) => one.joint.path === joint.path).map(({ key, value }) => settingText(key, value, press.system));
  const stated = Object.entries(joint.settings).flatMap(([key, setting]) => statedText(key, setting, glass, press.system));
  const where = (end: RigJoint['a']) => `${end.piece.name}, ${end.point.name ?? end.pointId.replaceAll('-', ' ')}`;
  return {
    says: `${where(a)}, to ${where(b)}`,
    how: [screws > 1 ? `${screws} × ${kind}` : kind, tool === 'hand' ? 'by hand' : tool, torqueNm === undefined ? undefined : printAmount({ value: torqueNm, unit: 'N·m' }), pins, ...stated, ...solved].filter((word) => word !== undefined).join(', '),
  };
}

const WORDS: Readonly<Record<string, string>> = { turnDeg: 'turned', tiltDeg: 'tilted', slideMm: 'slid', sideMm: 'aside', heightMm: 'raised' };
const settingText = (key: string, value: number, system: 'metric' | 'imperial'): string => `${WORDS[key] ?? key} ${printAmount({ value: Math.round(value * 10) / 10, unit: key.endsWith('Deg') ? 'deg' : 'mm' }, system)}`;

function statedText(key: string, setting: Setting | undefined, glass: string, system: 'metric' | 'imperial'): string[] {
  const value = typeof setting === 'number' ? setting : setting !== undefined && 'pinned' in setting ? (setting.pinned[glass] ?? setting.otherwise) : undefined;
  return value === undefined || value === 0 ? [] : [settingText(key, value, system)];
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
