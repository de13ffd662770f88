import { useMemo } from 'react';
import type { AnswerLine } from '../../jobs/answers.ts';
import { openWorking } from '../working/openWorking.ts';
import { Mark } from '../marks/Mark.tsx';

/** What is not entered yet, folded away: it blocks no verdict, it only leaves some open. */
export function Waiting({ answers }: { readonly answers: readonly AnswerLine[] }) {
  const figures = useMemo(() => new Set(answers.flatMap(({ waitsFor = [] }) => waitsFor)).size, [answers]);
  if (answers.length === 0) return null;
  return (
    <details className="waiting">
      <summary>
        <span className="figure">{answers.length}</span> {answers.length === 1 ? 'question waits' : 'questions wait'} for <span className="figure">{figures}</span> {figures === 1 ? 'figure' : 'figures'} not entered yet
      </summary>
      {answers.map((answer) => (
        <div className="row" key={answer.key}>
          <Mark verdict="unknown" />
          <button type="button" className="asks-what" data-row onClick={() => openWorking(answer.key)}>
            <span className="asked">{answer.asks}</span>
            <span className="about">{answer.about.join(' · ')}</span>
          </button>
        </div>
      ))}
    </details>
  );
}
