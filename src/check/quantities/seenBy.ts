import type { Leg } from '../../assembly/lines/picture.ts';
import { videoTrace } from '../../assembly/lines/videoTrace.ts';
import { type SetupPiece, pieceSetting } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Needs } from '../../shoot/schema/day.ts';
import type { ViewerSubject } from '../subjects.ts';

export type Job = NonNullable<Needs['viewers']>[string]['job'];

/** A viewer, the screen they look at, and the picture's way to it. */
export interface Seen {
  readonly path: string;
  readonly job: Job;
  readonly name: string;
  readonly screen: SetupPiece;
  /** The way to the screen, whether a picture arrives or not. `undefined` where the screen has no picture input. */
  readonly leg: Leg | undefined;
}

/** `undefined` where the screen is not in this setup, or the piece is no screen. */
export function seenBy(ledger: Ledger, { setup, glass, viewer }: ViewerSubject): Seen | undefined {
  return ledger.cell(`seen|${setup}|${glass}|${viewer}`, () => {
    const path = `needs/viewers/${viewer}`;
    const trace = videoTrace(ledger, setup, glass);
    const ref = ledger.at(`${path}/screen`) as string;
    const screen = trace.wiring.pieces.get(ref);
    if (screen === undefined || !screen.part.has('screen')) return undefined;
    const who = ledger.at(`${path}/who`) as string;
    const name = (ledger.at(`crew/${who}/name`) ?? ledger.at(`crew/${who}/role`) ?? who) as string;
    return { path, job: ledger.at(`${path}/job`) as Job, name, screen, leg: trace.into.get(ref) };
  });
}

/** What a job does, after "too late to". */
export const JOB_VERB: Readonly<Record<Job, string>> = { operate: 'operate', 'pull focus': 'pull focus', direct: 'direct', script: 'keep script', light: 'light', client: 'follow' };

/** The squeeze that the picture is widened by on its way to the viewer's eye. */
export function widenedBy({ screen, leg }: Seen, squeeze: number): number {
  const own = pieceSetting(screen, 'squeeze') ?? 1;
  return own * squeeze ** (leg?.desqueezedBy.length ?? 0);
}
