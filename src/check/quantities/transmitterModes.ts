import { radioMode } from '../../assembly/lines/nets.ts';
import { type Leg, legsOf } from '../../assembly/lines/picture.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { visibleBlur as smallestBlur } from '../../calc/video/visibleBlur.ts';
import { sight } from '../../standards/assumptions/sight.ts';
import type { Asking } from '../Asking.ts';
import type { ViewerSubject } from '../subjects.ts';
import { seenBy } from './seenBy.ts';
import { shownOn } from './shownOn.ts';
import { videoChainDelay } from './videoChainDelay.ts';
import { visibleBlur } from './visibleBlur.ts';

/** What a viewer would see, and when, in one mode of the transmitter on the way. */
export interface ModeSeen {
  readonly id: string;
  readonly name: string;
  readonly transmitter: SetupPiece;
  readonly now: boolean;
  readonly pictureDelayMs: number;
  readonly visibleBlurMm: number;
}

/** Every mode that both ends of the one radio on a viewer's way know; none where the picture comes by cable, or does not come. */
export function transmitterModes(asking: Asking, subject: ViewerSubject): ModeSeen[] {
  const leg = seenBy(asking.ledger, subject)?.leg;
  const air = leg === undefined ? [] : legsOf(leg).filter(({ kind }) => kind === 'air');
  const [only] = air;
  const transmitter = only?.before?.piece;
  if (leg === undefined || only === undefined || transmitter === undefined || air.length > 1) return [];
  const known = only.piece.part.facet('radio')?.modes ?? {};
  return Object.entries(transmitter.part.facet('radio')?.modes ?? {}).flatMap(([id, { name }]) =>
    Object.hasOwn(known, id) ? (seenIn(asking, subject, { leg, air: only, transmitter, id, name }) ?? []) : [],
  );
}

function seenIn(asking: Asking, subject: ViewerSubject, { leg, air, transmitter, id, name }: { leg: Leg; air: Leg; transmitter: SetupPiece; id: string; name: string }): ModeSeen | undefined {
  const chain = videoChainDelay(asking.ledger, subject);
  const seen = visibleBlur(asking, subject);
  const now = radioMode(transmitter);
  const [nowMs, thenMs] = [now ?? '', id].map((mode) => transmitter.part.figure(`radio/modes/${mode}/delayMs`)?.value);
  if (chain === undefined || seen === undefined || nowMs === undefined || thenMs === undefined) return undefined;
  const visible = id === now ? seen.blurMm : blurWith(asking, subject, linesIn(leg, air, transmitter, id), seen.zoom, seen.distance.value) * seen.viewerRatio;
  return { id, name, transmitter, now: id === now, pictureDelayMs: chain.value - nowMs + thenMs, visibleBlurMm: visible };
}

function blurWith(asking: Asking, subject: ViewerSubject, lines: (seenLines: number) => number, zoom: number, viewingDistanceMm: number): number {
  const seen = seenBy(asking.ledger, subject);
  if (seen === undefined) return Infinity;
  const shown = shownOn(asking, subject, seen);
  return smallestBlur({
    sensorHeightMm: shown.sensorHeightMm, pictureHeightPx: Math.max(1, Math.round(lines(shown.pictureLines ?? 1))), shownHeightMm: shown.heightMm, panelPixelMm: shown.panelPixelMm, zoom,
    viewingDistanceMm, acuityArcmin: asking.assume(sight.acuityArcmin).value,
  }).blurMm;
}

/**
 * Lines of the sensor height in another mode, from those in the mode that is set. The poorest stage counts: the mode's own raster,
 * or what comes to the transmitter, whichever has fewer.
 */
function linesIn(leg: Leg, air: Leg, transmitter: SetupPiece, mode: string): (seenLines: number) => number {
  const sent = air.before?.picture?.heightPx;
  const nowPx = air.picture?.heightPx;
  const modePx = (transmitter.part.read(`radio/modes/${mode}/heightPx`) as number | undefined) ?? Infinity;
  if (sent === undefined || nowPx === undefined || leg.picture === undefined) return (lines) => lines;
  return (lines) => (lines * Math.min(sent, modePx)) / nowPx;
}
