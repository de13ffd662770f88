import { type Port, type Remote, callerOf } from '../../jobs/protocol.ts';
import type { ShootDesk } from '../../jobs/ShootDesk.ts';
import { page } from '../state/page.ts';

const worker = new Worker(new URL('./desk.worker.ts', import.meta.url), { type: 'module', name: 'shoot' });

worker.addEventListener('error', (event) => {
  const { phase } = page.get();
  page.set({ phase: phase === 'starting' ? 'nothing open' : phase, busy: false, notice: { says: `The part that works out the answers has stopped${event.message === '' ? '' : ` (${event.message})`}. Load the page again; what was saved is there.`, kind: 'wrong' } });
});

/** The worker that owns the shoot, as the page sees it. Started once. */
export const desk: Remote<ShootDesk> = callerOf<ShootDesk>(worker as Port);
