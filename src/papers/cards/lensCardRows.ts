import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { pieceSetting, setupPieces } from '../../assembly/setupPieces.ts';
import { nameAt } from '../../check/nameAt.ts';
import { focusScaleOf } from '../../check/quantities/focusScaleOf.ts';
import { handWheel } from '../../check/quantities/handWheel.ts';
import { ringTurner } from '../../check/quantities/ringTurner.ts';
import { shotDistances } from '../../check/quantities/shotDistances.ts';
import { shotsOf } from '../../check/quantities/shootFigures.ts';
import { squeezeOf } from '../../check/quantities/squeezeOf.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import { printAmount, printNumber } from '../../units/print.ts';
import { lensSettings } from '../build/lensSettings.ts';
import { movedPiece, settingPlace, settingShift } from '../build/settingPlace.ts';
import { enteredOrWhy, ifEntered } from '../entered.ts';
import type { MakingOfSetup } from '../paper.ts';

/** A row of a card: a word in the margin, and what it says. */
export interface CardRow {
  readonly label: string;
  readonly says: string;
}

/** What a first assistant wants to know of one glass in one setup. */
export interface LensCard {
  readonly glass: string;
  readonly name: string;
  readonly focal: string;
  readonly squeeze: string;
  readonly rows: readonly CardRow[];
}

