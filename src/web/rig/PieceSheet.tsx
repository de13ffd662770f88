import { useEffect, useState } from 'react';
import type { Fixing } from '../../jobs/views/fixing.ts';
import type { FreeWay, RigPiece } from '../../jobs/views/rigView.ts';
import { Typed } from '../forms/Typed.tsx';
import { readTyped, textOf, unitTyped } from '../marks/amounts.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import { edit, enter } from '../state/actions.ts';
import type { Looking } from '../state/looking.ts';
import { usePage } from '../state/page.ts';
import { useSystem } from '../state/preferences.ts';
import { addressOf } from '../state/route.ts';
import { desk } from '../worker/desk.ts';

const WORDS: Readonly<Record<FreeWay['key'], string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'to the side', heightMm: 'height' };

/** One piece of the rig: how it is held, how it can be moved, where else it could go, what could go on it. */
export function PieceSheet({ looking, piece, close }: { readonly looking: Looking; readonly piece: RigPiece; readonly close: () => void }) {
  const { heldBy, ref, name, part } = piece;
  const revision = usePage((state) => state.revision);
  const [fixings, setFixings] = useState<readonly Fixing[] | undefined>();
  const [additions, setAdditions] = useState<readonly Fixing[] | undefined>();
  useEffect(() => {
    void desk.additions(looking, ref).then(setAdditions);
    if (heldBy === undefined) void desk.fixings(looking, ref).then(setFixings);
  }, [looking.setup, looking.glass, ref, heldBy === undefined, revision]);
  return (
    <section className="piece-sheet" aria-label={name}>
      <header><h3>{name}</h3><button type="button" className="plain" onClick={close}>Close</button></header>
      {heldBy === undefined ? <p className="note">{piece.unplaced === undefined ? 'Everything else is placed from here.' : `${name} ${piece.unplaced}`}</p> : <p className="about">held by {heldBy.to}</p>}
      {heldBy?.ways.map((way) => <WayLine key={way.key} way={way} piece={name} path={`${heldBy.path}/settings/${way.key}`} />)}
      <p className="line-acts">
        {heldBy === undefined && piece.unplaced !== undefined && fixings !== undefined && fixings.length > 0 && <Choose says="Fix it to" of={fixings} />}
        {additions !== undefined && additions.length > 0 && <Choose says="Add to it" of={additions} />}
        {heldBy !== undefined && <button type="button" onClick={() => void enter(`${name} taken off`, heldBy.path, undefined)}>Take it off</button>}
      </p>
      <NoPoint wanting={heldBy === undefined && piece.unplaced !== undefined && fixings?.length === 0} full={additions?.length === 0} name={name} part={part} />
    </section>
  );
}

/** Where nothing goes together: what to enter for that, and where. */
function NoPoint({ wanting, full, name, part }: { readonly wanting: boolean; readonly full: boolean; readonly name: string; readonly part: string }) {
  if (!wanting && !full) return null;
  const says = wanting ? `Nothing here takes ${name}: give it a point that goes on one of this build, or a piece of this build a point that takes it.` : `No point of ${name} is free for anything in the kit.`;
  return <p className="about">{says} <a href={addressOf({ view: 'kit', part })}>Points of {name}</a></p>;
}

function WayLine({ way: { key, value, low, high, solved }, piece, path }: { readonly way: FreeWay; readonly piece: string; readonly path: string }) {
  const system = useSystem();
  const unit = unitOfKey(key);
  const [drag] = useState(() => crypto.randomUUID());
  const [draft, setDraft] = useState<number | undefined>();
  const put = (next: number, of?: string) => enter(`${piece}: ${WORDS[key]}`, path, Math.round(next * 100) / 100, of);
  const slide = (next: number) => {
    setDraft(next);
    void put(next, drag).then(() => setDraft(undefined));
  };
  return (
    <label className="way">
      <span>{WORDS[key]}{solved === undefined ? '' : <small> found {solved === 'shared' ? 'for the whole set' : 'for this lens'}</small>}</span>
      <input type="range" aria-label={`${WORDS[key]} of ${piece}`} min={low} max={high} step={key.endsWith('Deg') ? 1 : 0.5} value={draft ?? value} onChange={({ target }) => slide(Number(target.value))} />
      <Typed says={`${WORDS[key]} of ${piece}`} numeric text={textOf(value, unit, system)} unit={unitTyped(unit, system)} commit={(text) => { const typed = readTyped(text, unit, system); return typed === undefined ? Promise.resolve(false) : put(typed); }} />
    </label>
  );
}

function Choose({ says, of }: { readonly says: string; readonly of: readonly Fixing[] }) {
  return (
    <select aria-label={says} value="" onChange={({ target }) => { const chosen = of[Number(target.value)]; if (chosen !== undefined) void edit(chosen.edit.says, chosen.edit.patches); }}>
      <option value="">{says}</option>
      {of.map(({ says: one }, at) => <option key={one} value={at}>{one}</option>)}
    </select>
  );
}
