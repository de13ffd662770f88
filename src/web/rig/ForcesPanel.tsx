import type { ForcesView } from '../../jobs/views/forcesView.ts';
import type { RigForces } from '../../jobs/views/rigForces.ts';
import type { RigPiece } from '../../jobs/views/rigView.ts';
import { printAmount } from '../../units/print.ts';
import { type Arrow, arrowsOf, wayWords } from './arrows.ts';

interface Props {
  readonly view: ForcesView;
  readonly pieces: readonly RigPiece[];
  readonly piece: RigPiece | undefined;
  readonly choose: (load: string) => void;
}

/** Which load is looked at, and what it does: the drawing's arrows in figures. */
export function ForcesPanel({ view: { loads, load, forces, notes, loose }, pieces, piece, choose }: Props) {
  const nameOf = (ref: string) => pieces.find((one) => one.ref === ref)?.name ?? ref;
  return (
    <section className="rig-panel" aria-label="Forces">
      {loads.length > 0 && (
        <label className="load-choice">
          <span>Carried under</span>
          <select value={load} onChange={({ target }) => choose(target.value)}>{loads.map(({ id, says }) => <option key={id} value={id}>{says}</option>)}</select>
        </label>
      )}
      {loose.length > 0 ? <Loose names={loose} /> : !forces.ok ? <p>{forces.says}</p> : <Carried forces={forces.value} piece={piece} nameOf={nameOf} />}
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

function Carried({ forces, piece, nameOf }: { readonly forces: RigForces; readonly piece: RigPiece | undefined; readonly nameOf: (ref: string) => string }) {
  const arrows = arrowsOf(forces, piece?.ref);
  const joints = arrows.filter(({ kind }) => kind !== 'weight' || piece !== undefined);
  const [first, rest] = piece === undefined ? [joints.slice(0, FIRST), joints.slice(FIRST)] : [joints, []];
  const title = piece === undefined ? 'What the joints carry, the most first' : `All that acts on ${piece.name}`;
  return (
    <>
      <h3>{title}</h3>
      {piece === undefined ? <p className="about">Arrows: a joint on the piece it holds; dashed, weights; black, what holds the rig. Choose a piece to see all that acts on it.</p> : <p className="about">They add up to nothing: it is at rest. Bent arrows are moments.</p>}
      {arrows.length === 0 && <p>{piece?.name} is no part of what is solved here.</p>}
      <Table arrows={first} nameOf={nameOf} label={title} />
      {rest.length > 0 && <details><summary>{rest.length} more</summary><Table arrows={rest} nameOf={nameOf} label="More joints" /></details>}
    </>
  );
}

function Table({ arrows, nameOf, label }: { readonly arrows: readonly Arrow[]; readonly nameOf: (ref: string) => string; readonly label: string }) {
  if (arrows.length === 0) return null;
  return (
    <table className="forces" aria-label={label}>
      <thead><tr><th scope="col">what</th><th scope="col" className="figure">force</th><th scope="col">way</th><th scope="col" className="figure">moment</th></tr></thead>
      <tbody>
        {arrows.map((arrow) => (
          <tr key={arrow.key}>
            <th scope="row"><Says arrow={arrow} nameOf={nameOf} /></th>
            <td className="figure">{forceOf(arrow)}</td>
            <td>{wayWords(arrow.forceN)}</td>
            <td className="figure">{momentOf(arrow)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Says({ arrow: { kind, joint, ref }, nameOf }: { readonly arrow: Arrow; readonly nameOf: (ref: string) => string }) {
  if (joint !== undefined) return <>{nameOf(joint.by)} on {nameOf(joint.on)} <small>{joint.type}</small></>;
  const says = { weight: 'weight of', teeth: 'teeth on', ground: 'what holds it, on', joint: '' }[kind];
  return <>{says} {nameOf(ref ?? '')}</>;
}

/** A force as it is printed, to a hundredth of a newton. */
export const forceOf = ({ forceN }: Arrow): string => printAmount({ value: roundTo(Math.hypot(...forceN), 100), unit: 'N' });
function momentOf({ momentNm }: Arrow): string {
  const value = roundTo(Math.hypot(...momentNm), 1000);
  return value === 0 ? '' : printAmount({ value, unit: 'N·m' });
}

const roundTo = (value: number, parts: number): number => Math.round(value * parts) / parts;
