import { useDeferredValue, useMemo, useState } from 'react';
import { countVerdicts } from '../../check/ranking.ts';
import type { Verdict } from '../../check/answer.ts';
import { Mark } from '../marks/Mark.tsx';
import { usePage, useShoot } from '../state/page.ts';
import { Filters } from './Filters.tsx';
import { Questions } from './Questions.tsx';
import { Study } from './Study.tsx';
import { Waiting } from './Waiting.tsx';
import { byDiscipline, waitingFor } from './grouping.ts';
import { WIDE, isNarrow, narrowed } from './narrowing.ts';
import { walkRows } from './walkRows.ts';

const ORDER: readonly Verdict[] = ['fails', 'unknown', 'tight', 'good', 'pending'];

/** What the day asks: every question, worst first. */
export function Asks() {
  const answers = usePage((state) => state.answers);
  const shoot = useShoot();
  const [narrowing, setNarrowing] = useState(WIDE);
  const settled = useDeferredValue(narrowing);
  const shown = useMemo(() => narrowed(shoot, answers.values(), settled), [shoot, answers, settled]);
  const groups = useMemo(() => byDiscipline(shown), [shown]);
  const waits = useMemo(() => waitingFor(shown), [shown]);
  const counts = useMemo(() => countVerdicts(narrowed(shoot, answers.values(), { ...settled, verdicts: WIDE.verdicts })), [shoot, answers, settled]);
  const toggle = (verdict: Verdict) => {
    const verdicts = new Set(narrowing.verdicts);
    if (!verdicts.delete(verdict)) verdicts.add(verdict);
    setNarrowing({ ...narrowing, verdicts });
  };
  return (
    <section className="asks" aria-label="What the day asks" onKeyDown={walkRows}>
      <div className="tally" role="group" aria-label="Show only">
        {ORDER.filter((verdict) => counts[verdict] > 0 || narrowing.verdicts.has(verdict)).map((verdict) => (
          <button key={verdict} type="button" aria-pressed={narrowing.verdicts.has(verdict)} onClick={() => toggle(verdict)}>
            <Mark verdict={verdict} />
            <b className="figure">{counts[verdict]}</b> {verdict}
          </button>
        ))}
      </div>
      <Filters narrowing={narrowing} narrow={setNarrowing} />
      <Study />
      <div className="scale" aria-hidden="true"><span /><span className="ends"><i>0</i><i>1</i><i>2</i></span><span>use</span></div>
      {groups.map(({ discipline, questions }) => (
        <Questions key={discipline} discipline={discipline} questions={questions} />
      ))}
      {groups.length === 0 && waits.length === 0 && <Nothing narrow={isNarrow(narrowing)} widen={() => setNarrowing(WIDE)} />}
      <Waiting answers={waits} />
    </section>
  );
}

function Nothing({ narrow, widen }: { readonly narrow: boolean; readonly widen: () => void }) {
  if (!narrow) return <p className="empty">Nothing is asked yet. Add a body, a lens and a setup under kit and shoot; the questions follow from them.</p>;
  return (
    <p className="empty">
      No answer fits this search. <button type="button" className="plain" onClick={widen}>Show all</button>
    </p>
  );
}
