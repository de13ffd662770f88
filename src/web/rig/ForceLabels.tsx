import { type Tip, besideTips } from './besideTips.ts';

/** What is written beside an arrow. */
export interface ArrowLabel {
  readonly key: string;
  readonly number: number;
  readonly name: string;
  readonly force: string;
}

/** Where the arrows end on the canvas, and how much room there is about the rig. */
export interface ArrowPlaces {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly tips: readonly Tip[];
}

interface Props {
  readonly labels: readonly ArrowLabel[];
  readonly places: ArrowPlaces;
  readonly pointed: string | undefined;
  readonly point: (key: string | undefined) => void;
}

/** Less room than this beside the rig holds a number and a force, and no name. */
const NAME_PX = 150;

/** The row in the list that an arrow belongs to. */
export const rowId = (number: number): string => `force-${number}`;

/** Arrows named and numbered beside the rig, with a line to each; the list says the same in words, so a reader of the page is told it there. */
export function ForceLabels({ labels, places, pointed, point }: Props) {
  const tips = places.tips.filter(({ key }) => labels.some((label) => label.key === key));
  const placed = besideTips(tips, places);
  return (
    <div className="force-labels" aria-hidden="true">
      <svg width={places.width} height={places.height}>
        {placed.map(({ key, x, y, tip }) => <g key={key} data-pointed={key === pointed}><line x1={x} y1={y} x2={tip.x} y2={tip.y} /><circle cx={tip.x} cy={tip.y} r={2.5} /></g>)}
      </svg>
      {placed.map(({ key, side, x, y }) => {
        const label = labels.find((one) => one.key === key);
        const room = side === 'left' ? x - 4 : places.width - x - 4;
        return label === undefined ? null : (
          <span
            key={key} className="force-label" data-side={side} data-pointed={key === pointed} style={{ top: y, maxWidth: room, ...(side === 'left' ? { right: places.width - x } : { left: x }) }}
            onPointerEnter={() => point(key)} onPointerLeave={() => point(undefined)} onClick={() => document.getElementById(rowId(label.number))?.focus()}
          >
            <b>{label.number}</b>{room >= NAME_PX && <span>{label.name}</span>}<em>{label.force}</em>
          </span>
        );
      })}
    </div>
  );
}
