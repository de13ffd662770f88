import { volumeOf } from '../../assembly/hold/pieceMasses.ts';
import { type Vector, add, scale } from '../../assembly/placing/Transform.ts';
import { worldSolids } from '../../assembly/space/worldSolids.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupGlass } from '../subjects.ts';
import type { WholeMass } from './wholeMass.ts';

/** How far the common centre of mass goes as focus runs from infinity to close: what extends, and what it carries. A piece's mass spreads evenly over its solids. */
export function focusShift(ledger: Ledger, { setup, glass }: SetupGlass, whole: WholeMass): Vector {
  const solids = worldSolids(ledger, setup, glass);
  return whole.pieces.reduce<Vector>((sum, { piece, massG }) => {
    const own = solids.filter((solid) => solid.piece.ref === piece.ref);
    if (own.every(({ travelMm }) => travelMm === 0)) return sum;
    const volume = own.reduce((all, { solid }) => all + volumeOf(solid), 0);
    const mean = own.reduce<Vector>((all, { solid, travel }) => add(all, scale(travel, volume > 0 ? volumeOf(solid) / volume : 1 / own.length)), [0, 0, 0]);
    return add(sum, scale(mean, massG / whole.massG));
  }, [0, 0, 0]);
}
