import { type Port, type Remote, callerOf } from '../../jobs/protocol.ts';
import type { ShootDesk } from '../../jobs/ShootDesk.ts';

/** The worker that owns the shoot, as the page sees it. Started once. */
export const desk: Remote<ShootDesk> = callerOf<ShootDesk>(new Worker(new URL('./desk.worker.ts', import.meta.url), { type: 'module', name: 'shoot' }) as Port);
