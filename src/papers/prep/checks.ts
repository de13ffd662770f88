import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { focusScaleOf } from '../../check/quantities/focusScaleOf.ts';
import { focusRing } from '../../check/quantities/focusRing.ts';
import { scaleMarks } from '../../check/quantities/scaleMarks.ts';
import { worstOfDays, lower } from '../../check/quantities/shootFigures.ts';
import { type ChainDelay, videoChainDelay } from '../../check/quantities/videoChainDelay.ts';
import { figureName } from '../../check/describeFigure.ts';
import { eachViewer } from '../../check/subjects.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import { BENCH_MEASUREMENTS } from '../../standards/benchMeasurements.ts';
import type { Unit } from '../../units/Unit.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import { printAmount, printNumber } from '../../units/print.ts';
import { ifEntered } from '../entered.ts';
import { rowsOf } from '../lineSchedule.ts';
import { fixedWords, howWords } from '../build/jointWords.ts';
import type { MakingOfSetup } from '../paper.ts';

/** Something to check by hand before the day. */
export interface Check {
  /** Stays the same while the rig does: ticks are kept under it. */
  readonly id: string;
  readonly says: string;
  /** What it should come to. */
  readonly expect: string;
  /** The figure of the file that a measurement here gives. */
  readonly measure?: Measure;
}

export interface Measure {
  readonly path: string;
  readonly says: string;
  readonly unit: Unit;
  /** What is read holds more than the figure: so much of it belongs to what comes before. */
  readonly minus?: number;
}

export interface CheckGroup {
  readonly says: string;
  /** How it is done, and what to mind. */
  readonly how: string;
  readonly checks: readonly Check[];
}

/** The name a tick is kept under in the shoot. */
export const tickKey = (setup: string, id: string): string => `${setup}|${id}`;

/** The checks that a setup asks for, from its own pieces. Groups with nothing to check are left out. */
export function checksOf(making: MakingOfSetup): CheckGroup[] {
  const pieces = [...new Map(making.glasses.flatMap((glass) => [...setupPieces(making.ledger, making.setup, glass).values()]).map((piece) => [`${piece.ref} ${piece.part.id}`, piece] as const)).values()];
  return [
    { says: 'Fixings and pins', how: 'Every screw by hand, then the key; pins in their holes. The numbers are estimates, not load ratings: anything overhead, on a vehicle or near people wants a safety line and a qualified rigger.', checks: fixings(making) },
    { says: 'Play and the sound of it', how: how('jump and play'), checks: play(pieces) },
    { says: 'Infinity and flange', how: how('infinity and flange'), checks: infinity(making) },
    { says: 'Scale at three distances', how: 'Tape from the sensor mark, not from the front. Focus by eye, read the ring or the wheel; mend the marks where they are out.', checks: scales(making) },
    { says: 'Calibration', how: 'Fingers, hair and cables clear. Watch it drive into both stops; then check one mark by eye.', checks: calibration(making) },
    { says: 'Squeeze axis', how: how('roll'), checks: axes(making, pieces) },
    { says: 'Delay of the picture', how: how('delay'), checks: delays(making) },
    { says: 'Power and run time', how: 'Run everything, recording, to the end of one pack. Note when the first device drops out.', checks: power(making, pieces) },
    { says: 'Cables and strain relief', how: 'Each plug locked, each cable tied within a hand of it; nothing hangs on a socket. Turn, tilt and pull focus from end to end: nothing tightens.', checks: cables(making) },
    { says: 'Radio', how: how('link'), checks: radios(pieces) },
    { says: 'Cold soak', how: 'An hour at the cold of the day, switched off and then running: glass, motors, monitors, packs. Bag it before it comes back into the warm.', checks: cold(making) },
    { says: 'Before it goes up', how: '', checks: cautions() },
  ].filter(({ checks }) => checks.length > 0);
}

const how = (measurement: string): string => BENCH_MEASUREMENTS[measurement]?.how ?? '';

/** Where a measured figure of a part or copy belongs. */
export function measureAt(part: PartView, path: string): Measure {
  return { path: part.copyPath === undefined ? `${part.path}/${path}` : `${part.copyPath}/figures/${path}`, says: figureName(part.ledger, `${part.path}/${path}`), unit: unitOfKey(path.slice(path.lastIndexOf('/') + 1)) };
}

