import { type RefObject, useEffect, useRef, useState } from 'react';
import { usePreferences } from '../state/preferences.ts';
import { RigScene, type SceneEvents, type Shown, type Side, type Spot } from './RigScene.ts';

interface Props extends Shown, Omit<SceneEvents, 'drawn' | 'swung'> {
  /** Counts up each time a side is asked for. */
  readonly side: { readonly side: Side; readonly times: number } | undefined;
  /** What stands at the tip of an arrow, by its key. */
  readonly tips: ReadonlyMap<string, string>;
  /** What is shown, where that has to be said on the drawing. */
  readonly caption: string | undefined;
  /** Told where the swing is while it plays. */
  readonly swungTo: RefObject<number>;
}

const NONE: readonly Spot[] = [];

/** The canvas with its labels. Where there is no WebGL it says so; everything else on the page works on. */
export function RigDrawing({ side, pick, drag, tips, caption, swungTo, ...shown }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const room = useRef<HTMLDivElement>(null);
  const scene = useRef<RigScene | undefined>(undefined);
  const events = useRef({ pick, drag });
  events.current = { pick, drag };
  const [labels, setLabels] = useState(NONE);
  const [marks, setMarks] = useState(NONE);
  const wanted = useRef({ labels: false, tips: 0 });
  wanted.current = { labels: shown.overlays.has('labels'), tips: tips.size };
  const [broken, setBroken] = useState(false);
  const { ground } = usePreferences();
  useEffect(() => {
    if (canvas.current === null || room.current === null) return undefined;
    try {
      const made = new RigScene(canvas.current, {
        pick: (ref) => events.current.pick(ref), drag: (mm, done) => events.current.drag(mm, done),
        drawn: () => {
          setLabels(wanted.current.labels ? made.labels() : NONE);
          setMarks(wanted.current.tips > 0 ? made.tips(wanted.current.tips) : NONE);
        },
        swung: (share) => (swungTo.current = share),
      });
      scene.current = made;
      const observer = new ResizeObserver(([entry]) => entry !== undefined && made.resize(entry.contentRect.width, entry.contentRect.height));
      observer.observe(room.current);
      return () => {
        observer.disconnect();
        made.dispose();
      };
    } catch {
      setBroken(true);
      return undefined;
    }
  }, []);
  useEffect(() => scene.current?.show(shown), [shown.view, shown.build, shown.selected, shown.overlays, shown.pull, shown.forces, shown.swing, shown.held, ground]);
  useEffect(() => {
    if (side !== undefined) scene.current?.look(side.side);
  }, [side]);
  const nameOf = (ref: string) => shown.view.bodies.find((body) => body.ref === ref)?.name ?? '';
  return (
    <div className="rig-room" ref={room}>
      {broken ? <p className="empty">This browser cannot draw in three dimensions (no WebGL). The pieces are listed below, and all answers stand.</p> : <canvas ref={canvas} role="img" aria-label="The rig; its pieces are listed below" />}
      {labels.map(({ key, x, y }) => <span key={key} className="rig-label" data-chosen={key === shown.selected} style={{ left: x, top: y }}>{nameOf(key)}</span>)}
      {apart(marks).map(({ key, x, y }) => <span key={key} className="rig-label figure" aria-hidden="true" style={{ left: x, top: y }}>{tips.get(key)}</span>)}
      {caption !== undefined && !broken && <p className="rig-caption">{caption}</p>}
    </div>
  );
}

const LINE_PX = 17;
const WIDE_PX = 60;

/** Labels that would cover each other, one under the other. */
function apart(spots: readonly Spot[]): Spot[] {
  const placed: Spot[] = [];
  for (const spot of spots.toSorted((a, b) => a.y - b.y)) {
    const above = placed.filter(({ x }) => Math.abs(x - spot.x) < WIDE_PX).map(({ y }) => y + LINE_PX);
    placed.push({ ...spot, y: Math.max(spot.y, ...above) });
  }
  return placed;
}
