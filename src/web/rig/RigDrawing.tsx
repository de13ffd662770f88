import { type RefObject, useEffect, useRef, useState } from 'react';
import { usePreferences } from '../state/preferences.ts';
import { type ArrowLabel, type ArrowPlaces, ForceLabels } from './ForceLabels.tsx';
import { PieceLabels } from './PieceLabels.tsx';
import { RigScene, type SceneEvents, type Shown, type Side, type Spot } from './RigScene.ts';

interface Props extends Shown, Omit<SceneEvents, 'drawn' | 'swung'> {
  /** Counts up each time a side is asked for. */
  readonly side: { readonly side: Side; readonly times: number } | undefined;
  /** What is written beside the arrows. */
  readonly arrows: readonly ArrowLabel[];
  readonly point: (key: string | undefined) => void;
  /** What is shown, where that has to be said on the drawing. */
  readonly caption: string | undefined;
  /** Told where the swing is while it plays. */
  readonly swungTo: RefObject<number>;
}

const NONE: readonly Spot[] = [];
const NOWHERE: ArrowPlaces = { width: 0, height: 0, left: 0, right: 0, tips: [] };

/** The canvas with its labels. Where there is no WebGL it says so; everything else on the page works on. */
export function RigDrawing({ side, pick, drag, arrows, point, caption, swungTo, ...shown }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const room = useRef<HTMLDivElement>(null);
  const scene = useRef<RigScene | undefined>(undefined);
  const events = useRef({ pick, drag });
  events.current = { pick, drag };
  const [labels, setLabels] = useState(NONE);
  const [places, setPlaces] = useState(NOWHERE);
  const wanted = useRef({ labels: false, arrows: false });
  wanted.current = { labels: shown.overlays.has('labels'), arrows: arrows.length > 0 };
  const [broken, setBroken] = useState(false);
  const { ground } = usePreferences();
  useEffect(() => {
    if (canvas.current === null || room.current === null) return undefined;
    try {
      const made = new RigScene(canvas.current, {
        pick: (ref) => events.current.pick(ref), drag: (mm, done) => events.current.drag(mm, done),
        drawn: () => {
          setLabels(wanted.current.labels ? made.labels() : NONE);
          setPlaces(wanted.current.arrows || wanted.current.labels ? made.arrowPlaces() : NOWHERE);
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
  useEffect(() => scene.current?.show(shown), [shown.view, shown.build, shown.selected, shown.overlays, shown.pull, shown.forces, shown.pointed, shown.swing, shown.held, ground]);
  useEffect(() => {
    if (side !== undefined) scene.current?.look(side.side);
  }, [side]);
  const nameOf = (ref: string) => shown.view.bodies.find((body) => body.ref === ref)?.name ?? '';
  return (
    <div className="rig-room" ref={room}>
      {broken ? <p className="empty">This browser cannot draw in three dimensions (no WebGL). The pieces are listed below, and all answers stand.</p> : <canvas ref={canvas} role="img" aria-label="The rig; its pieces are listed below" onPointerMove={({ buttons, nativeEvent: { offsetX, offsetY } }) => { if (buttons === 0 && wanted.current.arrows) point(scene.current?.arrowAt(offsetX, offsetY)); }} onPointerLeave={() => { if (wanted.current.arrows) point(undefined); }} />}
      {labels.length > 0 && places.width > 0 && <PieceLabels spots={labels} room={places} selected={shown.selected} nameOf={nameOf} />}
      {arrows.length > 0 && places.width > 0 && <ForceLabels labels={arrows} places={places} pointed={shown.pointed} point={point} />}
      {caption !== undefined && !broken && <p className="rig-caption">{caption}</p>}
    </div>
  );
}
