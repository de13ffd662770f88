import { useEffect, useState } from 'react';
import type { CableView } from '../../jobs/views/linesView.ts';
import { printAmount } from '../../units/print.ts';
import { Mark } from '../marks/Mark.tsx';
import { enter } from '../state/actions.ts';
import type { Looking } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';

/** One line: what it carries, what is wrong with it, another cable for it. */
export function LineSheet({ looking, line, close }: { readonly looking: Looking; readonly line: CableView; readonly close: () => void }) {
  const system = useSystem();
  const [cables, setCables] = useState<readonly { id: string; name: string }[]>([]);
  useEffect(() => void desk.fittingCables(looking, line.key).then(setCables), [looking, line.key, line.faults]);
  const { path } = line;
  const name = line.cable ?? (line.air ? 'Over the air' : 'No cable chosen');
  return (
    <section className="line-sheet" aria-label={name}>
      <header><h3>{name}</h3><button type="button" className="plain" onClick={close}>Close</button></header>
      {line.faults.map((fault) => <p key={fault} className="fault"><Mark verdict="fails" /> {fault}</p>)}
      <p className="figure">{[line.carries, ...line.amounts.map((amount) => printAmount(amount, system))].filter((one) => one !== undefined).join(' · ')}</p>
      {path !== undefined && (
        <p className="line-acts">
          <select aria-label="Cable" value={line.cableId ?? ''} onChange={({ target }) => void enter('Another cable', `${path}/cable`, target.value === '' ? undefined : target.value)}>
            <option value="">no cable</option>
            {line.cableId !== undefined && !cables.some(({ id }) => id === line.cableId) && <option value={line.cableId}>{line.cable}</option>}
            {cables.map(({ id, name: one }) => <option key={id} value={id}>{one}</option>)}
          </select>
          <button type="button" onClick={() => void enter('Line taken out', path, undefined).then((done) => done && close())}>Take this line out</button>
        </p>
      )}
    </section>
  );
}
