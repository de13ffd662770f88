import { carrierKind } from '../../assembly/hold/carriers.ts';
import { standsOn } from '../../assembly/hold/standsOn.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import type { SetupGlass } from '../subjects.ts';
import { type ChangeStep, takes } from './changeStep.ts';
import { gearsInReach } from './gearSteps.ts';
import { glassChange } from './glassChange.ts';
import { settingSteps } from './settingSteps.ts';
import { wholeMass } from './wholeMass.ts';

export interface LensChange extends Pick<ChangeStep, 'minutes' | 'low' | 'high'> {
  readonly steps: readonly ChangeStep[];
  /** Whether all of it can be done as built: no gear stays out of reach. */
  readonly finishes: boolean;
}

/** What is to be done to go from one setup and glass to another, in the order of the hands. */
export function lensChange(asking: Asking, from: SetupGlass, to: SetupGlass): LensChange {
  return asking.ledger.cell(`lens change|${from.setup}|${from.glass}|${to.setup}|${to.glass}`, () => {
    const steps = from.setup === to.setup && from.glass === to.glass ? [] : stepsOf(asking, from, to);
    const sum = (of: (step: ChangeStep) => number): number => steps.reduce((all, step) => all + of(step), 0);
    return { steps, finishes: !steps.some(({ kind }) => kind === 'unmet'), minutes: sum(({ minutes }) => minutes), low: sum(({ low }) => low), high: sum(({ high }) => high) };
  });
}

function stepsOf(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const build = buildSteps(asking, from, to);
  if (build.length > 0 && from.glass === to.glass) return build;
  const { off, on, mesh } = glassChange(asking, from, to);
  const { under, beside } = build.length > 0 ? { under: [], beside: [] } : settingSteps(asking, from, to);
  return [...build, ...off, ...under, ...on, ...infinity(asking, from, to), ...beside, ...axis(asking, from, to), ...mesh, ...calibration(asking, from, to), ...balance(asking, from, to)];
}

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

/** What a motor asks of every new lens; one that does not reach its ring has nothing to calibrate on. */
function calibration(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  if (from.glass === to.glass) return [];
  const motors = new Map(gearsInReach(asking, to).flatMap(({ driver }) => (driver.part.has('motor') ? [[driver.ref, driver.name]] : [])));
  return [...motors.values()].map((name) => ({ kind: 'calibrate', says: `calibrate ${named(name)}, fingers clear`, ...takes(asking, swap.calibrateMin) }));
}

/** A gimbal is balanced again where the centre of mass has moved, a head slid on its plate. */
function balance(asking: Asking, from: SetupGlass, to: SetupGlass): ChangeStep[] {
  const { ledger } = asking;
  const build = cameraOf(asking, to);
  const purpose = ledger.at(`builds/${build}/purpose`);
  if (build !== cameraOf(asking, from) || (purpose !== 'gimbal' && purpose !== 'tripod')) return [];
  const mm = centreOf(asking, to, build) - centreOf(asking, from, build);
  // Not a number where nothing has a mass and a place.
  if (!(Math.abs(mm) >= asking.assume(swap.movedMm).value)) return [];
  const says = purpose === 'gimbal' ? 'balance the gimbal again, off: its centre of mass has moved' : 'slide the camera to balance on its head: its centre of mass has moved';
  return [{ kind: 'balance', says, by: { value: Math.abs(mm), unit: 'mm' }, way: mm > 0 ? 'forward' : 'back', ...takes(asking, purpose === 'gimbal' ? swap.gimbalMin : swap.settingMin) }];
}

/** How far ahead of what the build stands on its centre of mass is, with all that stands on that. */
function centreOf(asking: Asking, subject: SetupGlass, build: string): number {
  const { setup, glass } = subject;
  const whole = wholeMass(asking, subject, build, (piece) => !STANDING.has(carrierKind(piece) ?? ''));
  const { anchor } = standsOn(asking.ledger, setup, glass, build);
  return (whole?.centreMm[2] ?? NaN) - (placeSetup(asking.ledger, setup, glass).places.get(anchor)?.t[2] ?? 0);
}

/** What carries the camera and does not balance with it. */
const STANDING: ReadonlySet<string> = new Set(['head', 'legs', 'stand', 'gimbal']);
