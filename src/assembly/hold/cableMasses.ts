import { assume } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { balance } from '../../standards/assumptions/balance.ts';
import { type WiredLine, type WiredPort, wiring } from '../lines/wiring.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { type Vector, apply } from '../placing/Transform.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { pieceMasses } from './pieceMasses.ts';

/** What one end of a cable hangs on a piece of a build. */
export interface CableEnd {
  /** Key of the line: both ends of a cable within the build have the same. */
  readonly line: string;
  readonly name: string;
  readonly piece: SetupPiece;
  readonly massG: number;
  readonly lowG: number;
  readonly highG: number;
  /** Where it hangs, in the frame of the build: at the port, else in the middle of its piece; `undefined` where that has no place. */
  readonly atMm: Vector | undefined;
}

export interface BuildCables {
  readonly weighed: readonly CableEnd[];
  /** Cables whose mass is not entered, and lines that have no cable yet, by one of their ends. */
  readonly unweighed: readonly { readonly line: string; readonly name: string | undefined; readonly piece: SetupPiece }[];
}

/**
 * The cables plugged into one build of a setup: each of them hangs with half its mass on either plug, so that its centre is between
 * them. Of one that leads to another build only what hangs down from the plug counts, at most half.
 */
export function cableMasses(ledger: Ledger, setup: string, glass: string, build: string): BuildCables {
  return ledger.cell(`cable masses|${setup}|${glass}|${build}`, () => {
    const weighed: CableEnd[] = [];
    const unweighed: BuildCables['unweighed'][number][] = [];
    for (const line of wiring(ledger, setup, glass).lines) {
      if (line.shared || line.direct === true) continue;
      const own = [line.from, line.to].filter(({ piece }) => piece.build === build);
      const mass = line.cable?.figure('massG');
      for (const port of own) {
        if (mass === undefined) unweighed.push({ line: line.key, name: line.cable?.name, piece: port.piece });
        else {
          const share = own.length === 2 ? 0.5 : hangingShare(ledger, line);
          const [massG, lowG, highG] = [mass.value * share, mass.low * share, mass.high * share];
          weighed.push({ line: line.key, name: line.cable?.name ?? '', piece: port.piece, massG, lowG, highG, atMm: plugAt(ledger, setup, glass, port) });
        }
      }
    }
    return { weighed, unweighed };
  });
}

/** Of a cable to another build: down to the floor, or half of it where it is short. */
function hangingShare(ledger: Ledger, { cable }: WiredLine): number {
  const length = cable?.figure('cable/lengthMm');
  return length === undefined || length.value <= 0 ? 0.5 : Math.min(0.5, assume(ledger, balance.cableHangsMm).value / length.value);
}

function plugAt(ledger: Ledger, setup: string, glass: string, { piece, port }: WiredPort): Vector | undefined {
  const place = placeSetup(ledger, setup, glass).places.get(piece.ref);
  if (place === undefined) return undefined;
  if (port.at !== undefined) return apply(place, port.at);
  const middle = pieceMasses(ledger, setup, glass, piece.build).weighed.find((one) => one.piece.ref === piece.ref)?.centreMm;
  return (middle as Vector | undefined) ?? place.t;
}
