import { useEffect, useRef } from 'react';
import type { PullView } from '../../jobs/views/pullView.ts';
import { printNumber } from '../../units/print.ts';

/** Panel pixels drawn, and how large each is. */
const WIDE = 120;
const HIGH = 84;
const EACH = 3;

/** What the puller sees: a chart at the panel's pixels with that instant's blur, oval as the squeeze makes it, late by the chain. */
export function PullerSees({ view, atS }: { readonly view: PullView; readonly atS: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { screen, squeeze } = view;
  const delayS = (screen?.delayMs ?? 0) / 1000;
  const blurMm = blurAt(view, atS - delayS);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === undefined || context === null || screen === undefined) return;
    const perMm = (screen.shownHeightMm / screen.sensorHeightMm / screen.panelPixelMm) * screen.zoom;
    drawChart(context, { blurPx: blurMm * perMm, squeeze, linePx: Math.max(1, (screen.shownHeightMm / screen.panelPixelMm / screen.pictureLines) * screen.zoom) });
  }, [blurMm, screen, squeeze]);
  if (screen === undefined) return <p className="note">{view.noScreen ?? 'Nobody who pulls has a screen.'}</p>;
  return (
    <figure className="puller-sees">
      <canvas ref={canvas} width={WIDE * EACH} height={HIGH * EACH} role="img" aria-label={`The picture on ${screen.name}: blur ${printNumber(blurMm * 1000, 2)} µm`} />
      <figcaption>
        <b>{screen.name}</b>
        <span>{screen.delayMs === undefined ? 'Its delay is not entered yet.' : `Shows what was ${printNumber(screen.delayMs, 3)} ms ago`}{screen.zoom === 1 ? '' : `, punched in ${screen.zoom}×`}.</span>
        <span>{blurMm < screen.visibleBlurMm ? 'This blur cannot be seen here' : 'This blur can be seen here'}{blurMm > view.circleMm ? ', and it is soft.' : ', and it counts as sharp.'}</span>
      </figcaption>
    </figure>
  );
}

function blurAt({ atS, blurMm, seconds }: PullView, timeS: number): number {
  const at = Math.min(atS.length - 1, Math.max(0, Math.round((timeS / seconds) * (atS.length - 1))));
  const blur = blurMm[at] ?? 0;
  return Number.isFinite(blur) ? blur : 0;
}

const TAPS = 64;
const GOLDEN = Math.PI * (3 - Math.sqrt(5));

/** Draws the chart small, one canvas pixel for each pixel of the panel, spreads it over the blur's oval, and shows each pixel large. */
function drawChart(context: CanvasRenderingContext2D, { blurPx, squeeze, linePx }: { blurPx: number; squeeze: number; linePx: number }): void {
  const sharp = new OffscreenCanvas(WIDE, HIGH);
  const picture = sharp.getContext('2d');
  const spread = new OffscreenCanvas(WIDE, HIGH);
  const blurred = spread.getContext('2d');
  if (picture === null || blurred === null) return;
  drawEye(picture, linePx);
  const radius = blurPx / 2;
  const taps = radius < 0.3 ? 1 : TAPS;
  for (let tap = 0; tap < taps; tap += 1) {
    const reach = taps === 1 ? 0 : radius * Math.sqrt((tap + 0.5) / taps);
    blurred.globalAlpha = 1 / (tap + 1);
    blurred.drawImage(sharp, (reach * Math.cos(tap * GOLDEN)) / squeeze, reach * Math.sin(tap * GOLDEN));
  }
  context.imageSmoothingEnabled = false;
  context.drawImage(spread, 0, 0, WIDE * EACH, HIGH * EACH);
}

/** A star of wedges and two ladders of lines: fine towards the middle, so that blur shows as a grey disc that grows. */
function drawEye(picture: OffscreenCanvasRenderingContext2D, linePx: number): void {
  picture.fillStyle = '#8d877c';
  picture.fillRect(0, 0, WIDE, HIGH);
  const [x, y, radius] = [HIGH / 2, HIGH / 2, HIGH / 2 - 6];
  for (let wedge = 0; wedge < 36; wedge += 1) {
    picture.fillStyle = wedge % 2 === 0 ? '#1d1b18' : '#e8e2d4';
    picture.beginPath();
    picture.moveTo(x, y);
    picture.arc(x, y, radius, (wedge * Math.PI) / 18, ((wedge + 1) * Math.PI) / 18);
    picture.fill();
  }
  for (const [row, width] of [1, 2, 3, 5].entries()) {
    for (let line = 0; line < 5; line += 1) {
      picture.fillStyle = '#1d1b18';
      picture.fillRect(HIGH + 2 + line * width * 2 * Math.min(linePx, 1.5), 8 + row * 18, width * Math.min(linePx, 1.5), 12);
    }
  }
}
