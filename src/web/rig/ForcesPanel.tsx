import type { ForcesView } from '../../jobs/views/forcesView.ts';
import type { RigForces } from '../../jobs/views/rigForces.ts';
import type { RigPiece } from '../../jobs/views/rigView.ts';
import { type System, printAmount } from '../../units/print.ts';
import { type Arrow, arrowsOf, wayWords } from './arrows.ts';
import { useSystem } from '../state/preferences.ts';
import { type ArrowLabel, rowId } from './ForceLabels.tsx';

/** The arrow that is pointed at, in the drawing or in the list, and how to point at another. */
interface PointedAt {
  readonly pointed: string | undefined;
  readonly point: (key: string | undefined) => void;
}

interface Props extends PointedAt {
  readonly view: ForcesView;
  readonly pieces: readonly RigPiece[];
  readonly piece: RigPiece | undefined;
  readonly choose: (load: string) => void;
}

/** Which load is looked at, and what it does: the drawing's arrows in figures. */
export function ForcesPanel({ view: { loads, load, forces, notes, loose }, pieces, piece, choose, ...pointedAt }: Props) {
  const nameOf = namesIn(pieces);
  return (
    <section className="rig-panel" aria-label="Forces">
      {loads.length > 0 && (
        <label className="load-choice">
          <span>Carried under</span>
          <select value={load} onChange={({ target }) => choose(target.value)}>{loads.map(({ id, says }) => <option key={id} value={id}>{says}</option>)}</select>
        </label>
      )}
      {loose.length > 0 ? <Loose names={loose} /> : !forces.ok ? <p>{forces.says}</p> : <Carried forces={forces.value} piece={piece} nameOf={nameOf} {...pointedAt} />}
      {notes.map((note) => <p key={note} className="about">{note}</p>)}
    </section>
  );
}

function Loose({ names }: { readonly names: readonly string[] }) {
  return (
    <>
      <p>Nothing holds these in every way, so what the joints carry cannot be told:</p>
      <ul className="loose">{names.map((name) => <li key={name}>{name}</li>)}</ul>
    </>
  );
}

const FIRST = 8;

interface CarriedProps extends PointedAt {
  readonly forces: RigForces;
  readonly piece: RigPiece | undefined;
  readonly nameOf: (ref: string) => string;
}

function Carried({ forces, piece, nameOf, ...pointedAt }: CarriedProps) {
  const arrows = arrowsOf(forces, piece?.ref);
  const joints = arrows.filter(({ kind }) => kind !== 'weight' || piece !== undefined);
  const [first, rest] = piece === undefined ? [joints.slice(0, FIRST), joints.slice(FIRST)] : [joints, []];
  const title = piece === undefined ? 'What the joints carry, the most first' : `All that acts on ${piece.name}`;
  return (
    <>
      <h3>{title}</h3>
      {piece === undefined ? <p className="about">Arrows: a joint on the piece it holds; dashed, weights; in the colour of the text, what holds the rig{forces.outer.some(({ kind }) => kind === 'wind') && '; blue, wind'}{forces.outer.some(({ kind }) => kind === 'hand') && ', and the hand'}. Point at a row or an arrow to see which is which; choose a piece to see all that acts on it.</p> : <p className="about">They add up to nothing: it is at rest. Bent arrows are moments.</p>}
      {arrows.length === 0 && <p>{piece?.name} is no part of what is solved here.</p>}
      <Table arrows={first} nameOf={nameOf} label={title} {...pointedAt} />
      {rest.length > 0 && <details><summary>{rest.length} more</summary><Table arrows={rest} nameOf={nameOf} label="More joints" {...pointedAt} /></details>}
    </>
  );
}

interface TableProps extends PointedAt {
  readonly arrows: readonly Arrow[];
  readonly nameOf: (ref: string) => string;
  readonly label: string;
}

function Table({ arrows, nameOf, label, pointed, point }: TableProps) {
  const system = useSystem();
  if (arrows.length === 0) return null;
  return (
    <table className="forces" aria-label={label}>
      <thead><tr><th scope="col">what</th><th scope="col" className="figure">force</th><th scope="col">way</th><th scope="col" className="figure">moment</th></tr></thead>
      <tbody>
        {arrows.map((arrow) => (
          <tr key={arrow.key} data-pointed={arrow.key === pointed} onPointerEnter={() => point(arrow.key)} onPointerLeave={() => point(undefined)}>
            <th scope="row">
              <button type="button" className="plain" id={rowId(arrow.number)} onFocus={() => point(arrow.key)} onClick={() => point(arrow.key)} onBlur={() => point(undefined)}>
                <b>{arrow.number}</b><span>{saysOf(arrow, nameOf)} {arrow.joint !== undefined && <small>{arrow.joint.type}</small>}</span>
              </button>
            </th>
            <td className="figure">{forceOf(arrow, system)}</td>
            <td>{wayWords(arrow.forceN)}</td>
            <td className="figure">{momentOf(arrow, system)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const OUTER: Readonly<Record<Exclude<Arrow['kind'], 'joint'>, string>> = { weight: 'weight of', wind: 'wind on', hand: 'a hand on', teeth: 'teeth on', ground: 'what holds it, on' };

function saysOf({ kind, joint, ref }: Arrow, nameOf: (ref: string) => string): string {
  if (joint !== undefined) return `${nameOf(joint.by)} on ${nameOf(joint.on)}`;
  return kind === 'joint' ? '' : `${OUTER[kind]} ${nameOf(ref ?? '')}`;
}

const namesIn = (pieces: readonly RigPiece[]) => (ref: string): string => pieces.find((one) => one.ref === ref)?.name ?? ref;

/** What is written beside an arrow: its number, what its row says, and how strong it is. */
export const arrowLabel = (arrow: Arrow, pieces: readonly RigPiece[], system: System): ArrowLabel => ({ key: arrow.key, number: arrow.number, name: saysOf(arrow, namesIn(pieces)), force: forceOf(arrow, system) });

/** A force as it is printed, to a hundredth of a newton. */
const forceOf = ({ forceN }: Arrow, system: System): string => printAmount({ value: roundTo(Math.hypot(...forceN), 100), unit: 'N' }, system);
function momentOf({ momentNm }: Arrow, system: System): string {
  const value = roundTo(Math.hypot(...momentNm), 1000);
  return value === 0 ? '' : printAmount({ value, unit: 'N·m' }, system);
}

const roundTo = (value: number, parts: number): number => Math.round(value * parts) / parts;
