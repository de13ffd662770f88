import { useShoot } from '../state/page.ts';
import { type Narrowing, WIDE, isNarrow } from './narrowing.ts';
import { viewerName } from '../shoot/names.ts';

interface Props {
  readonly narrowing: Narrowing;
  readonly narrow: (to: Narrowing) => void;
}

/** Search, and narrowing to a setup, a lens, a viewer or a shot. */
export function Filters({ narrowing, narrow }: Props) {
  const { setups, glasses, shots = {}, needs, crew } = useShoot();
  const choices = [
    { key: 'setup', says: 'any setup', of: named(setups) },
    { key: 'glass', says: 'any lens', of: named(glasses) },
    { key: 'shot', says: 'any shot', of: named(shots) },
    { key: 'viewer', says: 'any viewer', of: Object.entries(needs.viewers ?? {}).map(([id, viewer]) => ({ id, name: viewerName(viewer, crew) })) },
  ] as const;
  return (
    <div className="filters" role="search">
      <input type="search" placeholder="Search the answers" aria-label="Search the answers" value={narrowing.words} onChange={({ target }) => narrow({ ...narrowing, words: target.value })} />
      {choices.map(({ key, says, of }) => (
        <select key={key} aria-label={says} value={narrowing[key]} data-set={narrowing[key] !== ''} onChange={({ target }) => narrow({ ...narrowing, [key]: target.value })}>
          <option value="">{says}</option>
          {of.map(({ id, name }) => (
            <option key={id} value={id}>{name}</option>
          ))}
        </select>
      ))}
      {isNarrow(narrowing) && <button type="button" className="plain" onClick={() => narrow(WIDE)}>Show all</button>}
    </div>
  );
}

const named = (map: Readonly<Record<string, { readonly name: string }>>) => Object.entries(map).map(([id, { name }]) => ({ id, name }));
