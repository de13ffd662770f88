import { useMemo } from 'react';
import { enter, redo, undo } from './state/actions.ts';
import { downloadShoot, pickFile } from './state/files.ts';
import { type Kept, page, usePage, useShoot } from './state/page.ts';
import { preferences, usePreferences } from './state/preferences.ts';
import { openDemo } from './state/starting.ts';
import { servesFile } from './state/server.ts';
import { saveNow } from './state/saving.ts';
import { Typed } from './forms/Typed.tsx';

const SAID: Readonly<Record<Kept, string>> = { kept: 'saved', keeping: 'saving', 'not kept': 'not saved', 'changed outside': 'changed outside' };

/** Title, undo and redo, where it is saved, units and ground. */
export function Header() {
  const shoot = useShoot();
  const { undo: back, redo: forward } = usePage((state) => state.history);
  const kept = usePage((state) => state.kept);
  const file = usePage((state) => state.file);
  const { system, ground } = usePreferences();
  const menu = useMemo(() => <Menu />, []);
  return (
    <header className="top">
      <span className="wordmark">Setworthy</span>
      <Typed says="Title of the shoot" quiet text={shoot.title} commit={(title) => enter('Title changed', 'title', title)} />
      <span className="kept" data-kept={kept} role="status" title={file ?? 'in this browser'}>{SAID[kept]}</span>
      <span className="gap" />
      <span className="pair">
        <button type="button" disabled={back === undefined} title={back === undefined ? 'Nothing to undo' : `Undo: ${back}`} onClick={() => void undo()}>Undo</button>
        <button type="button" disabled={forward === undefined} title={forward === undefined ? 'Nothing to redo' : `Redo: ${forward}`} onClick={() => void redo()}>Redo</button>
      </span>
      <button type="button" className="wide-only" title="Metric or imperial" onClick={() => preferences.set({ system: system === 'metric' ? 'imperial' : 'metric' })}>{system === 'metric' ? 'mm' : 'in'}<span className="hidden"> units; switch to {system === 'metric' ? 'imperial' : 'metric'}</span></button>
      <button type="button" className="wide-only" onClick={() => preferences.set({ ground: ground === 'day' ? 'night' : 'day' })}>{ground === 'day' ? 'Night' : 'Day'}</button>
      {menu}
    </header>
  );
}

function Menu() {
  const { system, ground } = usePreferences();
  const close = (run: () => unknown) => (event: { currentTarget: HTMLElement }) => {
    event.currentTarget.closest('details')?.removeAttribute('open');
    run();
  };
  return (
    <details className="menu" onKeyDown={(event) => { if (event.key === 'Escape') event.currentTarget.removeAttribute('open'); }} onBlur={(event) => { if (!event.currentTarget.contains(event.relatedTarget)) event.currentTarget.removeAttribute('open'); }}>
      <summary>Menu</summary>
      <div>
        <button type="button" onClick={close(() => void downloadShoot())}>Save to a file</button>
        {!servesFile && <button type="button" onClick={close(pickFile)}>Open a file</button>}
        {!servesFile && <button type="button" onClick={close(() => page.set({ phase: 'nothing open' }))}>Another shoot</button>}
        {!servesFile && <button type="button" onClick={close(() => void openDemo(true))}>The demo, afresh</button>}
        <button type="button" onClick={close(() => print())}>Print</button>
        <button type="button" className="narrow-only" onClick={close(() => preferences.set({ system: system === 'metric' ? 'imperial' : 'metric' }))}>{system === 'metric' ? 'Imperial' : 'Metric'} units</button>
        <button type="button" className="narrow-only" onClick={close(() => preferences.set({ ground: ground === 'day' ? 'night' : 'day' }))}>{ground === 'day' ? 'Night' : 'Day'} ground</button>
      </div>
    </details>
  );
}

/** The file was changed by another program while changes of one's own were waiting: nothing is overwritten unasked. */
export function ChangedOutside() {
  const kept = usePage((state) => state.kept);
  if (kept !== 'changed outside') return null;
  return (
    <div className="notice wrong" role="alert">
      <p>The file was changed outside while you worked. Nothing has been overwritten.</p>
      <button type="button" onClick={() => void saveNow(true)}>Save mine over it</button>
      <button type="button" onClick={() => void downloadShoot()}>Save mine beside it</button>
      <button type="button" onClick={() => { page.set({ kept: 'kept' }); location.reload(); }}>Take the file’s</button>
    </div>
  );
}
