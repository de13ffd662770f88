import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { squeezeAt } from '../../calc/optics/squeezeAt.ts';
import { BENCH_MEASUREMENTS } from '../../standards/benchMeasurements.ts';
import { printAmount } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ShotSubject } from '../subjects.ts';
import { closeUpInUse, ownMark } from './closeUpInUse.ts';
import { distanceMarks } from './distanceMarks.ts';
import { squeezeOf } from './squeezeOf.ts';

/** Squeeze of what is in focus at a distance, against the nominal one that the picture is widened by. */
export interface SqueezeThere {
  readonly squeeze: number;
  /** Width shown over true width; above 1 it is too broad. */
  readonly stretch: number;
}

/** Marks of the piece that squeezes, in any order of distance; empty where none were measured. */
export function squeezeMarks({ part }: SetupPiece): { distanceMm: number; squeeze: number }[] {
  return distanceMarks(part, part.has('block') ? 'block/squeezeAt' : 'lens/squeezeAt', 'squeeze').map(({ distanceMm, value }) => ({ distanceMm, squeeze: value }));
}

/**
 * Whether what squeezes sees parallel light whatever the distance: a focuser ahead of it takes all the focusing. What is in
 * focus then has the squeeze of infinity.
 */
export function seesParallelLight(asking: Asking, { setup, glass }: ShotSubject): boolean {
  return opticalPath(asking.ledger, setup, glass).focuser !== undefined;
}

/** Squeeze at a distance from the sensor plane, from the marks of what squeezes; close-up lenses on the front shift the marks. */
export function squeezeThere(asking: Asking, subject: ShotSubject, distanceMm: number): SqueezeThere {
  const { by, value: nominalSqueeze } = squeezeOf(asking, subject);
  if (by === undefined || seesParallelLight(asking, subject)) return { squeeze: nominalSqueeze, stretch: 1 };
  const marks = squeezeMarks(by);
  const atDistanceMm = ownMark(closeUpInUse(asking, subject), distanceMm) ?? Infinity;
  const nearest = Math.min(...marks.map((mark) => mark.distanceMm));
  const farthest = Math.max(...marks.map((mark) => mark.distanceMm));
  if (marks.length < 2 || atDistanceMm < nearest || atDistanceMm > farthest) throw new NotEntered([notMeasured(by, atDistanceMm)]);
  return squeezeAt({ marks, atDistanceMm, nominalSqueeze });
}

function notMeasured({ part }: SetupPiece, distanceMm: number): { path: string; says: string; measure: string } {
  const where = distanceMm === Infinity ? 'infinity' : printAmount({ value: distanceMm / 1000, unit: 'm' });
  return { path: `${part.path}/${part.has('block') ? 'block' : 'lens'}/squeezeAt`, says: `squeeze of ${part.name} at ${where} and beyond`, measure: BENCH_MEASUREMENTS['squeeze']?.how ?? '' };
}
