import { doneWords } from '../../check/quantities/changeWords.ts';
import type { ChangeStep } from '../../check/quantities/changeStep.ts';
import { printAmount } from '../../units/print.ts';
import { useView } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';

/** One lens change: what opens, comes off, goes on and moves, with what and how long. */
export function ChangeSteps({ setup, from, to }: { readonly setup: string; readonly from: string; readonly to: string }) {
  const system = useSystem();
  const view = useView(() => desk.changeView(setup, from, to), [setup, from, to]);
  if (view === undefined) return null;
  if (!view.ok) return <p className="empty">{view.says}</p>;
  const { fromName, toName, minutes, low, high, steps, finishes } = view.value;
  return (
    <section className="change" aria-label="The change, step by step" aria-live="polite">
      <h3>{fromName} → {toName} <small>about {print(minutes)}{finishes ? '' : ', cannot be finished as built'}</small></h3>
      <ol>
        {steps.map((step, at) => (
          // Steps may repeat word for word; their order is what they are.
          <li key={`${at} of ${steps.length}`}>
            <span>{doneWords(step, system)}</span>
            <small>{toolWords(step)}</small>
            <span className="figure">{step.minutes === 0 ? '' : print(step.minutes)}</span>
          </li>
        ))}
      </ol>
      <p className="about">Minutes are estimates: {print(low)} to {print(high)} in all. Fingers, hair and cables clear when the motor calibrates; two hands on front glass.</p>
    </section>
  );
}

const print = (minutes: number): string => printAmount({ value: Math.round(minutes * 10) / 10, unit: 'min' });

const toolWords = ({ tool }: ChangeStep): string => (tool === undefined ? '' : tool === 'hand' ? 'by hand' : tool);
