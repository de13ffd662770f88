import type { PullView } from '../../jobs/views/pullView.ts';
import type { Simulated } from '../../jobs/simulatePull.ts';
import { printNumber } from '../../units/print.ts';
import { LEFT, lineThrough } from './scales.ts';

const HEIGHT = 110;
const LINE_PX = 16;

/** Blur on the sensor over time, beside what counts as sharp and what the puller can see at all. */
export function BlurStrip({ view, simulated, width, atS }: { readonly view: PullView; readonly simulated: Simulated | undefined; readonly width: number; readonly atS: number }) {
  const bands = simulated?.bands ?? [];
  const visible = view.screen?.visibleBlurMm;
  const most = Math.max(view.circleMm * 3, (visible ?? 0) * 1.3, ...bands.map(({ nineTenthsMm }) => nineTenthsMm * 1.05).filter((mm) => Number.isFinite(mm)), ...view.blurMm.filter((mm) => Number.isFinite(mm)).map((mm) => mm * 1.1));
  const x = (timeS: number) => LEFT + (timeS / view.seconds) * (width - LEFT - 8);
  const y = (mm: number) => 8 + (1 - Math.min(mm, most) / most) * (HEIGHT - 20);
  const soft = view.blurMm.filter((mm) => mm > view.circleMm).length / view.blurMm.length;
  // Two levels close together: the lower one is named below its line.
  const close = visible !== undefined && Math.abs(y(visible) - y(view.circleMm)) < LINE_PX;
  const level = (mm: number, says: string, name: string, below: boolean) => (
    <g className={`level ${name}`}>
      <path d={`M${LEFT} ${y(mm)}H${width}`} />
      <text x={width - 4} y={y(mm) + (below ? 12 : -4)} textAnchor="end">{says} {printNumber(mm * 1000, 2)} µm</text>
    </g>
  );
  return (
    <figure className="blur-strip">
      <figcaption>Blur on the sensor, focus late by {Math.round(view.lateMs)} ms: soft {Math.round(soft * 100)} % of the time{simulated === undefined ? '' : `. Band: eight takes in ten of ${simulated.takes} simulated, dots their middle`}</figcaption>
      <svg viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} role="img" aria-label={`Blur over time; soft ${Math.round(soft * 100)} % of it`}>
        {level(view.circleMm, 'sharp up to', 'circle', close && view.circleMm <= visible)}
        {visible !== undefined && level(visible, 'seen from', 'visible', close && visible < view.circleMm)}
        {bands.length > 0 && <path className="probable" d={`${lineThrough(bands.map((band) => [x(band.atS), y(band.nineTenthsMm)]))}${lineThrough(bands.toReversed().map((band) => [x(band.atS), y(band.tenthMm)])).replace('M', 'L')}Z`} />}
        {bands.length > 0 && <path className="median" d={lineThrough(bands.map((band) => [x(band.atS), y(band.medianMm)]))} />}
        <path className="blur-line" d={lineThrough(view.atS.map((time, at) => [x(time), y(view.blurMm[at] ?? Number.NaN)]))} />
        <path className="now" d={`M${x(atS)} 0V${HEIGHT}`} />
      </svg>
    </figure>
  );
}
