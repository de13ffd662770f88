import { pieceMasses } from '../../assembly/hold/pieceMasses.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import { composite } from '../../calc/mechanics/massProperties.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import { moveWords } from '../settingWords.ts';
import type { SetupGlass } from '../subjects.ts';
import { type ChangeStep, takes, toolOf } from './changeStep.ts';
import { endsOf, glassChange } from './glassChange.ts';

export interface LensChange extends Pick<ChangeStep, 'minutes' | 'low' | 'high'> {
  readonly steps: readonly ChangeStep[];
}

/** What is to be done to go from one setup and glass to another, in the order of the hands. */
export function lensChange(asking: Asking, from: SetupGlass, to: SetupGlass): LensChange {
  return asking.ledger.cell(`lens change|${from.setup}|${from.glass}|${to.setup}|${to.glass}`, () => {
    const steps = from.setup === to.setup && from.glass === to.glass ? [] : stepsOf(asking, from, to);
    const sum = (of: (step: ChangeStep) => number): number => steps.reduce((all, step) => all + of(step), 0);
    return { steps, minutes: sum(({ minutes }) => minutes), low: sum(({ low }) => low), high: sum(({ high }) => high) };
  });
}

function stepsOf(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const build = buildSteps(asking, from, to);
  if (build.length > 0 && from.glass === to.glass) return build;
  const { off, on, mesh } = glassChange(asking, from, to);
  return [...build, ...off, ...on, ...infinity(asking, from, to), ...settingSteps(asking, from, to), ...axis(asking, from, to), ...mesh, ...calibration(asking, from, to), ...balance(asking, from, to)];
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

/** Behind a focuser the taking lens stays at infinity: it is set so and kept there. */
function infinity(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const { lens, focuser } = opticalPath(asking.ledger, to.setup, to.glass);
  const before = opticalPath(asking.ledger, from.setup, from.glass).lens;
  if (lens === undefined || focuser === undefined || lens.part.id === before?.part.id) return [];
  return [{ kind: 'focus', says: `set ${named(lens.name)} truly to infinity, and lock or tape it`, ...takes(asking, swap.handMin) }];
}

/** The squeeze axis of a block is set upright again. */
function axis(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const { block } = opticalPath(asking.ledger, to.setup, to.glass);
  return from.glass === to.glass || block === undefined ? [] : [{ kind: 'roll', says: `set the squeeze axis of ${named(block.name)} upright`, ...takes(asking, swap.rollMin) }];
}

/** What a motor asks of every new lens. */
function calibration(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const motor = [...setupPieces(asking.ledger, to.setup, to.glass).values()].find((piece) => piece.part.has('motor'));
  return from.glass === to.glass || motor === undefined ? [] : [{ kind: 'calibrate', says: `calibrate ${named(motor.name)}, fingers clear`, ...takes(asking, swap.calibrateMin) }];
}

/** A gimbal is balanced again where the centre of mass has moved, a head slid on its plate. */
function balance(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const { ledger } = asking;
  const build = cameraOf(asking, to);
  const purpose = ledger.at(`builds/${build}/purpose`);
  if (build !== cameraOf(asking, from) || (purpose !== 'gimbal' && purpose !== 'tripod')) return [];
  const centre = ({ setup, glass }: SetupGlass) => composite(pieceMasses(ledger, setup, glass, build).weighed.filter(({ placed }) => placed)).centreMm[2];
  const mm = centre(to) - centre(from);
  if (!(Math.abs(mm) >= asking.assume(swap.movedMm).value)) return [];
  const says = purpose === 'gimbal' ? 'balance the gimbal again, off: its centre of mass has moved' : 'slide the camera to balance on its head: its centre of mass has moved';
  return [{ kind: 'balance', says, by: { value: Math.abs(mm), unit: 'mm' }, way: mm > 0 ? 'forward' : 'back', ...takes(asking, purpose === 'gimbal' ? swap.gimbalMin : swap.settingMin) }];
}
