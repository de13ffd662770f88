import { useEffect, useMemo, useRef, useState } from 'react';
import type { CableView, LineKind, LinesView as Lines } from '../../jobs/views/linesView.ts';
import { printAmount } from '../../units/print.ts';
import { NoSetup, SetupBar } from '../marks/SetupBar.tsx';
import { useWidth } from '../marks/useWidth.ts';
import { edit, say } from '../state/actions.ts';
import { type Looking, useLooking, useView } from '../state/looking.ts';
import { page } from '../state/page.ts';
import { desk } from '../worker/desk.ts';
import { Diagram } from './Diagram.tsx';
import { LineSheet } from './LineSheet.tsx';
import { type Layout, layOut } from './layout.ts';
import { stackUp } from './stackUp.ts';

const KINDS: readonly { readonly kind: LineKind; readonly says: string }[] = [{ kind: 'video', says: 'picture' }, { kind: 'power', says: 'power' }, { kind: 'control', says: 'control' }];

/** Lines: picture, power and control as they run, with what they carry; joined by drawing from socket to socket. */
export function LinesView() {
  const looking = useLooking();
  return looking === undefined ? <NoSetup /> : <Drawn looking={looking} />;
}

function Drawn({ looking }: { readonly looking: Looking }) {
  const view = useView(() => desk.linesView(looking), [looking.setup, looking.glass]);
  const [kinds, setKinds] = useState<ReadonlySet<LineKind>>(new Set(['video', 'power', 'control']));
  const [chosen, choose] = useState<string | undefined>();
  const shown = useMemo(() => (view?.ok === true ? only(view.value, kinds) : undefined), [view, kinds]);
  const labels = useMemo(() => new Map((shown?.cables ?? []).map((cable) => [cable.key, labelOf(cable)])), [shown]);
  const across = useLayout(shown, labels);
  const room = useRef<HTMLDivElement>(null);
  const [zoom, setZoom] = useState<number | undefined>();
  const width = useWidth(room);
  const narrow = across !== undefined && (width - 32) / across.width < LEAST;
  const stacked = useMemo(() => (narrow && shown !== undefined ? stackUp(shown, labels, (width - 32) / SIDE_BY_SIDE) : undefined), [narrow, shown, labels, width]);
  const layout = width === 0 ? undefined : (stacked ?? across);
  const fit = layout === undefined ? 1 : Math.min(1, Math.max(LEAST, (width - 32) / layout.width));
  const scale = zoom ?? fit;
  const line = shown?.cables.find(({ key }) => key === chosen);
  const join = async (from: string, to: string) => {
    const joined = await desk.joining(looking, from, to);
    if (joined.ok) await edit(joined.value.says, joined.value.patches);
    else page.set({ notice: { says: joined.says, kind: 'wrong' } });
  };
  const toggle = (kind: LineKind) => {
    const next = new Set(kinds);
    if (!next.delete(kind)) next.add(kind);
    setKinds(next);
  };
  return (
    <section className="lines-view" aria-label="Lines">
      <SetupBar looking={looking}>
        <span className="kinds" role="group" aria-label="Kinds of line">
          {KINDS.map(({ kind, says }) => <button key={kind} type="button" className={kind} aria-pressed={kinds.has(kind)} onClick={() => toggle(kind)}><KindLine kind={kind} /> {says}</button>)}
        </span>
        <span className="pair">
          <button type="button" aria-label="Smaller" onClick={() => setZoom(Math.max(LEAST, scale / 1.25))}>−</button>
          <button type="button" onClick={() => setZoom(undefined)}>Fit</button>
          <button type="button" aria-label="Larger" onClick={() => setZoom(Math.min(2, scale * 1.25))}>+</button>
        </span>
      </SetupBar>
      {view !== undefined && !view.ok && <p className="empty">{view.says}</p>}
      {shown?.devices.length === 0 && <p className="empty">Nothing in this setup has a socket. Give its parts ports under kit.</p>}
      <div className="diagram" ref={room}>
        {shown !== undefined && layout !== undefined && <Diagram scale={scale} view={shown} layout={layout} labels={labels} chosen={chosen} choose={choose} join={(from, to) => void join(from, to)} start={() => say('Now the socket at the other end. Escape lets go.')} />}
      </div>
      {line !== undefined && <LineSheet key={line.key} looking={looking} line={line} close={() => choose(undefined)} />}
    </section>
  );
}

/** Smaller than this, names cannot be read: where there is not the room, devices stand in one column. */
const LEAST = 0.66;
/** Builds stand side by side if that makes them no smaller than this. */
const SIDE_BY_SIDE = 0.8;

/** Kinds are told apart by dash and end mark first. */
function KindLine({ kind }: { readonly kind: LineKind }) {
  return <svg viewBox="0 0 24 8" width="24" height="8" aria-hidden="true"><path className={`wire ${kind}`} d="M0 4h22" /></svg>;
}

function only(view: Lines, kinds: ReadonlySet<LineKind>): Lines {
  const cables = view.cables.filter(({ kind }) => kinds.has(kind));
  const devices = view.devices.map((device) => ({ ...device, sockets: device.sockets.filter(({ kind }) => kinds.has(kind)) })).filter(({ ref, sockets }) => sockets.length > 0 || cables.some(({ from, to }) => from === ref || to === ref));
  return { builds: view.builds.filter(({ id }) => devices.some(({ build }) => build === id)), devices, cables };
}

function labelOf({ carries, amounts, kind }: CableView): string {
  const said = amounts.map((amount) => printAmount(amount)).join(' · ');
  if (kind === 'video' && carries !== undefined) return `${carries.replace(/^\d+ × (\d+) at /, '$1/')} · ${said}`;
  return said;
}

function useLayout(view: Lines | undefined, labels: ReadonlyMap<string, string>): Layout | undefined {
  const [layout, setLayout] = useState<{ of: Lines; layout: Layout } | undefined>();
  useEffect(() => {
    let wanted = true;
    if (view !== undefined) {
      layOut(view, labels).then(
        (placed) => wanted && setLayout({ of: view, layout: placed }),
        () => wanted && page.set({ notice: { says: 'The lines could not be laid out.', kind: 'wrong' } }),
      );
    }
    return () => {
      wanted = false;
    };
  }, [view, labels]);
  return layout !== undefined && view !== undefined && (layout.of === view || everything(view, layout.layout)) ? layout.layout : undefined;
}

/** Whether the last layout still has a place for all that is shown: then it stays until the next is there. */
const everything = (view: Lines, layout: Layout): boolean => view.devices.every(({ ref, sockets }) => layout.devices.has(ref) && sockets.every(({ key }) => layout.sockets.has(key)));
