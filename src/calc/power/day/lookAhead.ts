import { drain, runFrom } from '../discharge.ts';
import type { PackInUse } from './Shelf.ts';

export interface DaySegment {
  readonly hours: number;
  readonly loadW: number;
  readonly take: boolean;
  readonly chargerOn: boolean;
}

/** Times closer than this are one: a hundredth of a second. */
export const MOMENT_H = 0.01 / 3600;

export interface LoadStretch {
  readonly hours: number;
  readonly loadW: number;
}

/** From now to when packs may be touched again: what is left of this segment, and the takes that follow it. */
export function stretchesToPause(segments: readonly DaySegment[], i: number, leftHours: number): readonly LoadStretch[] {
  const ahead: LoadStretch[] = [{ hours: leftHours, loadW: segments[i]?.loadW ?? 0 }];
  for (let next = i + 1; segments[next]?.take === true; next += 1) ahead.push(segments[next] as LoadStretch);
  return ahead;
}

/** Hours a pack lasts along what lies ahead, and on from there at the last load. */
export function lastsThrough(one: PackInUse, ahead: readonly LoadStretch[]): number {
  let { soc } = one;
  let hours = 0;
  let lastLoadW = 0;
  for (const stretch of ahead) {
    const run = drain(one.pack, { soc, loadW: stretch.loadW, hours: stretch.hours });
    hours += run.hours;
    if (run.hours < stretch.hours) return hours;
    soc = run.endSoc;
    lastLoadW = stretch.loadW;
  }
  return hours + runFrom(one.pack, { soc, loadW: lastLoadW }).hours;
}

export function totalHours(ahead: readonly LoadStretch[]): number {
  return ahead.reduce((sum, { hours }) => sum + hours, 0);
}

/** The load a fresh pack is wanted for: that of the next take, or of now. */
export function loadThatComes(ahead: readonly LoadStretch[]): number {
  return ahead.slice(1).find(({ loadW }) => loadW > 0)?.loadW ?? ahead[0]?.loadW ?? 0;
}
