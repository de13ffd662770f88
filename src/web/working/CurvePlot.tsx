import type { Curve } from '../../check/answer.ts';
import { inSystem, printNumber } from '../../units/print.ts';
import { useSystem } from '../state/preferences.ts';

const WIDTH = 320;
const HEIGHT = 150;
const LEFT = 44;
const BOTTOM = 30;
const DASHES = ['', '5 3', '1.5 3'];

/** The curve of an answer: one line each, told apart by dash and by its name at the end. */
export function CurvePlot({ curve: { title, x, lines } }: { readonly curve: Curve }) {
  const system = useSystem();
  const shownX = (value: number) => inSystem({ value, unit: x.unit }, system).value;
  const unitY = lines[0]?.unit ?? 'ratio';
  const shownY = (value: number) => inSystem({ value, unit: unitY }, system).value;
  const [lowX, highX] = extent(x.at);
  const [lowY, highY] = extent(lines.flatMap(({ at }) => at), 0);
  const px = (value: number) => LEFT + ((value - lowX) / (highX - lowX || 1)) * (WIDTH - LEFT - 8);
  const py = (value: number) => HEIGHT - BOTTOM - ((value - lowY) / (highY - lowY || 1)) * (HEIGHT - BOTTOM - 10);
  return (
    <figure className="curve">
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={title}>
        <path className="axis" d={`M${LEFT} 6V${HEIGHT - BOTTOM}H${WIDTH - 4}`} />
        <text x={LEFT - 6} y={py(lowY)} textAnchor="end">{printNumber(shownY(lowY), 2)}</text>
        <text x={LEFT - 6} y={py(highY) + 4} textAnchor="end">{printNumber(shownY(highY), 2)}</text>
        <text x={LEFT} y={HEIGHT - BOTTOM + 14}>{printNumber(shownX(lowX), 2)}</text>
        <text x={WIDTH - 4} y={HEIGHT - BOTTOM + 14} textAnchor="end">{printNumber(shownX(highX), 3)}</text>
        <text x={(LEFT + WIDTH) / 2} y={HEIGHT - BOTTOM + 14} textAnchor="middle">{x.says}, {inSystem({ value: 0, unit: x.unit }, system).unit}</text>
        {lines.map(({ says, at }, index) => (
          <path key={says} className="graph" strokeDasharray={DASHES[index % DASHES.length]} d={pathOf(x.at.map((one, place) => [px(one), py(at[place] ?? Number.NaN)]))} />
        ))}
      </svg>
      <ul>
        {lines.map(({ says, unit }, index) => (
          <li key={says}>
            <svg viewBox="0 0 24 6" width="24" height="6" aria-hidden="true"><path className="graph" strokeDasharray={DASHES[index % DASHES.length]} d="M0 3h24" /></svg> {says} {inSystem({ value: 0, unit }, system).unit}
          </li>
        ))}
      </ul>
    </figure>
  );
}

function extent(values: readonly number[], ...also: readonly number[]): readonly [number, number] {
  const finite = [...values, ...also].filter((value) => Number.isFinite(value));
  return finite.length === 0 ? [0, 1] : [finite.reduce((a, b) => Math.min(a, b)), finite.reduce((a, b) => Math.max(a, b))];
}

function pathOf(points: readonly (readonly [number, number])[]): string {
  let pen = 'M';
  return points
    .map(([x, y]) => {
      if (!Number.isFinite(x) || !Number.isFinite(y)) {
        pen = 'M';
        return '';
      }
      const step = `${pen}${x.toFixed(1)} ${y.toFixed(1)}`;
      pen = 'L';
      return step;
    })
    .join('');
}
