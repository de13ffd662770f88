import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';

/** The piece of a glass whose ring is turned to focus: the focuser in front where there is one. */
export function focusRing({ ledger }: Asking, { setup, glass }: SetupGlass): SetupPiece {
  const { focusedBy } = opticalPath(ledger, setup, glass);
  if (focusedBy === undefined) throw new NotEntered([{ path: `glasses/${glass}/stack`, says: 'the piece of the glass that focuses' }]);
  return focusedBy;
}

/** Teeth of the gear on the ring. */
export function ringTeeth({ part, name }: SetupPiece): number {
  const teeth = part.read('focus/gear/teeth') as number | undefined;
  if (teeth === undefined) throw new NotEntered([{ path: `${part.path}/focus/gear/teeth`, says: `the teeth of the focus gear on ${name}` }]);
  return teeth;
}
