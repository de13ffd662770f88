import { useEffect, useMemo, useState } from 'react';
import type { Part } from '../../shoot/schema/part.ts';
import { entering } from '../../jobs/place.ts';
import { printAmount } from '../../units/print.ts';
import { Sheet } from '../forms/EntryTable.tsx';
import { freeKey } from '../../shoot/edit/freeKey.ts';
import { asId } from '../forms/Fields.tsx';
import { edit } from '../state/actions.ts';
import { usePage, useShoot } from '../state/page.ts';
import { useSystem } from '../state/preferences.ts';
import { goTo, useRoute } from '../state/route.ts';
import { desk } from '../worker/desk.ts';
import { ImportParts } from './ImportParts.tsx';
import { ReplacePart } from './ReplacePart.tsx';

/** The kit: every part with its figures, and the classes more can be taken from. */
export function Kit() {
  const { kit } = useShoot();
  const forms = usePage((state) => state.forms);
  const chosen = useRoute().part;
  const [words, setWords] = useState('');
  const groups = useMemo(() => byKind(kit.parts, words), [kit.parts, words]);
  const part = chosen === undefined ? undefined : kit.parts[chosen];
  return (
    <section className="kit" aria-label="Kit" data-open={part !== undefined}>
      <div className="kit-list">
        <div className="filters" role="search">
          <input type="search" aria-label="Search the kit" placeholder="Search the kit" value={words} onChange={({ target }) => setWords(target.value)} />
          <AddTypical />
          <ImportParts />
        </div>
        {groups.length === 0 && <p className="empty">{words === '' ? 'The kit is empty. Take a first part from the typical classes above, or open a shoot that has one.' : 'Nothing in the kit fits this search.'}</p>}
        {groups.map(([kind, parts]) => (
          <section key={kind} aria-label={kind}>
            <h3>{kind}</h3>
            {parts.map(([id, one]) => <PartRow key={id} id={id} part={one} chosen={id === chosen} />)}
          </section>
        ))}
      </div>
      {part !== undefined && chosen !== undefined && forms !== undefined && (
        <div className="kit-sheet">
          <Sheet one="part" id={chosen} entry={part} form={forms.part} path="kit/parts" close={() => goTo({ part: undefined })} />
          <ReplacePart id={chosen} />
        </div>
      )}
    </section>
  );
}

function PartRow({ id, part, chosen }: { readonly id: string; readonly part: Part; readonly chosen: boolean }) {
  const system = useSystem();
  const mass = typeof part.massG === 'object' ? part.massG.value : part.massG;
  return (
    <button type="button" className="part-row" aria-pressed={chosen} onClick={() => goTo({ part: id })}>
      <span>{part.name}</span>
      <small>{part.basis === 'typical' ? 'typical' : ''}</small>
      <span className="figure">{(part.count ?? 1) === 1 ? '' : `× ${part.count ?? 1}`}</span>
      <span className="figure">{mass === undefined ? '' : printAmount({ value: mass, unit: 'g' }, system)}</span>
    </button>
  );
}

type Parts = readonly (readonly [string, Part])[];

function byKind(parts: Readonly<Record<string, Part>>, words: string): (readonly [string, Parts])[] {
  const wanted = words.trim().toLowerCase();
  const groups = new Map<string, [string, Part][]>();
  for (const [id, part] of Object.entries(parts)) {
    if (wanted !== '' && !`${part.name} ${part.kind}`.toLowerCase().includes(wanted)) continue;
    groups.set(part.kind, [...(groups.get(part.kind) ?? []), [id, part]]);
  }
  return [...groups.entries()];
}

/** Takes a part of a typical class into the kit: its figures are estimates until they are measured. */
function AddTypical() {
  const shoot = useShoot();
  const [classes, setClasses] = useState<readonly { id: string; name: string; kind: string }[]>([]);
  useEffect(() => void desk.typicalClasses().then(setClasses), []);
  const add = async (id: string) => {
    const part = await desk.typicalPart(id);
    if (part === undefined) return;
    const free = freeKey(asId(id), [...Object.keys(shoot.kit.parts), ...Object.keys(shoot.kit.copies ?? {})]);
    if (await edit(`${part.name} added to the kit`, entering(shoot, `kit/parts/${free}`, part))) goTo({ part: free });
  };
  const kinds = [...new Set(classes.map(({ kind }) => kind))];
  return (
    <select aria-label="Add a typical part" value="" onChange={({ target }) => void add(target.value)}>
      <option value="">Add a typical part</option>
      {kinds.map((kind) => (
        <optgroup key={kind} label={kind}>
          {classes.filter((one) => one.kind === kind).map(({ id, name }) => <option key={id} value={id}>{name}</option>)}
        </optgroup>
      ))}
    </select>
  );
}
