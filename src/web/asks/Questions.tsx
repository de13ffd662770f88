import { memo, useState } from 'react';
import type { Discipline } from '../../check/answer.ts';
import { LoadLine, printUse } from '../marks/LoadLine.tsx';
import { Mark, Word } from '../marks/Mark.tsx';
import { usePage } from '../state/page.ts';
import { useSaid } from '../state/preferences.ts';
import { useRoute } from '../state/route.ts';
import { openWorking } from '../working/openWorking.ts';
import type { FindingGroup, QuestionGroup } from './grouping.ts';

/** The questions of one discipline. */
export function Questions({ discipline, questions }: { readonly discipline: Discipline; readonly questions: readonly QuestionGroup[] }) {
  const amiss = questions.filter(({ worst }) => worst.verdict !== 'good' && worst.verdict !== 'pending').length;
  return (
    <section className="discipline" aria-label={discipline}>
      <h2>
        <span>{discipline}</span> <small>{amiss === 0 ? 'nothing amiss' : `${amiss} of ${questions.length} to look at`}</small>
      </h2>
      {questions.map((group) => (
        <QuestionRow key={group.question} group={group} />
      ))}
    </section>
  );
}

const QuestionRow = memo(function QuestionRow({ group }: { readonly group: QuestionGroup }) {
  const said = useSaid();
  const { worst, answers, findings, asks } = group;
  const chosen = useRoute().answer;
  const moved = usePage((state) => state.moved);
  const [open, setOpen] = useState(false);
  const good = answers.filter(({ verdict }) => verdict === 'good').length;
  const quiet = worst.verdict === 'good' || worst.verdict === 'pending';
  const mine = answers.some(({ key }) => key === chosen);
  return (
    <div className="question" data-chosen={mine} data-moved={answers.some(({ key }) => moved.has(key))}>
      <div className="row">
        <Mark verdict={worst.verdict} />
        <button type="button" className="asks-what" data-row aria-pressed={mine} onClick={() => openWorking(worst.key)}>
          <span className="asked">{asks}{quiet && <> <Word verdict={worst.verdict} /></>}</span>
          {!quiet && <span className="said"><Word verdict={worst.verdict} /> {said(worst.says)}</span>}
        </button>
        <Use use={worst.use} verdict={worst.verdict} />
        {answers.length > 1 ? (
          <button type="button" className="more" aria-expanded={open} aria-label={`${good}/${answers.length} good; ${open ? 'fold' : 'show all'}: ${asks}`} onClick={() => setOpen(!open)}>
            <span className="figure">{good}/{answers.length}</span>
          </button>
        ) : <span />}
      </div>
      {open && <Findings findings={findings} chosen={chosen} />}
    </div>
  );
});

function Use({ use, verdict }: { readonly use: number | undefined; readonly verdict: FindingGroup['first']['verdict'] }) {
  return (
    <>
      <LoadLine use={use} verdict={verdict} />
      <span className="figure use">{use === undefined ? '' : printUse(use)}</span>
    </>
  );
}

const AT_FIRST = 40;

function Findings({ findings, chosen }: { readonly findings: readonly FindingGroup[]; readonly chosen: string | undefined }) {
  const said = useSaid();
  const [all, setAll] = useState(false);
  const shown = all ? findings : findings.slice(0, AT_FIRST);
  return (
    <div className="findings">
      {shown.map(({ first, all: same }) => (
        <div className="row" key={first.key} data-chosen={same.some(({ key }) => key === chosen)}>
          <Mark verdict={first.verdict} />
          <button type="button" className="asks-what" data-row aria-pressed={first.key === chosen} onClick={() => openWorking(first.key)}>
            <span className="said"><Word verdict={first.verdict} /> {said(first.says)}</span>
            <span className="about">{first.about.join(' · ')}{same.length > 1 ? ` and ${same.length - 1} more` : ''}</span>
          </button>
          <Use use={first.use} verdict={first.verdict} />
          <span />
        </div>
      ))}
      {shown.length < findings.length && <button type="button" className="plain" onClick={() => setAll(true)}>Show {findings.length - shown.length} more</button>}
    </div>
  );
}
