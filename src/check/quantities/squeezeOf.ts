import { type OpticalPath, opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';

/** How much a glass squeezes the picture, as its parts are named: 2 for a 2× block on a spherical lens. */
export interface Squeeze {
  readonly value: number;
  /** The figures it is the product of. */
  readonly figures: readonly Figure[];
  /** The piece that squeezes, where one does. */
  readonly by: SetupPiece | undefined;
}

/** Nominal squeeze of a glass: that of the lens times that of a block in front of it. */
export function squeezeOf(asking: Asking, { setup, glass }: SetupGlass): Squeeze {
  return asking.ledger.cell(`squeeze|${setup}|${glass}`, () => {
    const path = opticalPath(asking.ledger, setup, glass);
    const lens = lensOf(path, glass);
    const ofLens = asking.figure(lens.part, 'lens/squeeze');
    if (path.block === undefined) return { value: ofLens.value, figures: [ofLens], by: ofLens.value === 1 ? undefined : lens };
    const ofBlock = asking.figure(path.block.part, 'block/squeeze');
    return { value: ofLens.value * ofBlock.value, figures: [ofLens, ofBlock], by: path.block };
  });
}

/** The lens of a glass; without one, nothing optical can be said. */
export function lensOf({ lens }: Pick<OpticalPath, 'lens'>, glass: string): SetupPiece {
  if (lens === undefined) throw new NotEntered([{ path: `glasses/${glass}/stack`, says: 'the lens of the glass' }]);
  return lens;
}