/** `minded`: how many findings it holds; more are counted. */
export function lensCard(making: MakingOfSetup, glass: string, minded = MINDED): LensCard {
  const { ledger, asking, setup } = making;
  const subject = { setup, glass };
  const path = opticalPath(ledger, setup, glass);
  const focal = path.lens?.part.figure('lens/focalLengthMm');
  const squeeze = ifEntered(() => squeezeOf(asking, subject).value);
  return {
    glass, name: (ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass,
    focal: focal === undefined ? '' : printAmount({ value: focal.value, unit: 'mm' }), squeeze: squeeze === undefined ? '' : `${printNumber(squeeze)}×`,
    rows: [
      { label: 'stack', says: path.stack.map(({ name }) => name).join(' → ') },
      { label: 'turns', says: turns(making, glass) },
      { label: 'scale', says: scale(making, glass) },
      { label: 'motor', says: motor(making, glass) },
      { label: 'calibrate', says: calibrate(making, glass) },
      { label: 'settings', says: settings(making, glass) },
      { label: 'support', says: ofKind(making, glass, ['support', 'collar']) },
      { label: 'close-up', says: closeUps(making, glass) },
      { label: 'screens', says: screens(making, glass) },
      { label: 'shots', says: shots(making, glass) },
      { label: 'mind', says: minds(making, glass, minded) },
    ].filter(({ says }) => says !== ''),
  };
}

/** Which ring is turned, and what stays locked. */
function turns({ ledger, setup }: MakingOfSetup, glass: string): string {
  const { focusedBy, focuser, lens, block } = opticalPath(ledger, setup, glass);
  if (focusedBy === undefined) return 'No ring that focuses is in this stack.';
  const locked = [lens, block].filter((piece) => piece !== undefined && piece !== focusedBy && piece.part.has('focus')).map((piece) => piece?.name);
  return `${focusedBy.name}.${focuser !== undefined && locked.length > 0 ? ` Lock ${locked.join(' and ')} at infinity and tape it.` : locked.length > 0 ? ` ${locked.join(' and ')} stays where it is set.` : ''}`;
}

function scale({ asking, ledger, setup, press }: MakingOfSetup, glass: string): string {
  const found = enteredOrWhy(() => focusScaleOf(asking, { setup, glass }));
  if ('why' in found) return found.why;
  const { focusedBy } = opticalPath(ledger, setup, glass);
  const datum = focusedBy?.part.read('focus/datum') === 'front' ? 'its own marks count from the front' : 'distances from the sensor plane';
  const { throwDeg, nearMm, says } = found.value;
  return `${printAmount({ value: throwDeg, unit: 'deg' })} from infinity to ${printAmount({ value: nearMm / 1000, unit: 'm' }, press.system)}; ${datum}. From ${says}.`;
}

function motor({ asking, setup }: MakingOfSetup, glass: string): string {
  const found = enteredOrWhy(() => ringTurner(asking, { setup, glass }));
  if ('why' in found) return found.why;
  if (found.value === undefined) return 'None: by hand on the ring.';
  const { piece, teeth } = found.value;
  const wheel = ifEntered(() => handWheel(asking, { setup, glass }));
  const mapped = wheel === undefined ? '' : wheel.mapped ? `; ${wheel.piece.name} mapped, ${printAmount({ value: wheel.turn.value, unit: 'deg' })} for the throw` : `; ${printNumber(wheel.ringDegPerDeg)}° of ring for 1° of wheel`;
  return `${piece.name}, ${teeth}-tooth gear${mapped}.`;
}

function calibrate({ answers, setup }: MakingOfSetup, glass: string): string {
  const found = answers.find(({ question, subject }) => question === 'focus.calibrate' && subject.setup === setup && subject.glass === glass);
  if (found === undefined) return 'No: nothing to calibrate.';
  if (found.verdict === 'unknown') return found.says;
  return `${found.verdict === 'fails' ? 'No, set both ends by hand.' : 'Yes.'} ${found.says}`;
}

/** What is set for this glass, found by the program or pinned, from places that one sees, and how far from where it was with the first: one line a joint. */
function settings({ ledger, setup, glasses, press: { system } }: MakingOfSetup, glass: string): string {
  const placement = placeSetup(ledger, setup, glass);
  const first = glasses[0] ?? glass;
  const of = { ledger, setup, glass, system };
  const byJoint = new Map<string, { piece: string; says: string[] }>();
  for (const stands of lensSettings(ledger, setup, glass)) {
    const { joint, key, atLimit } = stands;
    const known = byJoint.get(joint.path) ?? { piece: movedPiece(placement, { joint, key }), says: [] };
    const shift = first === glass ? undefined : settingShift(of, stands, { glass: first, name: nameAt(ledger, 'glasses', first) });
    known.says.push(`${settingPlace(of, stands)}${atLimit === undefined ? '' : ', the end of its way'}${shift === undefined ? '' : ` (${shift})`}`);
    byJoint.set(joint.path, known);
  }
  return [...new Set([...byJoint.values()].map(({ piece, says }) => `${piece}: ${says.join('; ')}`))].join('\n');
}

function ofKind({ ledger, setup }: MakingOfSetup, glass: string, kinds: readonly string[]): string {
  const camera = ledger.at(`setups/${setup}/camera`);
  return [...setupPieces(ledger, setup, glass).values()].filter(({ build, part }) => build === camera && kinds.includes(part.kind)).map(({ name }) => name).join(', ');
}

function closeUps({ ledger, setup }: MakingOfSetup, glass: string): string {
  const named = shotsOf(ledger, setup).filter((shot) => ledger.at(`shots/${shot}/glass`) === glass).flatMap((shot) => {
    const id = ledger.at(`shots/${shot}/diopter`) as string | undefined;
    return id === undefined ? [] : [`${new PartView(ledger, id).name} for shot ${shot}`];
  });
  return named.join('; ');
}

/** What each screen must be set to, so that faces are as wide as they should be. */
function screens({ asking, ledger, setup }: MakingOfSetup, glass: string): string {
  const squeeze = ifEntered(() => squeezeOf(asking, { setup, glass }).value);
  if (squeeze === undefined) return '';
  return [...setupPieces(ledger, setup, glass).values()]
    .filter(({ part }) => part.has('screen'))
    .map((piece) => {
      const set = pieceSetting(piece, 'squeeze');
      return `${piece.name} ${set === undefined ? 'not set' : `${printNumber(set)}×`}`;
    })
    .join('; ')
    .concat(squeeze === 1 ? '' : `. Squeeze of this glass ${printNumber(squeeze)}×: where the picture comes de-squeezed already, the screen stays at 1×.`);
}

function shots({ asking, ledger, setup, press }: MakingOfSetup, glass: string): string {
  return shotsOf(ledger, setup)
    .filter((shot) => ledger.at(`shots/${shot}/glass`) === glass)
    .map((shot) => {
      const stop = ledger.at(`shots/${shot}/tStop`) as number | { value: number };
      const distances = ifEntered(() => shotDistances(asking, shot));
      const metres = (mm: number) => printAmount({ value: mm / 1000, unit: 'm' }, press.system);
      const reach = distances === undefined ? '' : distances.nearMm === distances.farMm ? `, ${metres(distances.nearMm)}` : `, ${metres(distances.farMm)} to ${metres(distances.nearMm)}`;
      return `${shot} ${(ledger.at(`shots/${shot}/name`) as string | undefined) ?? ''}: T${printNumber(typeof stop === 'number' ? stop : stop.value)}${reach}`;
    })
    .join('\n');
}

/** As many findings as a card usually has room for. */
export const MINDED = 3;

/** What fails with this glass itself, the worst. Lines and screens have papers of their own. */
const NOT_OF_GLASS: ReadonlySet<string> = new Set(['lines', 'sight', 'power']);

function minds({ answers, setup }: MakingOfSetup, glass: string, most: number): string {
  const failing = answers.filter(({ subject, verdict, discipline }) => !NOT_OF_GLASS.has(discipline) && subject.line === undefined && subject.setup === setup && subject.glass === glass && verdict === 'fails').map(({ says }) => says);
  const told = [...new Set(failing)];
  return told.length <= most ? told.join('\n') : [...told.slice(0, most), `and ${told.length - most} more that ${told.length - most === 1 ? 'fails' : 'fail'}`].join('\n');
}

/** The glasses of a setup in the order of its shots: what is swapped when. */
export function swapOrder({ ledger, setup }: MakingOfSetup): { readonly glass: string; readonly shots: string }[] {
  const order = (shot: string) => (ledger.at(`shots/${shot}/order`) as number | undefined) ?? Infinity;
  const runs: { glass: string; shots: string }[] = [];
  for (const shot of shotsOf(ledger, setup).toSorted((a, b) => order(a) - order(b) || 0)) {
    const id = ledger.at(`shots/${shot}/glass`) as string;
    const glass = (ledger.at(`glasses/${id}/name`) as string | undefined) ?? id;
    const last = runs.at(-1);
    if (last?.glass === glass) last.shots += `, ${shot}`;
    else runs.push({ glass, shots: shot });
  }
  return runs;
}
