import { useState } from 'react';
import type { Form } from '../../jobs/Forms.ts';
import { entering } from '../../jobs/place.ts';
import { edit, enter } from '../state/actions.ts';
import { useShoot } from '../state/page.ts';
import { freeKey } from '../../shoot/edit/freeKey.ts';
import { Draft, Fields, asId, titleOf } from './Fields.tsx';
import { Field } from './Field.tsx';

type Entry = Readonly<Record<string, unknown>>;

interface Props {
  /** What one entry is called: "shot". */
  readonly one: string;
  readonly path: string;
  readonly form: Form;
  readonly entries: Readonly<Record<string, Entry>>;
  /** Keys shown as columns; the rest opens below the row. */
  readonly columns: readonly string[];
  readonly empty: string;
}

/** A keyed map as a table: cells are changed in place, a row opens to everything else. */
export function EntryTable({ one, path, form, entries, columns, empty }: Props) {
  const [open, setOpen] = useState<string | undefined>();
  const [adding, setAdding] = useState(false);
  const fields = columns.flatMap((key) => (form.fields?.[key] === undefined ? [] : [[key, form.fields[key]] as const]));
  const rows = Object.entries(entries);
  return (
    <div className="entry-table">
      {rows.length === 0 ? <p className="empty">{empty}</p> : (
        <div className="scroll" tabIndex={0} role="region" aria-label={`${one} table`}>
          <table>
            <thead><tr><th><span className="hidden">more</span></th>{fields.map(([key, { says }]) => <th key={key} scope="col">{columnName(key, says)}</th>)}</tr></thead>
            <tbody>
              {rows.map(([id, entry]) => (
                <tr key={id} data-chosen={open === id}>
                  <td><button type="button" className="plain" aria-expanded={open === id} aria-label={`All of ${titleOf(id, entry)}`} onClick={() => setOpen(open === id ? undefined : id)}>{open === id ? '–' : '+'}</button></td>
                  {fields.map(([key, field]) => (
                    <td key={key}><Field quiet form={{ ...field, says: `${columnName(key, field.says)} of ${titleOf(id, entry)}` }} name={key} value={entry[key]} above={entry} put={(value) => enter(`${titleOf(id, entry)}: ${columnName(key, field.says)}`, `${path}/${id}/${key}`, value)} /></td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {open !== undefined && entries[open] !== undefined && <Sheet one={one} id={open} entry={entries[open]} form={form} path={path} close={() => setOpen(undefined)} />}
      {adding ? <Adding one={one} form={form} path={path} taken={Object.keys(entries)} done={() => setAdding(false)} /> : <button type="button" onClick={() => setAdding(true)}>Add a {one}</button>}
    </div>
  );
}

/** Everything of one entry. */
export function Sheet({ one, id, entry, form, path, close, without = [] }: { readonly one: string; readonly id: string; readonly entry: Entry; readonly form: Form; readonly path: string; readonly close?: () => void; readonly without?: readonly string[] }) {
  const name = titleOf(id, entry);
  return (
    <section className="sheet" aria-label={name}>
      <header><h3>{name}</h3>{close !== undefined && <button type="button" className="plain" onClick={close}>Close</button>}</header>
      <Fields key={id} form={form} value={entry} without={without} put={(keys, value) => enter(`${name}: ${keys.at(-1) ?? one}`, [path, id, ...keys].join('/'), value)} />
      <button type="button" className="plain" onClick={() => void enter(`${name} taken away`, `${path}/${id}`, undefined)}>Take away this {one}</button>
    </section>
  );
}

function Adding({ one, form, path, taken, done }: { readonly one: string; readonly form: Form; readonly path: string; readonly taken: readonly string[]; readonly done: () => void }) {
  const shoot = useShoot();
  const add = async (value: unknown) => {
    const id = freeKey(asId(titleOf(one, value)) || one, taken);
    const added = await edit(`${titleOf(id, value)} added`, entering(shoot, `${path}/${id}`, value));
    if (added) done();
    return added;
  };
  return (
    <section className="sheet" aria-label={`New ${one}`}>
      <header><h3>New {one}</h3><button type="button" className="plain" onClick={done}>Not now</button></header>
      <Draft form={form} put={add} />
    </section>
  );
}

const SHORT: Readonly<Record<string, string>> = { of: 'part', who: 'who', tStop: 'T-stop', massG: 'mass', frameRateHz: 'frames/s', takeMin: 'take', resetMin: 'reset', workHours: 'hours', illuminanceLux: 'light', distanceMm: 'distance', temperatureC: 'temperature', pulledBy: 'pulled by', linkDistanceM: 'link distance', windMps: 'wind', count: 'how many' };
const columnName = (key: string, says: string): string => SHORT[key] ?? (says.length > 18 ? key.replaceAll(/([A-Z])/g, ' $1').toLowerCase() : says);
