import { useEffect, useState } from 'react';
import { pickFile } from '../state/files.ts';
import { type KeptShoot, dropKept, keptShoots } from '../state/keeping.ts';
import { openDemo, openKept } from '../state/starting.ts';
import { usePage } from '../state/page.ts';
import { NewShoot } from './NewShoot.tsx';

/** The first thing seen: three ways to begin. */
export function Welcome() {
  const [asking, setAsking] = useState(false);
  const busy = usePage((state) => state.busy);
  if (asking) return <NewShoot leave={() => setAsking(false)} />;
  return (
    <main className="welcome">
      <h1>Setworthy</h1>
      <p className="lead">Turns a shelf of gear into a camera that works on the day: does it cover, can everyone see, does the motor turn the lens, is it powered till wrap, does it hold.</p>
      <div className="ways">
        <button type="button" className="strong" disabled={busy} onClick={() => setAsking(true)}>Begin a shoot<small>five minutes of questions, then first answers</small></button>
        <button type="button" disabled={busy} onClick={pickFile}>Open a file<small>a *.shoot.json; dropping it on the page works too</small></button>
        <button type="button" disabled={busy} onClick={() => void openDemo()}>See the demo<small>two days by the water, every part invented</small></button>
      </div>
      <KeptList />
    </main>
  );
}

function KeptList() {
  const [kept, setKept] = useState<readonly KeptShoot[]>([]);
  useEffect(() => void keptShoots().then(setKept, () => undefined), []);
  if (kept.length === 0) return null;
  return (
    <section aria-label="Kept in this browser">
      <h2>Kept in this browser</h2>
      <ul>
        {kept.map((one) => (
          <li key={one.id}>
            <button type="button" className="plain" onClick={() => void openKept(one)}>{one.title}</button>
            <small className="figure">{new Date(one.savedAt).toLocaleString()}</small>
            <button type="button" className="plain" onClick={() => void dropKept(one.id).then(() => setKept(kept.filter(({ id }) => id !== one.id)))} aria-label={`Forget ${one.title}`}>Forget</button>
          </li>
        ))}
      </ul>
    </section>
  );
}
