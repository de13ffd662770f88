import { type Tip, besideTips } from './besideTips.ts';

interface Props {
  /** Where the pieces are on the canvas. */
  readonly spots: readonly Tip[];
  readonly room: { readonly width: number; readonly height: number; readonly left: number; readonly right: number };
  readonly selected: string | undefined;
  readonly nameOf: (ref: string) => string;
}

/** A name needs this much to be told from the next. */
const NAME_PX = 128;
const STEP_PX = 20;

/** Pieces named in two columns beside the rig, a line to each; the one chosen is named where it is. */
export function PieceLabels({ spots, room, selected, nameOf }: Props) {
  const { width, height } = room;
  const others = spots.filter(({ key }) => key !== selected);
  const most = 2 * Math.floor(height / STEP_PX);
  const placed = besideTips(others.slice(0, most), { ...room, left: Math.max(room.left, NAME_PX + STEP_PX), right: Math.min(room.right, width - NAME_PX - STEP_PX) });
  // Where there are more than there is room for beside it, the rest are named where they are.
  const onIt = [...others.slice(most), ...spots.filter(({ key }) => key === selected)];
  return (
    <div className="piece-labels" aria-hidden="true">
      <svg width={width} height={height}>
        {placed.map(({ key, x, y, tip }) => <g key={key}><line x1={x} y1={y} x2={tip.x} y2={tip.y} /><circle cx={tip.x} cy={tip.y} r={2} /></g>)}
      </svg>
      {placed.map(({ key, side, x, y }) => <span key={key} className="piece-label" style={{ top: y, maxWidth: side === 'left' ? x - 4 : width - x - 4, ...(side === 'left' ? { right: width - x } : { left: x }) }}>{nameOf(key)}</span>)}
      {onIt.map(({ key, x, y }) => <span key={key} className="rig-label" data-chosen={key === selected} style={{ left: x, top: y }}>{nameOf(key)}</span>)}
    </div>
  );
}
