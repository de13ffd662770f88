import type { Form } from '../../jobs/Forms.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import { BASES } from './bases.ts';
import { printDistance, readLength } from '../../units/length.ts';
import { readTyped, textOf, unitTyped } from '../marks/amounts.ts';
import { useShoot } from '../state/page.ts';
import { useSystem } from '../state/preferences.ts';
import { Typed } from './Typed.tsx';
import { referencesOf } from './references.ts';

export interface FieldProps {
  readonly form: Form;
  /** The key it stands under: it carries the unit. */
  readonly name: string;
  readonly value: unknown;
  /** The entry it stands in. */
  readonly above: Readonly<Record<string, unknown>>;
  /** Enters a value; `undefined` takes it away. */
  readonly put: (value: unknown) => Promise<boolean>;
  /** In a table: no frame until it is touched. */
  readonly quiet?: boolean;
}

/** One place of the file that holds one thing: a figure, a word, a choice. Groups and maps are drawn by `Fields`. */
export function Field({ form, name, value, above, put, quiet = false }: FieldProps) {
  const shoot = useShoot();
  const references = form.kind === 'text' ? referencesOf(shoot, name, above) : undefined;
  if (references !== undefined) return <Choose says={form.says} value={value} options={references} optional={form.optional === true} put={put} />;
  switch (form.kind) {
    case 'figure':
    case 'number':
      return <Numeric form={form} name={name} value={value} put={put} quiet={quiet} />;
    case 'distance':
      return <Distance says={form.says} value={value} put={put} quiet={quiet} />;
    case 'choice':
      return <Choose says={form.says} value={value} options={(form.options ?? []).map((id) => ({ id, name: id }))} optional={form.optional === true} put={put} />;
    case 'flag':
      return <input type="checkbox" aria-label={form.says} checked={value === true} onChange={({ target }) => void put(target.checked ? true : form.optional === true ? undefined : false)} />;
    case 'text':
      return <Typed says={form.says} quiet={quiet} text={typeof value === 'string' ? value : ''} commit={(text) => put(text === '' && form.optional === true ? undefined : text)} />;
    default:
      return <AsJson says={form.says} value={value} put={put} />;
  }
}

function Numeric({ form, name, value, put, quiet }: Pick<FieldProps, 'form' | 'name' | 'value' | 'put'> & { readonly quiet: boolean }) {
  const system = useSystem();
  const unit = form.kind === 'number' && !/[a-z](Mm|M|Ms|S|V|A|W|G|C|Nm|Hz|Px|Deg|MHz|Min)$/.test(name) ? 'ratio' : unitOfKey(name);
  const entry = typeof value === 'object' && value !== null ? (value as { value: number; basis?: string }) : undefined;
  const number = entry?.value ?? (typeof value === 'number' ? value : undefined);
  const put1 = (text: string) => {
    if (text === '') return form.optional === true ? put(undefined) : Promise.resolve(false);
    const typed = readTyped(text, unit, system);
    if (typed === undefined) return Promise.resolve(false);
    return put(entry === undefined ? typed : { value: typed, ...(entry.basis === undefined ? {} : { basis: entry.basis }) });
  };
  return (
    <span className="numeric">
      <Typed says={form.says} quiet={quiet} numeric text={number === undefined ? '' : textOf(number, unit, system)} unit={unitTyped(unit, system)} commit={put1} />
      {form.kind === 'figure' && number !== undefined && !quiet && (
        <select aria-label={`Basis of ${form.says}`} title="Where the figure comes from. Not said: as the part around it, if there is one" value={entry?.basis ?? ''} onChange={({ target }) => void put(basisPut(entry, number, target.value))}>
          <option value="">not said</option>
          {BASES.map((one) => <option key={one}>{one}</option>)}
        </select>
      )}
    </span>
  );
}

function basisPut(entry: object | undefined, value: number, basis: string): unknown {
  if (basis === '') return value;
  return { ...(entry ?? { value }), basis };
}

function Distance({ says, value, put, quiet }: Pick<FieldProps, 'value' | 'put'> & { readonly says: string; readonly quiet: boolean }) {
  const system = useSystem();
  const text = value === 'infinity' ? 'infinity' : typeof value === 'number' ? printDistance(value, system) : '';
  const typed = (entered: string) => {
    const bare = Number(entered.replace(',', '.'));
    const length = readLength(Number.isFinite(bare) && entered !== '' ? `${entered}${system === 'imperial' ? 'ft' : 'm'}` : entered);
    return length.ok ? put(length.value === Infinity ? 'infinity' : length.value) : Promise.resolve(false);
  };
  return <Typed says={says} text={text} quiet={quiet} commit={typed} />;
}

interface ChooseProps extends Pick<FieldProps, 'value' | 'put'> {
  readonly says: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly optional: boolean;
}

function Choose({ says, value, options, optional, put }: ChooseProps) {
  const at = typeof value === 'string' ? value : '';
  return (
    <select aria-label={says} value={at} onChange={({ target }) => void put(target.value === '' ? undefined : target.value)}>
      {(optional || at === '') && <option value="">–</option>}
      {at !== '' && !options.some(({ id }) => id === at) && <option value={at}>{at}</option>}
      {options.map(({ id, name }) => <option key={id} value={id}>{name}</option>)}
    </select>
  );
}

function AsJson({ says, value, put }: Pick<FieldProps, 'value' | 'put'> & { readonly says: string }) {
  const typed = (text: string) => {
    if (text === '') return put(undefined);
    try {
      return put(JSON.parse(text));
    } catch {
      return Promise.resolve(false);
    }
  };
  return <Typed says={says} text={value === undefined ? '' : JSON.stringify(value)} commit={typed} />;
}
