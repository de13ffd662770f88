import { barrelLength, isBarrel, seatsOf, shapeOf } from '../../assembly/coarseShape.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';

/** Throws `NotEntered` where a barrel of the glass has no length, so that neither it nor what sits ahead of it has a place in space. */
export function lengthsMustBeThere(ledger: Ledger, { setup, glass }: SetupGlass): void {
  const { stack } = opticalPath(ledger, setup, glass);
  const foremost = stack.at(-1);
  const vague = stack.filter((piece) => isBarrel(piece.part) && barrelLength(piece.part) === undefined && (shapeOf(piece.part).solids.length === 0 || (piece !== foremost && seatsOf(piece.part).front === undefined)));
  if (vague.length > 0) throw new NotEntered(vague.map(({ part }) => describeFigure(part, 'lengthMm')));
}
