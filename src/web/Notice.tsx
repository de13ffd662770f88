import { faultText } from '../faults/Fault.ts';
import { hush } from './state/actions.ts';
import { usePage } from './state/page.ts';

const MOST = 12;

/** What the page has to say just now: a fault with its place and cure, or that something went well. */
export function Notice() {
  const notice = usePage((state) => state.notice);
  if (notice === undefined) return null;
  const { says, kind, faults = [] } = notice;
  return (
    <div className={`notice ${kind}`} role={kind === 'wrong' ? 'alert' : 'status'}>
      <p>{says}</p>
      {faults.length > 0 && (
        <ul>
          {faults.slice(0, MOST).map((fault) => <li key={`${fault.path}|${fault.message}`}>{faultText(fault)}</li>)}
          {faults.length > MOST && <li>and {faults.length - MOST} more</li>}
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
