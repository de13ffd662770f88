import { usePage } from '../state/page.ts';
import { startStudy, stopStudy } from '../state/studying.ts';

/** Simulations wait until somebody wants them; they run aside and can be stopped. */
export function Study() {
  const waiting = usePage(({ answers }) => [...answers.values()].filter(({ verdict }) => verdict === 'pending').length);
  const studying = usePage((state) => state.studying);
  if (studying !== undefined) {
    return (
      <div className="study" role="status">
        <progress value={studying.done} max={studying.of} aria-label="Studied so far" />
        <span className="figure">{studying.done} of {studying.of} studied</span>
        <button type="button" onClick={stopStudy}>Stop</button>
      </div>
    );
  }
  if (waiting === 0) return null;
  return (
    <div className="study">
      <span><span className="figure">{waiting}</span> {waiting === 1 ? 'answer waits' : 'answers wait'} for a simulation.</span>
      <button type="button" onClick={() => void startStudy()}>Study {waiting === 1 ? 'it' : 'them'}</button>
    </div>
  );
}
