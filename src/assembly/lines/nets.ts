import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type SetupPiece, pieceSetting } from '../setupPieces.ts';
import { wiring } from './wiring.ts';

/** Radios of one kind that share a net. */
export interface Net {
  readonly name: string;
  readonly carries: 'video' | 'control';
  readonly transmitters: readonly SetupPiece[];
  readonly receivers: readonly SetupPiece[];
}

/** The nets of a setup; a radio without a net is on none. */
export function nets(ledger: Ledger, setup: string, glass: string): readonly Net[] {
  return ledger.cell(`nets|${setup}|${glass}`, () => {
    const found = new Map<string, { name: string; carries: 'video' | 'control'; transmitters: SetupPiece[]; receivers: SetupPiece[] }>();
    for (const piece of wiring(ledger, setup, glass).pieces.values()) {
      const radio = piece.part.facet('radio');
      const name = radio === undefined ? undefined : pieceSetting(piece, 'net');
      if (radio === undefined || name === undefined) continue;
      const key = `${radio.carries} ${name}`;
      const net = found.get(key) ?? { name, carries: radio.carries, transmitters: [], receivers: [] };
      found.set(key, net);
      if (radio.role !== 'receives') net.transmitters.push(piece);
      if (radio.role !== 'transmits') net.receivers.push(piece);
    }
    return [...found.values()];
  });
}

/** The mode a radio runs in: as it is set, or its only one. */
export function radioMode(piece: SetupPiece): string | undefined {
  const set = pieceSetting(piece, 'mode');
  if (set !== undefined) return set;
  const modes = Object.keys(piece.part.facet('radio')?.modes ?? {});
  return modes.length === 1 ? modes[0] : undefined;
}
