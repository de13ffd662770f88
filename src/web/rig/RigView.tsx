import { useMemo, useState } from 'react';
import type { RigPiece, RigView as Rig } from '../../jobs/views/rigView.ts';
import { NoSetup, SetupBar } from '../marks/SetupBar.tsx';
import { type Looking, useLooking, useView } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';
import { arrowsOf } from './arrows.ts';
import { Findings } from './Findings.tsx';
import { ForcesPanel, arrowLabel } from './ForcesPanel.tsx';
import { PieceSheet } from './PieceSheet.tsx';
import { RigDrawing } from './RigDrawing.tsx';
import type { Overlay, Side } from './RigScene.ts';
import { SwingPanel } from './SwingPanel.tsx';
import { useDrag, usePull } from './pulling.ts';
import { useForces } from './useForces.ts';
import { useSwing } from './useSwing.ts';
import { useSwingShow } from './useSwingShow.ts';

const OVERLAYS: readonly (readonly [Overlay, string])[] = [['labels', 'labels'], ['view', 'view'], ['mass', 'centre of mass'], ['lines', 'lines'], ['collisions', 'collisions'], ['forces', 'forces'], ['swing', 'swing']];
/** Labels beside the rig: more would not be looked at. */
const LABELLED = 6;
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
  const worked = useWorkedOut(looking, overlays, build, piece, rig);
  const own = rig.pieces.filter((one) => one.build === build);
  return (
    <>
      <div className="rig-bar">
        <span role="group" aria-label="Build">{rig.builds.map(({ id, name }) => <button key={id} type="button" aria-pressed={id === build} onClick={() => setBuild(id)}>{name}</button>)}</span>
        <span role="group" aria-label="Look from">{SIDES.map((one) => <button key={one} type="button" onClick={() => setSide({ side: one, times: (side?.times ?? 0) + 1 })}>{one}</button>)}</span>
        <span role="group" aria-label="Show">{OVERLAYS.map(([one, says]) => <button key={one} type="button" aria-pressed={overlays.has(one)} onClick={() => setOverlays(toggled(overlays, one))}>{says}</button>)}</span>
      </div>
      <RigDrawing
        view={rig} build={build} selected={piece?.ref} overlays={overlays} pull={pull} side={side} pick={select} drag={drag} forces={worked.carried} arrows={worked.arrows} pointed={worked.pointed} point={worked.point} swing={worked.show.swing}
        held={worked.show.plays ? 'plays' : worked.show.held} swungTo={worked.show.swungTo} caption={worked.show.caption}
      />
      <WorkedOut worked={worked} rig={rig} build={build} piece={piece} />
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

/** What is worked out for the overlays: forces as they are wanted, swings when first wanted. */
function useWorkedOut(looking: Looking, overlays: ReadonlySet<Overlay>, build: string, piece: RigPiece | undefined, rig: Rig) {
  const system = useSystem();
  const forces = useForces(looking, overlays.has('forces'));
  const swings = overlays.has('swing');
  const study = useSwing(looking, swings);
  const show = useSwingShow(swings && study.found?.ok === true && study.found.value.build === build ? study.found.value : undefined);
  const carried = forces.view?.build === build && forces.view.forces.ok ? forces.view.forces.value : undefined;
  const [pointed, point] = useState<string | undefined>();
  const all = useMemo(() => (carried === undefined ? [] : arrowsOf(carried, piece?.ref)), [carried, piece?.ref]);
  const arrows = all.filter(({ key, number }) => number <= LABELLED || key === pointed).map((arrow) => arrowLabel(arrow, rig.pieces, system));
  return { forces, carried, arrows, pointed: all.some(({ key }) => key === pointed) ? pointed : undefined, point, swings, study, show };
}

/** One overlay more or less. Arrows on pieces that swing would say nothing, and two sets of names have no room beside one rig: there one goes when the other comes. */
function toggled(overlays: ReadonlySet<Overlay>, one: Overlay): ReadonlySet<Overlay> {
  const next = new Set(overlays);
  if (next.delete(one)) return next;
  if (one === 'swing') next.delete('forces');
  if (one === 'labels') next.delete('forces');
  if (one === 'forces') {
    next.delete('swing');
    next.delete('labels');
  }
  return next.add(one);
}

interface WorkedOutProps {
  readonly worked: ReturnType<typeof useWorkedOut>;
  readonly rig: Rig;
  readonly build: string;
  readonly piece: RigPiece | undefined;
}

/** The figures of what the overlays show. They are those of the camera; beside another build this is said. */
function WorkedOut({ worked: { forces, swings, study, show, pointed, point }, rig, build, piece }: WorkedOutProps) {
  const of = forces.view?.build ?? (study.found?.ok === true ? study.found.value.build : build);
  if (of !== build && (swings || forces.view !== undefined)) return <p className="rig-says">Forces and swings are worked out for {rig.builds.find(({ id }) => id === of)?.name ?? of}; choose it above.</p>;
  if (swings) return <SwingPanel study={study} show={show} />;
  return forces.view === undefined ? null : <ForcesPanel view={forces.view} pieces={rig.pieces} piece={piece} choose={forces.choose} pointed={pointed} point={point} />;
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
