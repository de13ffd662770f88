import { useEffect, useState } from 'react';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import type { View } from '../../jobs/views/View.ts';
import { usePage, useShoot } from './page.ts';
import { useRoute } from './route.ts';

export interface Looking {
  readonly setup: string;
  readonly glass: string;
}

/** The setup and glass looked at: those of the address, else of the answer chosen, else the first. */
export function useLooking(): Looking | undefined {
  const shoot = useShoot();
  const { setup, glass, answer } = useRoute();
  const subject = usePage(({ answers }) => (answer === undefined ? undefined : answers.get(answer)?.subject));
  const chosen = setup === undefined ? { setup: subject?.setup, glass: subject?.glass } : { setup, glass };
  return existing(shoot, chosen);
}

function existing(shoot: Shoot, { setup, glass }: { setup?: string | undefined; glass?: string | undefined }): Looking | undefined {
  const id = setup !== undefined && shoot.setups[setup] !== undefined ? setup : Object.keys(shoot.setups)[0];
  const glasses = id === undefined ? undefined : shoot.setups[id]?.glasses;
  const chosen = glass !== undefined && glasses?.includes(glass) === true ? glass : glasses?.[0];
  return id === undefined || chosen === undefined ? undefined : { setup: id, glass: chosen };
}

/** A view of the shoot as the worker sees it, looked at again after every edit; the last one stays until the next is here. */
export function useView<T>(look: () => Promise<View<T>>, deps: readonly unknown[]): View<T> | undefined {
  const revision = usePage((state) => state.revision);
  const [view, setView] = useState<View<T> | undefined>();
  useEffect(() => {
    let wanted = true;
    look().then(
      (found) => wanted && setView(found),
      (thrown: unknown) => wanted && setView({ ok: false, says: thrown instanceof Error ? thrown.message : String(thrown) }),
    );
    return () => {
      wanted = false;
    };
    // `look` is made anew each time it is drawn; what it depends on is in `deps`.
  }, [revision, ...deps]);
  return view;
}
