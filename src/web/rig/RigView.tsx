import { useEffect, useRef, useState } from 'react';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { FreeWay, RigPiece, RigView as Rig } from '../../jobs/views/rigView.ts';
import { printAmount } from '../../units/print.ts';
import { NoSetup, SetupBar } from '../marks/SetupBar.tsx';
import { Mark } from '../marks/Mark.tsx';
import { enter } from '../state/actions.ts';
import { type Looking, useLooking, useView } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';
import { PieceSheet } from './PieceSheet.tsx';
import { RigDrawing } from './RigDrawing.tsx';
import type { Overlay, Side } from './RigScene.ts';

const OVERLAYS: readonly Overlay[] = ['labels', 'view', 'mass', 'lines', 'collisions'];
const SIDES: readonly Side[] = ['three quarter', 'side', 'top', 'front'];

/** The rig: what stands where, moved by hand, with what waits for a place in a tray. */
export function RigView() {
  const looking = useLooking();
  return looking === undefined ? <NoSetup /> : <Standing looking={looking} />;
}

function Standing({ looking }: { readonly looking: Looking }) {
  const view = useView(() => desk.rigView(looking), [looking.setup, looking.glass]);
  return (
    <section className="rig-view" aria-label="Rig">
      <SetupBar looking={looking} />
      {view !== undefined && !view.ok && <p className="empty">{view.says}</p>}
      {view?.ok === true && <Drawn rig={view.value} looking={looking} />}
    </section>
  );
}

function Drawn({ rig, looking }: { readonly rig: Rig; readonly looking: Looking }) {
  const [chosenBuild, setBuild] = useState<string | undefined>();
  const [selected, select] = useState<string | undefined>();
  const [overlays, setOverlays] = useState<ReadonlySet<Overlay>>(new Set(['view']));
  const [side, setSide] = useState<{ side: Side; times: number } | undefined>();
  const build = rig.builds.some(({ id }) => id === chosenBuild) ? (chosenBuild ?? '') : (rig.builds[0]?.id ?? '');
  const piece = rig.pieces.find(({ ref }) => ref === selected && ref.startsWith(`${build}/`));
  const way = piece?.heldBy?.ways.find(({ key }) => key.endsWith('Mm'));
  const pull = usePull(looking, piece?.ref, way?.key);
  const drag = useDrag(piece, way);
  const toggle = (overlay: Overlay) => {
    const next = new Set(overlays);
    if (!next.delete(overlay)) next.add(overlay);
    setOverlays(next);
  };
  const own = rig.pieces.filter((one) => one.build === build);
  return (
    <>
      <div className="rig-bar">
        <span role="group" aria-label="Build">{rig.builds.map(({ id, name }) => <button key={id} type="button" aria-pressed={id === build} onClick={() => setBuild(id)}>{name}</button>)}</span>
        <span role="group" aria-label="Look from">{SIDES.map((one) => <button key={one} type="button" onClick={() => setSide({ side: one, times: (side?.times ?? 0) + 1 })}>{one}</button>)}</span>
        <span role="group" aria-label="Show">{OVERLAYS.map((one) => <button key={one} type="button" aria-pressed={overlays.has(one)} onClick={() => toggle(one)}>{one}</button>)}</span>
      </div>
      <RigDrawing view={rig} build={build} selected={piece?.ref} overlays={overlays} pull={pull} side={side} pick={select} drag={drag} />
      <Findings rig={rig} build={build} />
      <div className="rig-pieces">
        <ul aria-label="Pieces">
          {own.filter(({ unplaced }) => unplaced === undefined).map(({ ref, name }) => <li key={ref}><button type="button" aria-pressed={ref === selected} onClick={() => select(ref === selected ? undefined : ref)}>{name}</button></li>)}
        </ul>
        <Tray pieces={own.filter(({ unplaced }) => unplaced !== undefined)} selected={selected} select={select} />
      </div>
      {piece !== undefined && <PieceSheet key={piece.ref} looking={looking} piece={piece} close={() => select(undefined)} />}
    </>
  );
}

/** The way the chosen piece can be pulled. */
function usePull(looking: Looking, ref: string | undefined, key: FreeWay['key'] | undefined): Vector | undefined {
  const [pull, setPull] = useState<Vector | undefined>();
  useEffect(() => {
    let wanted = true;
    setPull(undefined);
    if (ref !== undefined && key !== undefined) void desk.wayAlong(looking, ref, key).then((found) => wanted && setPull(found));
    return () => {
      wanted = false;
    };
  }, [looking.setup, looking.glass, ref, key]);
  return pull;
}

/** Drags become edits, one at a time: the next is sent when the one before is answered. */
function useDrag(piece: RigPiece | undefined, way: FreeWay | undefined): (mm: number, done: boolean) => void {
  const drag = useRef<{ readonly id: string; readonly from: number; busy: boolean; next: number | undefined } | undefined>(undefined);
  return (mm, done) => {
    if (piece?.heldBy === undefined || way === undefined) return;
    drag.current ??= { id: crypto.randomUUID(), from: way.value, busy: false, next: undefined };
    const now = drag.current;
    const path = `${piece.heldBy.path}/settings/${way.key}`;
    now.next = Math.round(Math.min(way.high, Math.max(way.low, now.from + mm)) * 2) / 2;
    const send = async (): Promise<void> => {
      if (now.busy) return;
      now.busy = true;
      while (now.next !== undefined) {
        const value = now.next;
        now.next = undefined;
        await enter(`${piece.name} moved`, path, value, now.id);
      }
      now.busy = false;
    };
    void send();
    if (done) drag.current = undefined;
  };
}

function Findings({ rig, build }: { readonly rig: Rig; readonly build: string }) {
  const system = useSystem();
  const nameOf = (ref: string) => rig.pieces.find((piece) => piece.ref === ref)?.name ?? ref;
  const hits = rig.collisions.filter(({ a }) => a.startsWith(`${build}/`));
  const mass = rig.masses.find((one) => one.build === build);
  return (
    <div className="rig-says">
      {mass !== undefined && <p className="figure">{printAmount({ value: mass.massG, unit: 'g' }, system)} placed{mass.unknown > 0 ? `; ${mass.unknown} ${mass.unknown === 1 ? 'piece' : 'pieces'} without a place or a mass not counted` : ''}</p>}
      {hits.map(({ a, b, depthMm, withTravel, coarse }) => <p key={`${a} ${b}`}><Mark verdict="fails" /> {nameOf(a)} and {nameOf(b)} are in one place, about {printAmount({ value: depthMm, unit: 'mm' }, system)} deep{withTravel ? ' at the end of the focus travel' : ''}{coarse ? ' (a guessed shape)' : ''}.</p>)}
      {rig.faults.map((fault) => <p key={fault}><Mark verdict="fails" /> {fault}</p>)}
    </div>
  );
}

/** Pieces that stand nowhere yet. They are judged all the same, where no place is needed. */
function Tray({ pieces, selected, select }: { readonly pieces: readonly RigPiece[]; readonly selected: string | undefined; readonly select: (ref: string | undefined) => void }) {
  if (pieces.length === 0) return null;
  return (
    <div className="tray">
      <h3>Waiting for a place</h3>
      <ul aria-label="Waiting for a place">
        {pieces.map(({ ref, name }) => <li key={ref}><button type="button" aria-pressed={ref === selected} onClick={() => select(ref === selected ? undefined : ref)}>{name}</button></li>)}
      </ul>
    </div>
  );
}
