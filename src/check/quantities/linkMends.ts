import { nets, radioMode } from '../../assembly/lines/nets.ts';
import type { Dark } from '../../assembly/lines/picture.ts';
import { type SetupPiece, pieceSetting } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { wiring } from '../../assembly/lines/wiring.ts';
import type { Mend } from '../answer.ts';
import type { SetupGlass } from '../subjects.ts';
import { setOn } from './lineEdits.ts';
import { modeEdit } from './modeEdit.ts';

/** What is to be set where the air brings nothing: the net, or one mode that both ends know. */
export function linkMends(ledger: Ledger, whole: SetupGlass, dark: Dark, frameRateHz: number | undefined): Mend[] {
  switch (dark.kind) {
    case 'no net': case 'no transmitter': return netMends(ledger, whole, dark.piece);
    case 'set to another mode': return [receiverTo(dark.receiver, dark.transmitter, dark.mode)];
    case 'no mode set': return modeMends(ledger, whole, dark.piece, () => true);
    case 'mode unknown to the receiver': return modeMends(ledger, whole, dark.transmitter, () => true);
    case 'too many frames': return modeMends(ledger, whole, dark.transmitter, (mostHz) => mostHz >= (frameRateHz ?? Infinity));
    default: return [];
  }
}

function receiverTo(receiver: SetupPiece, transmitter: SetupPiece, mode: string): Mend {
  const name = nameOf(transmitter, mode);
  return { says: `set ${receiver.name} to ${name}`, edit: setOn(receiver, 'mode', mode, `${receiver.name} to ${name}`) };
}

const nameOf = (transmitter: SetupPiece, mode: string): string => (transmitter.part.read(`radio/modes/${mode}/name`) ?? mode) as string;

/** A receiver goes on the net of a transmitter; a transmitter without one comes on the receiver's. */
function netMends(ledger: Ledger, { setup, glass }: SetupGlass, receiver: SetupPiece): Mend[] {
  const transmitters = [...wiring(ledger, setup, glass).pieces.values()].filter((piece) => {
    const radio = piece.part.facet('radio');
    return radio?.carries === 'video' && radio.role !== 'receives' && piece.ref !== receiver.ref;
  });
  const mine = pieceSetting(receiver, 'net');
  return transmitters.flatMap((transmitter): Mend[] => {
    const net = pieceSetting(transmitter, 'net');
    const says = `put ${receiver.name} and ${transmitter.name} on one net`;
    if (net !== undefined) return [{ says, edit: setOn(receiver, 'net', net, says) }];
    return mine === undefined ? [] : [{ says, edit: setOn(transmitter, 'net', mine, says) }];
  }).slice(0, 2);
}

/** The transmitter's other modes that every receiver on its net knows. */
function modeMends(ledger: Ledger, { setup, glass }: SetupGlass, transmitter: SetupPiece, serves: (mostHz: number) => boolean): Mend[] {
  const receivers = nets(ledger, setup, glass).filter((net) => net.transmitters.includes(transmitter)).flatMap((net) => net.receivers);
  const now = radioMode(transmitter);
  return Object.keys(transmitter.part.facet('radio')?.modes ?? {})
    .filter((mode) => mode !== now && receivers.every(({ part }) => part.read(`radio/modes/${mode}`) !== undefined) && serves(transmitter.part.figure(`radio/modes/${mode}/maxFrameRateHz`)?.value ?? Infinity))
    .map((mode) => ({ says: `the mode ${nameOf(transmitter, mode)} on ${transmitter.name} and its receivers`, edit: modeEdit(ledger, transmitter, mode, nameOf(transmitter, mode)) })).slice(0, 2);
}
