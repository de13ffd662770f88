import { NoSetup, SetupBar } from '../marks/SetupBar.tsx';
import { type Looking, useLooking, useView } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';
import { Changes } from './Changes.tsx';
import { Days } from './Days.tsx';
import { Moves } from './Moves.tsx';

/** Swaps: what each lens change takes and moves, and the days' shots in the order with least work. */
export function SwapsView() {
  const looking = useLooking();
  return looking === undefined ? <NoSetup /> : <Drawn looking={looking} />;
}

function Drawn({ looking }: { readonly looking: Looking }) {
  const system = useSystem();
  const view = useView(() => desk.swapsView(looking.setup, system), [looking.setup, system]);
  return (
    <section className="swaps-view" aria-label="Swaps">
      <SetupBar looking={looking} />
      <Changes key={looking.setup} setup={looking.setup} />
      {view !== undefined && !view.ok && <p className="empty">{view.says}</p>}
      {view?.ok === true && <Moves swaps={view.value} glass={looking.glass} setup={looking.setup} />}
      <Days />
    </section>
  );
}
