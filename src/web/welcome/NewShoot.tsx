import { useEffect, useState } from 'react';
import type { FormRow, Typed } from '../../jobs/newShootForm.ts';
import { beginFrom } from '../state/actions.ts';
import { usePage } from '../state/page.ts';
import { goTo } from '../state/route.ts';
import { desk } from '../worker/desk.ts';

/** The five-minute questions, all on one page; each has a usual answer, and later ones follow from earlier ones. */
export function NewShoot({ leave }: { readonly leave: () => void }) {
  const [typed, setTyped] = useState<Typed>({});
  const [rows, setRows] = useState<readonly FormRow[]>([]);
  const faults = usePage((state) => state.notice?.faults) ?? [];
  useEffect(() => void desk.newShootForm(typed).then(setRows), [typed]);
  const begin = async () => {
    if (await beginFrom(Object.fromEntries(rows.map(({ key, answer }) => [key, answer])))) goTo({ view: 'asks' });
  };
  return (
    <main className="welcome new-shoot">
      <h1>Begin a shoot</h1>
      <p className="lead">Every question has a usual answer; change what you know. The parts are typical classes, their figures estimates: the answers will say what to measure first.</p>
      <form onSubmit={(event) => { event.preventDefault(); void begin(); }}>
        {rows.map(({ key, asks, kind, answer, choices }) => (
          <label key={key} className="question-line">
            <span>{asks}</span>
            {kind === 'class' ? (
              <select value={answer} onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}>
                {choices?.map(({ id, name }) => <option key={id} value={id}>{name}</option>)}
              </select>
            ) : (
              <input type="text" inputMode={kind === 'number' ? 'decimal' : 'text'} value={typed[key] ?? answer} aria-invalid={faults.some(({ path }) => path === key)} onChange={({ target }) => setTyped({ ...typed, [key]: target.value })} />
            )}
          </label>
        ))}
        <div className="ways">
          <button type="submit" className="strong">Begin</button>
          <button type="button" onClick={leave}>Back</button>
        </div>
      </form>
    </main>
  );
}
