import { useEffect, useRef, useState } from 'react';
import { type Port, callerOf } from '../../jobs/protocol.ts';
import type { Simulated } from '../../jobs/simulatePull.ts';
import type { View } from '../../jobs/views/View.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { page, usePage } from '../state/page.ts';

export interface Simulation {
  /** What came of it; nothing before it has run, or once the shoot has changed since. */
  readonly found: View<Simulated> | undefined;
  /** Share done while it runs. */
  readonly share: number | undefined;
  readonly start: () => void;
  readonly stop: () => void;
}

/** Simulates a shot in a worker of its own, which is simply ended to stop it. */
export function useSimulation(shot: string): Simulation {
  const revision = usePage((state) => state.revision);
  const [found, setFound] = useState<{ readonly at: number; readonly view: View<Simulated> } | undefined>();
  const [share, setShare] = useState<number | undefined>();
  const worker = useRef<Worker | undefined>(undefined);
  const stop = () => {
    worker.current?.terminate();
    worker.current = undefined;
    setShare(undefined);
  };
  useEffect(() => () => worker.current?.terminate(), []);
  const start = () => {
    stop();
    const { shoot, revision: at } = page.get();
    if (shoot === undefined) return;
    const mine = new Worker(new URL('../worker/study.worker.ts', import.meta.url), { type: 'module', name: 'pull' });
    worker.current = mine;
    setShare(0);
    const remote = callerOf<{ pull: (shoot: Shoot, shot: string) => View<Simulated> }>(mine as Port, (news) => setShare(news as number));
    const settle = (view: View<Simulated>): void => {
      if (worker.current !== mine) return;
      stop();
      setFound({ at, view });
    };
    void remote.pull(shoot, shot).then(settle);
  };
  return { found: found?.at === revision ? found.view : undefined, share, start, stop };
}
