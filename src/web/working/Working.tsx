import { useMemo } from 'react';
import type { Answer, Side } from '../../check/answer.ts';
import type { Doubt } from '../../check/doubt.ts';
import { worstFirst } from '../../check/ranking.ts';
import { printAmount } from '../../units/print.ts';
import type { Working as Found } from '../../jobs/answers.ts';
import { LoadLine, printUse } from '../marks/LoadLine.tsx';
import { Mark, Word } from '../marks/Mark.tsx';
import { usePage } from '../state/page.ts';
import { useSaid, useSystem } from '../state/preferences.ts';
import { useRoute } from '../state/route.ts';
import { startStudy } from '../state/studying.ts';
import { CurvePlot } from './CurvePlot.tsx';
import { FigureRow } from './FigureRow.tsx';
import { Mends } from './Mends.tsx';
import { MissingRow } from './MissingRow.tsx';
import { openWorking } from './openWorking.ts';
import { useDoubt, useWorking } from './useWorking.ts';

/** Why an answer is what it is: numbers, steps, figures, cures, sources. */
export function Working() {
  const key = useRoute().answer;
  const working = useWorking(key);
  return (
    <section className="working" aria-label="Working">
      {key === undefined && <p className="empty">Choose a question to see its numbers, where they come from, and what would mend it.</p>}
      {working === 'gone' && <p className="empty">This question no longer arises. Choose another.</p>}
      {working !== undefined && working !== 'gone' && <Found working={working} />}
    </section>
  );
}

function Found({ working }: { readonly working: Found }) {
  const { answer, explains, kind, rests } = working;
  const doubt = useDoubt(working);
  const said = useSaid();
  return (
    <>
      <Neighbours answer={answer} />
      <header>
        <p className="verdict-line"><Mark verdict={answer.verdict} /> <Word verdict={answer.verdict} /><span className="about">{answer.about.join(' · ')}</span></p>
        <h2>{answer.asks}</h2>
        <p className="finding">{said(answer.says)}</p>
      </header>
      {answer.use !== undefined && <BigLoad answer={answer} use={answer.use} doubt={doubt} />}
      <Sum answer={answer} />
      {answer.verdict === 'pending' && <button type="button" onClick={() => void startStudy([answer.key])}>Study this one</button>}
      {(answer.missing ?? []).map((missing) => <MissingRow key={missing.path} missing={missing} />)}
      <Mends mends={answer.mends ?? []} />
      {answer.curve !== undefined && <CurvePlot curve={answer.curve} />}
      {(answer.notes ?? []).map((note) => <p className="note" key={note}>{said(note)}</p>)}
      {rests.length > 0 && (
        <section className="rests" aria-label="It rests on">
          <h3>It rests on</h3>
          {rests.map((figure) => <FigureRow key={figure.path} figure={figure} turnsAt={doubt?.by.find((one) => one.figure.path === figure.path)?.turnsAt} />)}
        </section>
      )}
      <details className="explains">
        <summary>How this is worked out</summary>
        <p>{explains}</p>
        <p>Source: {answer.sources.join('; ')}. {kind === 'studied' ? 'A simulation; it runs when asked to.' : ''}</p>
      </details>
    </>
  );
}

/** The answers to the same question, one before and one after. */
function Neighbours({ answer }: { readonly answer: Answer }) {
  const answers = usePage((state) => state.answers);
  const same = useMemo(() => [...answers.values()].filter(({ question }) => question === answer.question).toSorted(worstFirst), [answers, answer.question]);
  const at = same.findIndex(({ key }) => key === answer.key);
  if (same.length < 2) return null;
  const step = (by: number) => same[(at + by + same.length) % same.length]?.key ?? answer.key;
  return (
    <nav className="neighbours" aria-label="Answers to this question">
      <button type="button" onClick={() => openWorking(step(-1))} aria-label="Answer before">←</button>
      <span className="figure">{at + 1} of {same.length}</span>
      <button type="button" onClick={() => openWorking(step(1))} aria-label="Next answer">→</button>
    </nav>
  );
}

function BigLoad({ answer, use, doubt }: { readonly answer: Answer; readonly use: number; readonly doubt: Doubt | undefined }) {
  const whole = doubt !== undefined && doubt.low < doubt.high ? doubt : undefined;
  return (
    <div className="big-load">
      <LoadLine use={use} verdict={answer.verdict} bounds={whole} />
      <p><span>0</span><span>1</span><span>2</span></p>
      <b className="figure">{printUse(use)} <small>use{whole === undefined ? '' : `; ${printUse(whole.low)} to ${printUse(whole.high)} within the doubt of its figures${sureOf(whole, use)}`}</small></b>
    </div>
  );
}

const sureOf = ({ low, high }: Doubt, use: number): string => (low > 1 && use > 1 ? ': fails whatever' : high <= 1 && use <= 1 ? ': holds whatever' : '');

function Sum({ answer }: { readonly answer: Answer }) {
  const system = useSystem();
  const said = useSaid();
  const side = (label: string, one: Side | undefined) =>
    one === undefined ? null : (
      <tr className="side"><th scope="row">{label}</th><td className="figure">{printAmount(one.amount, system)}</td><td>{said(one.from)}</td></tr>
    );
  if (answer.needs === undefined && answer.has === undefined && (answer.steps ?? []).length === 0) return null;
  return (
    <table className="sum">
      <tbody>
        {side(answer.needs?.word ?? 'needs', answer.needs)}
        {side(answer.has?.word ?? 'has', answer.has)}
        {(answer.steps ?? []).map(({ says, amount }) => (
          <tr key={says}>
            <th scope="row"><span className="hidden">step</span></th>
            <td className="figure">{amount === undefined ? '' : printAmount(amount, system)}</td>
            <td>{said(says)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
