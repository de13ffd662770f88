import { type SetupPiece, pieceSetting } from '../../assembly/setupPieces.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Judgement, Missing } from '../answer.ts';
import { describeFigure } from '../describeFigure.ts';
import { listed } from './listed.ts';

/**
 * What was judged of a weight, unless it passed while some masses are not entered: what is not weighed may be the heaviest of all, so that
 * nothing has passed yet. What fails without it is too heavy whatever it weighs.
 */
export function allWeighed(judgement: Judgement, unweighed: readonly SetupPiece[]): Judgement {
  return judgement.verdict === 'fails' ? judgement : allInBalance(judgement, unweighed);
}

/** The same of a balance: without one of the masses its centre may be anywhere, so that it has neither passed nor failed. */
export function allInBalance(judgement: Judgement, unweighed: readonly SetupPiece[]): Judgement {
  const missing = massesWanted(unweighed);
  if (missing.length === 0 || judgement.verdict === 'unknown') return judgement;
  const { use: _, mends: __, ...rest } = judgement;
  return { ...rest, verdict: 'unknown', says: `Not entered yet: ${listed(missing.map(({ says }) => says))}. Without it this is too little to judge by.`, missing };
}

/** Each mass once: of a piece's own part, or of a pack on it. */
function massesWanted(unweighed: readonly SetupPiece[]): Missing[] {
  const parts = unweighed.flatMap((piece) => [piece.part, ...(pieceSetting(piece, 'packs') ?? []).map((id) => new PartView(piece.part.ledger, id))]);
  const wanted = parts.filter((part) => part.figure('massG') === undefined).map((part) => describeFigure(part, 'massG'));
  return [...new Map(wanted.map((one) => [one.path, one])).values()];
}
