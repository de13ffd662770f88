import { legsOf } from '../../assembly/lines/picture.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Judgement } from '../answer.ts';
import { cannotJudge } from '../judge.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ViewerSubject } from '../subjects.ts';
import { socketName } from './lineWords.ts';
import { whyDark } from './pictureLoss.ts';
import { seenBy } from './seenBy.ts';

/**
 * Why nothing can be said of what a viewer sees: no screen, or no picture on it. `undefined` where there is one, or where only what
 * the camera sends is not entered: what rests on the screen alone can then still be judged.
 */
export function unseen(ledger: Ledger, subject: ViewerSubject): Judgement | undefined {
  const seen = seenBy(ledger, subject);
  if (seen === undefined) return withoutScreen(ledger, subject);
  const { leg, name, screen } = seen;
  if (leg === undefined) return screen.part.has('body') ? undefined : cannotJudge(`No picture reaches ${name}: ${screen.name} has no input for one.`);
  if (leg.dark === undefined || leg.dark.kind === 'not entered') return undefined;
  return cannotJudge(`No picture reaches ${name} on ${screen.name}.`, whyDark(ledger, subject, screen));
}

/** The same for what rests on the picture itself, which must then be entered. */
export function unseenPicture(ledger: Ledger, subject: ViewerSubject): Judgement | undefined {
  const leg = seenBy(ledger, subject)?.leg;
  if (leg?.dark?.kind === 'not entered') {
    const port = legsOf(leg)[0]?.port;
    throw new NotEntered(leg.dark.missing.map(({ part, path }) => ({ path: `${part.path}/${path}`, says: `what the ${port === undefined ? part.name : socketName(port)} sends` })));
  }
  return unseen(ledger, subject);
}

function withoutScreen(ledger: Ledger, { setup, glass, viewer }: ViewerSubject): Judgement {
  const who = ledger.at(`needs/viewers/${viewer}/who`) as string;
  const name = (ledger.at(`crew/${who}/name`) ?? ledger.at(`crew/${who}/role`) ?? who) as string;
  const piece = setupPieces(ledger, setup, glass).get(ledger.at(`needs/viewers/${viewer}/screen`) as string);
  return cannotJudge(piece === undefined ? `No picture reaches ${name}: the screen stands in a build that this setup does not use.` : `No picture reaches ${name}: ${piece.name} is no screen.`);
}
