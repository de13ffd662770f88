import { useEffect, useRef, useState } from 'react';
import { usePreferences } from '../state/preferences.ts';
import { RigScene, type SceneEvents, type Shown, type Side } from './RigScene.ts';

interface Props extends Shown, Omit<SceneEvents, 'drawn'> {
  /** Counts up each time a side is asked for. */
  readonly side: { readonly side: Side; readonly times: number } | undefined;
}

/** The canvas with its labels. Where there is no WebGL it says so; everything else on the page works on. */
export function RigDrawing({ side, pick, drag, ...shown }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const room = useRef<HTMLDivElement>(null);
  const scene = useRef<RigScene | undefined>(undefined);
  const events = useRef({ pick, drag });
  events.current = { pick, drag };
  const [labels, setLabels] = useState<readonly { readonly ref: string; readonly x: number; readonly y: number }[]>([]);
  const wantsLabels = useRef(false);
  wantsLabels.current = shown.overlays.has('labels');
  const [broken, setBroken] = useState(false);
  const { ground } = usePreferences();
  useEffect(() => {
    if (canvas.current === null || room.current === null) return undefined;
    try {
      const made = new RigScene(canvas.current, {
        pick: (ref) => events.current.pick(ref), drag: (mm, done) => events.current.drag(mm, done),
        drawn: () => setLabels(wantsLabels.current ? made.labels() : []),
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
  useEffect(() => scene.current?.show(shown), [shown.view, shown.build, shown.selected, shown.overlays, shown.pull, ground]);
  useEffect(() => {
    if (side !== undefined) scene.current?.look(side.side);
  }, [side]);
  const nameOf = (ref: string) => shown.view.bodies.find((body) => body.ref === ref)?.name ?? '';
  return (
    <div className="rig-room" ref={room}>
      {broken ? <p className="empty">This browser cannot draw in three dimensions (no WebGL). The pieces are listed below, and all answers stand.</p> : <canvas ref={canvas} role="img" aria-label="The rig; its pieces are listed below" />}
      {labels.map(({ ref, x, y }) => <span key={ref} className="rig-label" data-chosen={ref === shown.selected} style={{ left: x, top: y }}>{nameOf(ref)}</span>)}
    </div>
  );
}
