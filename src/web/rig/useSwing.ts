import { useEffect, useRef, useState } from 'react';
import { type Port, callerOf } from '../../jobs/protocol.ts';
import type { SwingView } from '../../jobs/views/swingView.ts';
import type { View } from '../../jobs/views/View.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import type { Looking } from '../state/looking.ts';
import { page, usePage } from '../state/page.ts';

export interface SwingStudy {
  /** How the rig swings; nothing before that is worked out, or once the shoot has changed since. */
  readonly found: View<SwingView> | undefined;
  readonly busy: boolean;
  readonly start: () => void;
  readonly stop: () => void;
}

/** How the camera swings with a lens on, worked out in a worker of its own when it is first wanted; after an edit only when asked for again. */
export function useSwing({ setup, glass }: Looking, wanted: boolean): SwingStudy {
  const revision = usePage((state) => state.revision);
  const [found, setFound] = useState<{ readonly at: number; readonly of: string; readonly view: View<SwingView> } | undefined>();
  const [busy, setBusy] = useState(false);
  const worker = useRef<Worker | undefined>(undefined);
  const of = `${setup}|${glass}`;
  const stop = () => {
    worker.current?.terminate();
    worker.current = undefined;
    setBusy(false);
  };
  const start = () => {
    stop();
    const { shoot, revision: at } = page.get();
    if (shoot === undefined) return;
    const mine = new Worker(new URL('../worker/study.worker.ts', import.meta.url), { type: 'module', name: 'swing' });
    worker.current = mine;
    setBusy(true);
    const settle = (view: View<SwingView>): void => {
      if (worker.current !== mine) return;
      stop();
      setFound({ at, of, view });
    };
    mine.addEventListener('error', () => settle({ ok: false, says: 'The part that works this out has stopped. Try once more.' }));
    const remote = callerOf<{ swing: (shoot: Shoot, subject: Looking) => View<SwingView> }>(mine as Port);
    remote.swing(shoot, { setup, glass }).then(settle, (thrown: unknown) => settle({ ok: false, says: thrown instanceof Error ? thrown.message : String(thrown) }));
  };
  useEffect(() => {
    if (!wanted) return undefined;
    start();
    return stop;
    // Edits do not start it again: `start` is made anew each time, and takes the shoot as it then is.
  }, [wanted, of]);
  return { found: found?.at === revision && found.of === of ? found.view : undefined, busy, start, stop };
}
