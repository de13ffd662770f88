import { Suspense, lazy, useSyncExternalStore } from 'react';
import { Asks } from './asks/Asks.tsx';
import { ChangedOutside, Header } from './Header.tsx';
import { Notice, Spoken } from './Notice.tsx';
import { usePage } from './state/page.ts';
import { preferences, usePreferences } from './state/preferences.ts';
import { type View, VIEWS, addressOf, useRoute } from './state/route.ts';
import { Welcome } from './welcome/Welcome.tsx';
import { Working } from './working/Working.tsx';
import { WORKING_BESIDE } from './working/openWorking.ts';

const Kit = lazy(() => import('./kit/Kit.tsx').then(({ Kit: component }) => ({ default: component })));
const FrameView = lazy(() => import('./frame/FrameView.tsx').then(({ FrameView: component }) => ({ default: component })));
const LinesView = lazy(() => import('./lines/LinesView.tsx').then(({ LinesView: component }) => ({ default: component })));
const PullView = lazy(() => import('./pull/PullView.tsx').then(({ PullView: component }) => ({ default: component })));
const RigView = lazy(() => import('./rig/RigView.tsx').then(({ RigView: component }) => ({ default: component })));
const SwapsView = lazy(() => import('./swaps/SwapsView.tsx').then(({ SwapsView: component }) => ({ default: component })));
const PapersView = lazy(() => import('./papers/PapersView.tsx').then(({ PapersView: component }) => ({ default: component })));
const ShootTables = lazy(() => import('./shoot/ShootTables.tsx').then(({ ShootTables: component }) => ({ default: component })));

export function App() {
  const phase = usePage((state) => state.phase);
  return (
    <>
      {phase === 'open' ? <Table /> : phase === 'starting' ? <main className="starting"><p>Opening</p></main> : <Welcome />}
      <Notice />
      <Spoken />
    </>
  );
}

/** The prep table: what the day asks, what is looked at, and why. */
function Table() {
  const wide = useMatches(WORKING_BESIDE);
  const twoColumns = useMatches('(min-width: 700px)');
  const { view, answer } = useRoute();
  const { workingOpen, asksOpen } = usePreferences();
  const centre: View = wide && (view === 'asks' || view === 'working') ? 'rig' : twoColumns && view === 'asks' ? 'working' : view;
  const showWorking = wide && workingOpen && answer !== undefined;
  const showAsks = wide ? asksOpen : twoColumns || view === 'asks';
  return (
    <div className="table" data-asks={showAsks} data-working={showWorking} data-view={centre}>
      <Header />
      <ChangedOutside />
      <Views centre={centre} twoColumns={twoColumns} wide={wide} />
      {showAsks && <aside className="left"><Asks /></aside>}
      {(twoColumns || view !== 'asks') && <main className="centre"><Suspense fallback={<p className="empty">Opening</p>}><Centre view={centre} /></Suspense></main>}
      {showWorking && <aside className="right"><button type="button" className="plain close" onClick={() => preferences.set({ workingOpen: false })}>Close</button><Working /></aside>}
    </div>
  );
}

function Centre({ view }: { readonly view: View }) {
  switch (view) {
    case 'working': return <Working />;
    case 'frame': return <FrameView />;
    case 'lines': return <LinesView />;
    case 'papers': return <PapersView />;
    case 'swaps': return <SwapsView />;
    case 'pulls': return <PullView />;
    case 'kit': return <Kit />;
    case 'shoot': return <ShootTables />;
    default: return <RigView />;
  }
}

function Views({ centre, twoColumns, wide }: { readonly centre: View; readonly twoColumns: boolean; readonly wide: boolean }) {
  const { asksOpen, workingOpen } = usePreferences();
  const shown = VIEWS.filter((view) => (view === 'asks' ? !twoColumns : view === 'working' ? !wide : true));
  return (
    <nav className="views" aria-label="Views">
      {wide && <button type="button" aria-pressed={asksOpen} onClick={() => preferences.set({ asksOpen: !asksOpen })}>asks</button>}
      {shown.map((view) => <a key={view} href={addressOf({ view })} aria-current={view === centre ? 'page' : undefined}>{view}</a>)}
      {wide && <button type="button" aria-pressed={workingOpen} onClick={() => preferences.set({ workingOpen: !workingOpen })}>working</button>}
    </nav>
  );
}

function useMatches(query: string): boolean {
  return useSyncExternalStore(
    (watcher) => {
      const list = matchMedia(query);
      list.addEventListener('change', watcher);
      return () => list.removeEventListener('change', watcher);
    },
    () => matchMedia(query).matches,
  );
}
