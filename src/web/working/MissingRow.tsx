import type { Missing } from '../../check/answer.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import { Typed } from '../forms/Typed.tsx';
import { readTyped, unitTyped } from '../marks/amounts.ts';
import { enter } from '../state/actions.ts';
import { useSystem } from '../state/preferences.ts';

/** A figure that is not there: entered right here, or measured first. */
export function MissingRow({ missing: { path, says, measure } }: { readonly missing: Missing }) {
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
