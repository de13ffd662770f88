import { useState } from 'react';
import type { ForcesView } from '../../jobs/views/forcesView.ts';
import type { View } from '../../jobs/views/View.ts';
import { type Looking, useView } from '../state/looking.ts';
import { desk } from '../worker/desk.ts';

/** What the joints carry under the load chosen, while it is wanted. */
export function useForces(looking: Looking, wanted: boolean): { readonly view: ForcesView | undefined; readonly choose: (load: string) => void } {
  const [load, choose] = useState('upright');
  const view = useView<ForcesView | undefined>(() => (wanted ? desk.forcesView(looking, load) : NOTHING), [looking.setup, looking.glass, load, wanted]);
  return { view: wanted && view?.ok === true ? view.value : undefined, choose };
}

const NOTHING: Promise<View<undefined>> = Promise.resolve({ ok: true, value: undefined });
