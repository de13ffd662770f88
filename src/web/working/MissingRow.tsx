import type { Missing } from '../../check/answer.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import { Typed } from '../forms/Typed.tsx';
import { readTyped, unitTyped } from '../marks/amounts.ts';
import { enter } from '../state/actions.ts';
import { useSystem } from '../state/preferences.ts';
import { addressOf } from '../state/route.ts';

/** Where what is wanted is no figure but a piece, a joint or a list: it is entered in its own view. */
const ENTRIES: ReadonlySet<string> = new Set(['stack', 'pieces', 'carrier', 'camera', 'joints', 'viewers', 'packs', 'distances', 'keyframes']);

/** A figure that is not there: entered right here, or measured first. */
export function MissingRow({ missing }: { readonly missing: Missing }) {
  return ENTRIES.has(missing.path.slice(missing.path.lastIndexOf('/') + 1)) ? <MissingEntry missing={missing} /> : <MissingFigure missing={missing} />;
}

function MissingEntry({ missing: { path, says } }: { readonly missing: Missing }) {
  const [head, , id] = path.split('/');
  const [where, address] = head === 'kit' ? ['in the kit', addressOf({ view: 'kit', part: id })] : head === 'builds' ? ['at the rig', addressOf({ view: 'rig' })] : ['in the shoot', addressOf({ view: 'shoot' })];
  return (
    <div className="missing">
      <div className="figure-row">
        <span className="figure-name">{says}<small>not entered yet</small></span>
        <a href={address}>Enter it {where}</a>
      </div>
    </div>
  );
}

function MissingFigure({ missing: { path, says, measure } }: { readonly missing: Missing }) {
  const system = useSystem();
  const unit = unitOfKey(path.slice(path.lastIndexOf('/') + 1));
  const typed = (text: string) => {
    const value = readTyped(text, unit, system);
    return value === undefined ? Promise.resolve(false) : enter(`${says} entered`, path, value);
  };
  return (
    <div className="missing">
      <div className="figure-row">
        <span className="figure-name">{says}<small>not entered yet</small></span>
        <Typed says={says} text="" unit={unitTyped(unit, system)} commit={typed} numeric />
      </div>
      {measure !== undefined && <p className="note">To measure it: {measure}</p>}
    </div>
  );
}
