import type { Vector } from '../../assembly/placing/Transform.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { printAmount } from '../../units/print.ts';
import type { SetupGlass } from '../subjects.ts';
import type { GimbalLoad } from './gimbalLoad.ts';
import { type LoadSlide, loadSlides, movedShare, roomAlong } from './loadSlides.ts';

/** The three ways a camera is slid in a gimbal: what is entered of each, and how a move along it is called. */
export const WAYS = [
  { at: 0, says: 'from side to side', more: 'to camera left', less: 'to camera right', figure: 'carrier/sideTravelMm' },
  { at: 1, says: 'up and down', more: 'up', less: 'down', figure: 'carrier/heightTravelMm' },
  { at: 2, says: 'fore and aft', more: 'forward', less: 'back', figure: 'carrier/plateTravelMm' },
] as const;
export type Way = (typeof WAYS)[number];

/** "12 mm back". */
export const moveSays = ({ more, less }: Way, mm: number): string => `${printAmount({ value: Math.abs(mm), unit: 'mm' })} ${mm < 0 ? less : more}`;

/** How a camera may still be moved one way. */
export interface Reach {
  /** How far its centre of mass can go where it is wanted. */
  readonly roomMm: number;
  /** "half the travel of the plate (sheet)". */
  readonly says: string;
  readonly slides: readonly LoadSlide[];
}

/** Towards where the centre has to go: what is left on the joints under the camera, else half the travel of the gimbal's plate. `undefined`: neither is entered. */
export function reachOf(ledger: Ledger, subject: SetupGlass, { gimbal, whole, turn }: GimbalLoad, way: Way, wantedMm: number): Reach | undefined {
  const direction = directionOf(turn, way, wantedMm);
  const slides = loadSlides(ledger, subject, gimbal.ref).filter((slide) => Math.abs(turn(slide.way)[way.at]) > 0.95);
  if (slides.length > 0) return { roomMm: slides.reduce((sum, slide) => sum + roomAlong(slide, direction) * movedShare(whole, slide), 0), says: 'left on the plates under the camera', slides };
  const travel = gimbal.part.figure(way.figure);
  return travel === undefined ? undefined : { roomMm: travel.value / 2, says: 'half the travel of the plate', slides };
}

/** A direction of the gimbal as the build sees it. */
export function directionOf(turn: GimbalLoad['turn'], { at }: Way, mm: number): Vector {
  // The gimbal's axes as rows of its turn: what turns into the unit vector there.
  const columns = [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])] as const;
  const sign = mm < 0 ? -1 : 1;
  return [columns[0][at] * sign, columns[1][at] * sign, columns[2][at] * sign];
}
