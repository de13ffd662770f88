import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { fNumber as fNumberBehind } from '../../calc/optics/fNumber.ts';
import { tStop as tNumberOf } from '../../calc/optics/tStop.ts';
import { figureOf } from '../../shoot/ledger/figures.ts';
import type { StatedFigure } from '../../shoot/schema/basics.ts';
import { optics } from '../../standards/assumptions/optics.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass, ShotSubject } from '../subjects.ts';
import { type Bounded, productOf, through } from './Bounded.ts';
import { lensOf } from './squeezeOf.ts';

/** Share of the light that a glass passes, with where that comes from. */
export interface LightThrough extends Bounded {
  /** "0.83 through 58 mm taking lens × 0.86 through Old 2× block". */
  readonly says: string;
  /** Some of it is not known and was assumed. */
  readonly assumed: boolean;
}

/** Share of the light that passes the lens of a glass, and block and focuser in front of it. Filters are not counted: a T-stop is set behind them. */
export function lightThrough(asking: Asking, { setup, glass }: SetupGlass): LightThrough {
  return asking.ledger.cell(`light through|${setup}|${glass}`, () => {
    const path = opticalPath(asking.ledger, setup, glass);
    const front = [path.block, path.focuser].filter((piece) => piece !== undefined);
    const passes = [throughLens(asking, lensOf(path, glass)), ...front.map((piece) => throughFront(asking, piece))];
    return {
      ...productOf(passes.map(({ share }) => share)),
      says: passes.map(({ says }) => says).join(' × '),
      assumed: passes.some(({ assumed }) => assumed),
    };
  });
}

/** The f-number at which a shot's T-stop is reached: depth goes by the f-number, exposure by the T-number. */
export function fNumberAt(asking: Asking, subject: ShotSubject): Bounded & Pick<LightThrough, 'says' | 'assumed'> & { readonly tNumber: number } {
  const light = lightThrough(asking, subject);
  const tNumber = shotStop(asking, subject.shot);
  return { ...through(light, (transmittance) => fNumberBehind({ tNumber, transmittance }).fNumber), tNumber, says: light.says, assumed: light.assumed };
}

/** The T-stop a shot is exposed at. */
export function shotStop(asking: Asking, shot: string): number {
  const path = `shots/${shot}/tStop`;
  return figureOf(asking.entered<StatedFigure>(path, 'the stop of the shot'), path, 'sheet').value;
}

/** How wide a glass opens: the f-number of its lens, and the T-number of the whole of it. */
export interface WidestStop {
  readonly fNumber: Bounded;
  readonly tNumber: Bounded;
}

export function widestStop(asking: Asking, subject: SetupGlass): WidestStop {
  const path = opticalPath(asking.ledger, subject.setup, subject.glass);
  const { part } = lensOf(path, subject.glass);
  const light = lightThrough(asking, subject);
  const stated = { f: part.figure('lens/fNumber'), t: part.figure('lens/tStop') };
  if (stated.f === undefined && stated.t === undefined) throw new NotEntered([describeFigure(part, 'lens/tStop')]);
  const ofLens = throughLens(asking, lensOf(path, subject.glass)).share;
  const fNumber = stated.f ?? through(stated.t as Bounded, (tNumber) => fNumberBehind({ tNumber, transmittance: ofLens.value }).fNumber);
  return { fNumber, tNumber: through(light, (transmittance) => tNumberOf({ fNumber: fNumber.value, transmittance }).tNumber) };
}

/** The widest f-number at which a glass is used in a setup: that of its brightest shot, else as wide as it opens. */
export function widestInUse(asking: Asking, subject: SetupGlass): { readonly fNumber: number; readonly tNumber: number; readonly shots: readonly string[] } {
  const shots = shotsWith(asking, subject);
  const stops = shots.filter((shot) => asking.ledger.at(`shots/${shot}/tStop`) !== undefined).map((shot) => fNumberAt(asking, { ...subject, shot }));
  const brightest = stops.toSorted((a, b) => a.value - b.value)[0];
  if (brightest !== undefined) return { fNumber: brightest.value, tNumber: brightest.tNumber, shots };
  const { fNumber, tNumber } = widestStop(asking, subject);
  return { fNumber: fNumber.value, tNumber: tNumber.value, shots };
}

/** The shots that a setup takes with a glass. */
export const shotsWith = ({ ledger }: Asking, { setup, glass }: SetupGlass): string[] =>
  ledger.keys('shots').filter((shot) => ledger.at(`shots/${shot}/setup`) === setup && ledger.at(`shots/${shot}/glass`) === glass);

interface Passed {
  readonly share: Bounded;
  readonly says: string;
  readonly assumed: boolean;
}

const FULL = 1;

function throughLens(asking: Asking, { part, name }: SetupPiece): Passed {
  const stated = part.figure('lens/transmittance');
  if (stated !== undefined) return passed(stated, name);
  const [f, t] = [part.figure('lens/fNumber'), part.figure('lens/tStop')];
  if (f === undefined || t === undefined) return passed(asking.assume(optics.lensTransmittance), name, true);
  // Of one barrel, the two numbers are out together: their ratio carries the doubt of one.
  const ratio = (f.value / t.value) ** 2;
  const doubt = (2 * (t.high - t.low)) / 2 / t.value;
  return passed({ value: ratio, low: ratio * (1 - doubt), high: ratio * (1 + doubt) }, name);
}

function throughFront(asking: Asking, { part, name }: SetupPiece): Passed {
  const stated = part.figure(part.has('block') ? 'block/transmittance' : 'focuser/transmittance');
  return stated === undefined ? passed(asking.assume(optics.attachmentTransmittance), name, true) : passed(stated, name);
}

function passed(share: Bounded, name: string, assumed = false): Passed {
  const capped = { value: Math.min(FULL, share.value), low: Math.min(FULL, share.low), high: Math.min(FULL, share.high) };
  return { share: capped, says: `${printNumber(capped.value, 2)} through ${name}${assumed ? ' (assumed)' : ''}`, assumed };
}