function measured(part: PartView, path: string): string {
  const figure = part.figure(path);
  return figure === undefined ? '' : `${printAmount({ value: figure.value, unit: figure.unit })} (${figure.basis})`;
}

function fixings({ ledger, setup, glasses, press: { system } }: MakingOfSetup): Check[] {
  const joints = new Map(glasses.flatMap((glass) => [...placeSetup(ledger, setup, glass).model.tree, ...placeSetup(ledger, setup, glass).model.loops]).map((held) => [held.joint.path, held] as const));
  const all = [...joints.values()].map((held) => {
    const { joint, joint: { path, a, b } } = held;
    const [hangs, holds] = 'child' in held && held.child === a.ref ? [a, b] : [b, a];
    const pins = a.point.pins === true && b.point.pins === true ? 'pins' : a.point.pins === true || b.point.pins === true ? 'pins on one side only: they do not hold' : 'no pins: friction alone';
    return { id: `fixing ${path}`, says: fixedWords(hangs, holds), expect: [...howWords(joint, system), ...(['thread', 'hole'].includes(a.point.kind) ? [pins] : [])].join(', ') };
  });
  return alikeOnce(all);
}

/** Two rods in one plate are one row, told how many they are. */
function alikeOnce(checks: readonly Check[]): Check[] {
  const alike = new Map<string, { check: Check; count: number }>();
  for (const check of checks) {
    const key = `${check.says}|${check.expect}`;
    alike.set(key, { check: alike.get(key)?.check ?? check, count: (alike.get(key)?.count ?? 0) + 1 });
  }
  return [...alike.values()].map(({ check, count }) => (count === 1 ? check : { ...check, says: `${check.says}, ${count} times` }));
}

function play(pieces: readonly SetupPiece[]): Check[] {
  return pieces.flatMap(({ part, name }): Check[] => {
    const path = part.has('focus') ? 'focus/playDeg' : part.has('motor') ? 'motor/backlashDeg' : part.has('handWheel') ? 'handWheel/backlashDeg' : undefined;
    return path === undefined ? [] : [{ id: `play ${part.id}`, says: name, expect: measured(part, path), measure: measureAt(part, path) }];
  });
}

function infinity({ ledger, setup, glasses }: MakingOfSetup): Check[] {
  return perLens(glasses, ledger).flatMap(({ glass, name }) => {
    const lens = [...setupPieces(ledger, setup, glass).values()].find(({ part, fromGlass }) => fromGlass && part.has('lens'));
    return lens === undefined ? [] : [{ id: `infinity ${glass}`, says: name, expect: 'a lamp far off is sharp at the infinity mark, uprights and levels alike', measure: measureAt(lens.part, 'lens/infinityErrorMm') }];
  });
}

