import { useEffect, useRef, useState } from 'react';
import type { PapersMade, PapersProgress, PapersWanted } from '../../jobs/makePapers.ts';
import { type Port, type Remote, callerOf } from '../../jobs/protocol.ts';
import { page } from '../state/page.ts';
import type { PapersDesk } from '../worker/papers.worker.ts';

type Kinds = Awaited<ReturnType<Remote<PapersDesk>['kinds']>>;

export interface PapersJob {
  readonly kinds: Kinds;
  readonly progress: PapersProgress | undefined;
  readonly made: PapersMade | undefined;
  readonly make: (wanted: PapersWanted) => void;
  readonly stop: () => void;
}

/** Makes papers in a worker of their own, which is simply ended to stop it. */
export function usePapers(): PapersJob {
  const [kinds, setKinds] = useState<Kinds>([]);
  const [progress, setProgress] = useState<PapersProgress | undefined>();
  const [made, setMade] = useState<PapersMade | undefined>();
  const worker = useRef<{ readonly thread: Worker; readonly remote: Remote<PapersDesk> } | undefined>(undefined);
  const start = () => {
    const thread = new Worker(new URL('../worker/papers.worker.ts', import.meta.url), { type: 'module', name: 'papers' });
    const remote = callerOf<PapersDesk>(thread as Port, (news) => setProgress(news as PapersProgress));
    worker.current = { thread, remote };
    return remote;
  };
  const stop = () => {
    worker.current?.thread.terminate();
    worker.current = undefined;
    setProgress(undefined);
  };
  useEffect(() => {
    void start().kinds().then(setKinds);
    return () => worker.current?.thread.terminate();
  }, []);
  const make = (wanted: PapersWanted) => {
    const { shoot } = page.get();
    if (shoot === undefined) return;
    setMade(undefined);
    setProgress({ done: 0, of: 1, says: 'Reading the fonts' });
    const settle = (found: PapersMade): void => {
      setMade(found);
      setProgress(undefined);
    };
    const broke = (thrown: unknown): void => {
      setProgress(undefined);
      page.set({ notice: { says: `The papers could not be made: ${thrown instanceof Error ? thrown.message : String(thrown)}`, kind: 'wrong' } });
    };
    void (worker.current?.remote ?? start()).make(shoot, wanted).then(settle, broke);
  };
  return { kinds, progress, made, make, stop };
}
