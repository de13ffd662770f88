import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import type { Keyframe, PullView } from '../../jobs/views/pullView.ts';
import { printDistance } from '../../units/length.ts';
import { useSystem } from '../state/preferences.ts';
import { BOTTOM, LEFT, type Scales, lineThrough, scalesFor } from './scales.ts';

interface Props {
  readonly view: PullView;
  readonly width: number;
  readonly atS: number;
  readonly goTo: (timeS: number) => void;
  /** A keyframe while it is moved; and when it is let go. */
  readonly move: (subject: readonly Keyframe[]) => void;
  readonly settle: (subject: readonly Keyframe[]) => void;
}

const HEIGHT = 260;
const STEP_S = 0.1;
const STEP_SHARE = 0.02;

/** Subject, focus and depth over time. Keyframes are dragged, or moved with the arrow keys. */
export function PullPlot({ view, width, atS, goTo, move, settle }: Props) {
  const system = useSystem();
  const svg = useRef<SVGSVGElement>(null);
  const [held, setHeld] = useState<number | undefined>();
  const finite = [...view.subjectMm, ...view.nearMm].filter((mm) => Number.isFinite(mm));
  const scales = scalesFor({ system, width, height: HEIGHT, seconds: view.seconds, nearestMm: Math.min(...finite), farthestMm: Math.max(...view.subjectMm.concat(view.farMm.filter((mm) => Number.isFinite(mm) && mm < 2 * Math.max(...finite)))) });
  const under = (event: PointerEvent) => {
    const box = svg.current?.getBoundingClientRect();
    return { x: ((event.clientX - (box?.left ?? 0)) / (box?.width ?? 1)) * width, y: ((event.clientY - (box?.top ?? 0)) / (box?.height ?? 1)) * HEIGHT };
  };
  const dragged = (index: number, event: PointerEvent) => {
    const { x, y } = under(event);
    return moved(view.keyframes, index, { atS: scales.timeAt(x), distanceMm: scales.distanceAt(y) });
  };
  return (
    <svg
      ref={svg} className="pull-plot" viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} role="group" aria-label="Subject, focus and depth over time"
      onPointerMove={(event) => held !== undefined && move(dragged(held, event))}
      onPointerUp={(event) => { if (held !== undefined) settle(dragged(held, event)); setHeld(undefined); }}
      onPointerCancel={() => { setHeld(undefined); settle(view.keyframes); }}
    >
      <Grid scales={scales} seconds={view.seconds} />
      <path className="depth-band" d={bandOf(view, scales)} />
      <path className="focus-line" d={lineThrough(view.atS.map((time, at) => [scales.x(time), scales.y(view.focusMm[at] ?? Number.NaN)]))} />
      <path className="subject-line" d={lineThrough(view.atS.map((time, at) => [scales.x(time), scales.y(view.subjectMm[at] ?? Number.NaN)]))} />
      <path className="now" d={`M${scales.x(atS)} 4V${HEIGHT - BOTTOM}`} />
      <rect className="scrub" x={LEFT} y={HEIGHT - BOTTOM} width={Math.max(0, width - LEFT)} height={BOTTOM} onPointerDown={(event) => goTo(clampTime(scales.timeAt(under(event).x), view.seconds))} />
      {view.keyframes.map((keyframe, index) => {
        const distance = keyframe.distanceMm === 'infinity' ? Infinity : keyframe.distanceMm;
        const says = printDistance(distance, system);
        return (
          <g
            key={`${index} of ${view.keyframes.length}`} className="keyframe" data-held={held === index} role="slider" tabIndex={0} aria-label={`Keyframe ${index + 1} at ${keyframe.atS.toFixed(1)} s`} aria-valuetext={says} aria-valuenow={Number.isFinite(distance) ? distance : 1e6}
            onPointerDown={(event) => { svg.current?.setPointerCapture(event.pointerId); setHeld(index); }} onKeyDown={(event) => stepped(event, view.keyframes, index, settle)}
          >
            <circle className="grip" cx={scales.x(keyframe.atS)} cy={scales.y(distance)} r="16" />
            <rect x={scales.x(keyframe.atS) - 5} y={scales.y(distance) - 5} width="10" height="10" />
            <text x={Math.min(scales.x(keyframe.atS) + 10, width - 60)} y={scales.y(distance) - 8}>{says}</text>
          </g>
        );
      })}
    </svg>
  );
}

function Grid({ scales, seconds }: { readonly scales: Scales; readonly seconds: number }) {
  const system = useSystem();
  const step = seconds > 30 ? 5 : seconds > 12 ? 2 : 1;
  const times = Array.from({ length: Math.floor(seconds / step) + 1 }, (_, at) => at * step);
  return (
    <g className="grid">
      {scales.ticksMm.map((mm) => (
        <g key={mm}>
          <path d={`M${LEFT} ${scales.y(mm)}H${scales.width}`} />
          <text x={LEFT - 6} y={scales.y(mm) + 4} textAnchor="end">{mm === Infinity ? '∞' : printDistance(mm, system)}</text>
        </g>
      ))}
      {times.map((time) => <text key={time} x={scales.x(time)} y={scales.height - 6} textAnchor="middle">{time} s</text>)}
    </g>
  );
}

function bandOf({ atS, nearMm, farMm }: PullView, { x, y }: Scales): string {
  const far = atS.map((time, at) => `${at === 0 ? 'M' : 'L'}${x(time).toFixed(1)} ${y(farMm[at] ?? Infinity).toFixed(1)}`);
  const near = atS.map((time, at) => `L${x(time).toFixed(1)} ${y(nearMm[at] ?? Infinity).toFixed(1)}`).toReversed();
  return `${far.join('')}${near.join('')}Z`.replaceAll('NaN', '0');
}

const clampTime = (timeS: number, seconds: number): number => Math.min(seconds, Math.max(0, timeS));

/** A keyframe moved in time between its neighbours, and in distance; to a tenth of a second and a centimetre. */
function moved(keyframes: readonly Keyframe[], index: number, to: { readonly atS: number; readonly distanceMm: number }): Keyframe[] {
  const [before, after] = [keyframes[index - 1], keyframes[index + 1]];
  const earliest = before === undefined ? 0 : before.atS + STEP_S;
  const latest = after === undefined ? Infinity : after.atS - STEP_S;
  const atS = index === 0 ? 0 : Math.round(Math.min(latest, Math.max(earliest, to.atS)) * 10) / 10;
  const distanceMm = Math.max(100, Math.round(to.distanceMm / 10) * 10);
  return keyframes.map((one, at) => (at === index ? { atS, distanceMm } : one));
}

function stepped(event: KeyboardEvent, keyframes: readonly Keyframe[], index: number, settle: Props['settle']): void {
  const one = keyframes[index];
  if (one === undefined || one.distanceMm === 'infinity') return;
  const to: Readonly<Record<string, { atS: number; distanceMm: number }>> = {
    ArrowUp: { atS: one.atS, distanceMm: one.distanceMm * (1 + STEP_SHARE) }, ArrowDown: { atS: one.atS, distanceMm: one.distanceMm * (1 - STEP_SHARE) },
    ArrowLeft: { atS: one.atS - STEP_S, distanceMm: one.distanceMm }, ArrowRight: { atS: one.atS + STEP_S, distanceMm: one.distanceMm },
  };
  const next = to[event.key];
  if (next === undefined) return;
  event.preventDefault();
  settle(moved(keyframes, index, next));
}
