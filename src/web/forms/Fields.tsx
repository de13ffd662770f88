import { useState } from 'react';
import type { Form } from '../../jobs/Forms.ts';
import { Field } from './Field.tsx';

/** Enters a value at keys below; `undefined` takes it away. */
export type PutAt = (keys: readonly string[], value: unknown) => Promise<boolean>;
type Entries = Readonly<Record<string, unknown>>;

interface Props {
  readonly form: Form;
  readonly value: Entries;
  readonly put: PutAt;
  /** Keys left out: they stand elsewhere. */
  readonly without?: readonly string[];
}

const NESTED: ReadonlySet<Form['kind']> = new Set(['group', 'map']);

/** All that can be entered of one thing: what is there first, what could be added folded behind it. */
export function Fields({ form, value, put, without = [] }: Props) {
  const [wanted, setWanted] = useState<readonly string[]>([]);
  const all = Object.entries(form.fields ?? {}).filter(([key, one]) => !without.includes(key) && one.kind !== 'fixed');
  const shown = all.filter(([key, one]) => value[key] !== undefined || one.optional !== true || wanted.includes(key));
  const absent = all.filter((one) => !shown.includes(one));
  return (
    <div className="fields">
      {shown.map(([key, one]) => (
        <FieldLine key={key} name={key} form={one} value={value[key]} above={value} put={(keys, entered) => put([key, ...keys], entered)} />
      ))}
      {absent.length > 0 && (
        <select className="add" aria-label="Add an entry" value="" onChange={({ target }) => setWanted([...wanted, target.value])}>
          <option value="">Add an entry</option>
          {absent.map(([key, { says }]) => <option key={key} value={key}>{says}</option>)}
        </select>
      )}
    </div>
  );
}

interface LineProps {
  readonly name: string;
  readonly form: Form;
  readonly value: unknown;
  readonly above: Entries;
  readonly put: PutAt;
}

function FieldLine({ name, form, value, above, put }: LineProps) {
  if (!NESTED.has(form.kind)) {
    return (
      <div className="field">
        <span className="field-name" aria-hidden="true">{form.says}</span>
        <Field form={form} name={name} value={value} above={above} put={(entered) => put([], entered)} />
      </div>
    );
  }
  const there = (value ?? {}) as Entries;
  return (
    <details className="nested" open={value !== undefined && Object.keys(there).length <= 6 && form.kind === 'group'}>
      <summary>{form.says}{form.kind === 'map' ? <small className="figure"> {Object.keys(there).length}</small> : null}</summary>
      {form.kind === 'map' ? <MapFields form={form} value={there} put={put} /> : value === undefined ? <Draft form={form} put={(entered) => put([], entered)} /> : (
        <>
          <Fields form={form} value={there} put={put} />
          {form.optional === true && <button type="button" className="plain" onClick={() => void put([], undefined)}>Take away {form.says}</button>}
        </>
      )}
    </details>
  );
}

function MapFields({ form, value, put }: { readonly form: Form; readonly value: Entries; readonly put: PutAt }) {
  const [adding, setAdding] = useState('');
  const of = form.of ?? { kind: 'any', says: 'entry' };
  const free = adding !== '' && !Object.hasOwn(value, adding);
  return (
    <div className="map">
      {Object.entries(value).map(([id, entry]) => (
        <details key={id} className="nested">
          <summary>{titleOf(id, entry)}</summary>
          {of.kind === 'group' ? <Fields form={of} value={entry as Entries} put={(keys, entered) => put([id, ...keys], entered)} /> : <Field form={of} name={id} value={entry} above={value} put={(entered) => put([id], entered)} />}
          <button type="button" className="plain" onClick={() => void put([id], undefined)}>Take away {titleOf(id, entry)}</button>
        </details>
      ))}
      <label className="field"><span className="field-name">New, called</span>
        <input type="text" value={adding} onChange={({ target }) => setAdding(asId(target.value))} />
      </label>
      {free && <Draft form={of} put={async (entered) => (await put([adding], entered)) && (setAdding(''), true)} />}
    </div>
  );
}

/** Something new, entered whole: it goes in once nothing that must be there is missing. */
export function Draft({ form, put }: { readonly form: Form; readonly put: (value: unknown) => Promise<boolean> }) {
  const [draft, setDraft] = useState<unknown>(form.kind === 'group' ? emptyOf(form) : undefined);
  const change: PutAt = (keys, value) => {
    setDraft((before: unknown) => withValue(before, keys, value));
    return Promise.resolve(true);
  };
  const missing = missingIn(form, draft);
  return (
    <div className="draft">
      {form.kind === 'group' ? <Fields form={form} value={draft as Entries} put={change} /> : <Field form={form} name="" value={draft} above={{}} put={(value) => change([], value)} />}
      <button type="button" disabled={missing.length > 0} onClick={() => void put(draft)}>Add</button>
      {missing.length > 0 && <small>Still to enter: {missing.join(', ')}.</small>}
    </div>
  );
}

function emptyOf(form: Form): Entries {
  const must = Object.entries(form.fields ?? {}).filter(([, one]) => one.optional !== true && NESTED.has(one.kind));
  return Object.fromEntries(must.map(([key, one]) => [key, one.kind === 'group' ? emptyOf(one) : {}]));
}

function missingIn(form: Form, value: unknown): string[] {
  if (form.kind !== 'group') return value === undefined ? [form.says] : [];
  const there = (value ?? {}) as Entries;
  return Object.entries(form.fields ?? {}).flatMap(([key, one]) => {
    if (there[key] === undefined) return one.optional === true || one.kind === 'flag' ? [] : [one.says];
    return one.kind === 'group' ? missingIn(one, there[key]) : [];
  });
}

function withValue(holder: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  const { [key]: before, ...others } = (holder ?? {}) as Record<string, unknown>;
  const next = withValue(before, rest, value);
  return next === undefined ? others : { ...(holder as object), [key]: next };
}

export function titleOf(id: string, entry: unknown): string {
  const { name, role, of } = (typeof entry === 'object' && entry !== null ? entry : {}) as Record<string, unknown>;
  return [name, role, of].find((one): one is string => typeof one === 'string') ?? id;
}

/** A name as an id: letters, digits and hyphens. */
export const asId = (name: string): string => name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replace(/^-/, '').slice(0, 64);
