import type { ReactNode } from 'react';
import type { Form } from '../../jobs/Forms.ts';
import { EntryTable } from '../forms/EntryTable.tsx';
import { Fields } from '../forms/Fields.tsx';
import { enter } from '../state/actions.ts';
import { usePage, useShoot } from '../state/page.ts';

type Entries = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

const TABLES = [
  { key: 'shots', title: 'Shots', one: 'shot', columns: ['name', 'setup', 'glass', 'day', 'tStop', 'method', 'pulledBy', 'linkDistanceM', 'diopter'], empty: 'No shots yet. Each names its setup and lens; focus and swaps are judged shot by shot.' },
  { key: 'days', title: 'Days', one: 'day', columns: ['name', 'temperatureC', 'illuminanceLux', 'workHours', 'windMps', 'flies'], empty: 'No days yet. Cold, light and hours come from here.' },
  { key: 'crew', title: 'Crew', one: 'person', columns: ['name', 'role'], empty: 'Nobody yet. Add whoever must see, pull or carry.' },
  { key: 'setups', title: 'Setups', one: 'setup', columns: ['name', 'camera', 'mode', 'frameRateHz'], empty: 'No setups yet. A setup is a camera build with its lenses and the stations that are live; it is what is checked.' },
  { key: 'builds', title: 'Builds and stations', one: 'build', columns: ['name', 'purpose', 'station'], empty: 'No builds yet.' },
  { key: 'glasses', title: 'Lenses as rigged', one: 'glass', columns: ['name'], empty: 'No glasses yet. A glass is the stack in front of the sensor: adapter, lens, block, focuser, filters.' },
] as const;

/** The shoot: what the day asks, shots, days, crew, setups. */
export function ShootTables() {
  const shoot = useShoot();
  const form = usePage((state) => state.forms)?.shoot;
  if (form === undefined) return null;
  const needs = form.fields?.['needs'];
  const viewer = needs?.fields?.['viewers']?.of;
  return (
    <section className="shoot-tables" aria-label="Shoot">
      <Part title="The shoot">
        <Fields form={only(form, ['title', 'revision', 'note'])} value={shoot} put={(keys, value) => enter(`The shoot’s ${keys[0] ?? ''}`, keys.join('/'), value)} />
      </Part>
      {needs !== undefined && (
        <Part title="What is delivered, and limits">
          <Fields form={needs} without={['viewers']} value={shoot.needs} put={(keys, value) => enter(`Needs: ${keys.at(-1) ?? ''}`, ['needs', ...keys].join('/'), value)} />
        </Part>
      )}
      {viewer !== undefined && (
        <Part title="Who must see">
          <EntryTable one="viewer" path="needs/viewers" form={viewer} entries={(shoot.needs.viewers ?? {}) as Entries} columns={['who', 'job', 'screen', 'distanceMm', 'illuminanceLux']} empty="Nobody has to see a picture yet. Sight is judged viewer by viewer." />
        </Part>
      )}
      {TABLES.map(({ key, title, one, columns, empty }) => {
        const of = form.fields?.[key]?.of;
        return of === undefined ? null : (
          <Part key={key} title={title}>
            <EntryTable one={one} path={key} form={of} entries={(shoot[key] ?? {}) as Entries} columns={columns} empty={empty} />
          </Part>
        );
      })}
    </section>
  );
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

const only = (form: Form, keys: readonly string[]): Form => ({ ...form, fields: Object.fromEntries(Object.entries(form.fields ?? {}).filter(([key]) => keys.includes(key))) });
