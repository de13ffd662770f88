import { toldOnce } from '../faults/toldOnce.ts';
import { hush } from './state/actions.ts';
import { usePage } from './state/page.ts';

const MOST = 12;

/** What the page has to say just now: a fault with its place and cure, or that something went well. */
export function Notice() {
  const notice = usePage((state) => state.notice);
  if (notice === undefined) return null;
  const { says, kind, faults = [] } = notice;
  const told = toldOnce(faults);
  return (
    <div className={`notice ${kind}`} role={kind === 'wrong' ? 'alert' : 'status'}>
      <p>{says}</p>
      {told.length > 0 && (
        <ul>
          {told.slice(0, MOST).map((text) => <li key={text}>{text}</li>)}
          {told.length > MOST && <li>and {told.length - MOST} more</li>}
        </ul>
      )}
      <button type="button" className="plain" onClick={hush}>Close</button>
    </div>
  );
}

/** Tells a screen reader what an edit moved. */
export function Spoken() {
  const moved = usePage((state) => state.moved);
  const answers = usePage((state) => state.answers);
  const failing = [...moved].filter((key) => answers.get(key)?.verdict === 'fails').length;
  return <p className="hidden" role="status">{moved.size === 0 ? '' : `${moved.size} ${moved.size === 1 ? 'answer' : 'answers'} changed; ${failing} of them ${failing === 1 ? 'fails' : 'fail'}.`}</p>;
}