const perLens = (glasses: readonly string[], ledger: MakingOfSetup['ledger']) => glasses.map((glass) => ({ glass, name: (ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass }));

function scales({ asking, ledger, setup, glasses, press }: MakingOfSetup): Check[] {
  return perLens(glasses, ledger).flatMap(({ glass, name }) => {
    const scale = ifEntered(() => focusScaleOf(asking, { setup, glass }));
    if (scale === undefined) return [];
    const marks = scaleMarks(scale, press.system).filter(({ distanceMm }) => Number.isFinite(distanceMm));
    const three = [marks[0], marks[Math.floor(marks.length / 2)], marks.at(-1)].filter((mark) => mark !== undefined);
    const ring = ifEntered(() => focusRing(asking, { setup, glass }))?.name ?? '';
    return [{ id: `scale ${glass}`, says: `${name}: ${ring}`, expect: three.map(({ distanceMm, fromFarDeg }) => `${printAmount({ value: distanceMm / 1000, unit: 'm' }, press.system)} at ${printNumber(fromFarDeg)}°`).join(', ') + ' from the far end' }];
  });
}

function calibration({ answers, setup, ledger }: MakingOfSetup): Check[] {
  return answers.filter(({ question, subject }) => question === 'focus.calibrate' && subject.setup === setup).map(({ says, subject }) => ({ id: `calibrate ${subject.glass ?? ''}`, says: (ledger.at(`glasses/${subject.glass ?? ''}/name`) as string | undefined) ?? '', expect: says }));
}

function axes({ ledger, setup, glasses }: MakingOfSetup, pieces: readonly SetupPiece[]): Check[] {
  if (!pieces.some(({ part }) => part.has('block') || (part.figure('lens/squeeze')?.value ?? 1) !== 1)) return [];
  return perLens(glasses, ledger).flatMap(({ glass, name }) => {
    const by = [...setupPieces(ledger, setup, glass).values()].find(({ part, fromGlass }) => fromGlass && (part.has('block') || (part.figure('lens/squeeze')?.value ?? 1) !== 1));
    return by === undefined ? [] : [{ id: `axis ${glass}`, says: name, expect: `${by.name} held by ${(by.part.read('block/roll/heldBy') ?? by.part.read('lens/rollLock') ?? 'what is not entered') as string}; the chart's cross stands upright` }];
  });
}

function delays({ ledger, setup }: MakingOfSetup): Check[] {
  return eachViewer(ledger).filter((subject) => subject.setup === setup).flatMap((subject) => {
    const chain = ifEntered(() => videoChainDelay(ledger, subject));
    const ref = ledger.at(`needs/viewers/${subject.viewer}/screen`) as string;
    const screen = setupPieces(ledger, setup, subject.glass).get(ref);
    if (screen === undefined) return [];
    const role = ledger.at(`needs/viewers/${subject.viewer}/job`) as string;
    return [{ id: `delay ${subject.viewer}`, says: `${screen.name}, to ${role}`, expect: chain === undefined ? 'not known yet: measure' : `${printAmount({ value: chain.value, unit: 'ms' })} from sensor to light`, ...wholeDelay(chain, screen) }];
  });
}

/** The phone reads the whole way; the screen's own share is what is left of it. */
function wholeDelay(chain: ChainDelay | undefined, { part, name }: SetupPiece): { measure?: Measure } {
  const own = part.figure('screen/delayMs');
  if (chain === undefined || own === undefined) return {};
  return { measure: { ...measureAt(part, 'screen/delayMs'), says: `whole delay to ${name}, sensor to light`, minus: chain.value - own.value } };
}

function power({ answers, setup }: MakingOfSetup, pieces: readonly SetupPiece[]): Check[] {
  const runs = answers.filter(({ question, subject, verdict }) => question === 'power.runtime' && subject.setup === setup && verdict !== 'unknown').map(({ says, has, about, subject }) => ({ id: `run ${subject.piece ?? about.join(' ')}`, says: about[0] ?? '', expect: has === undefined ? says : `${printAmount(has.amount)} to a pack. ${says}` }));
  const draws = [...new Map(pieces.filter(({ part }) => part.has('draw')).map((piece) => [piece.part.id, piece] as const)).values()].map(({ part }) => ({ id: `watts ${part.id}`, says: part.name, expect: measured(part, 'draw/typicalW'), measure: measureAt(part, 'draw/typicalW') }));
  return [...runs, ...draws];
}

function cables(making: MakingOfSetup): Check[] {
  return rowsOf(making).map(({ number, from, to, key }) => ({ id: `cable ${key}`, says: `${number}  ${from.piece} to ${to.piece}`, expect: '' }));
}

function radios(pieces: readonly SetupPiece[]): Check[] {
  return [...new Map(pieces.filter(({ part }) => part.has('radio') && part.read('radio/role') !== 'transmits').map((piece) => [piece.part.id, piece] as const)).values()].map(({ part }) => ({
    id: `link ${part.id}`, says: part.name, expect: measured(part, 'radio/breaksUpAtM'), measure: measureAt(part, 'radio/breaksUpAtM'),
  }));
}

function cold({ ledger, setup }: MakingOfSetup): Check[] {
  const coldest = worstOfDays(ledger, setup, 'temperatureC', lower);
  if (coldest === undefined || coldest.value >= 5) return [];
  return ['glass and focus rings turn', 'motors calibrate', 'monitors start', 'packs carry the load', 'packs are kept warm until they go on; none is charged below 0 °C'].map((says) => ({ id: `cold ${says}`, says, expect: printAmount({ value: coldest.value, unit: '°C' }) }));
}

function cautions(): Check[] {
  return ['Nothing heavy above people without a second fixing', 'On a vehicle: local rules, a qualified rigger, nobody rides outside it', 'Lift with two from about 15 kg, and by the rig, not by the glass', 'Damaged or swollen packs are taken out of use', 'Radio channels agreed with sound; transmitters off on aircraft', 'Monitor cables and legs out of the way of feet']
    .map((says) => ({ id: `caution ${says}`, says, expect: '' }));
}
