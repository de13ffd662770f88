import { wiring } from '../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupGlass } from '../subjects.ts';

/** Pieces of a setup that send by radio. */
export const sendersOf = (ledger: Ledger, { setup, glass }: SetupGlass): readonly SetupPiece[] =>
  ledger.cell(`senders|${setup}|${glass}`, () => [...wiring(ledger, setup, glass).pieces.values()].filter(({ part }) => part.has('radio') && part.read('radio/role') !== 'receives'));

export const RADIO_CAUTION = 'Do not transmit outside the local rules; agree frequencies with sound; transmitters off on aircraft.';
