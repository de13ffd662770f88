import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';

/** Sets a transmitter to a mode, and with it every piece of any build on its net that states one: a net has one mode. */
export function modeEdit(ledger: Ledger, transmitter: SetupPiece, mode: string, name: string): Edit {
  const net = ledger.at(`${transmitter.path}/net`);
  const others = net === undefined ? [] : ledger.keys('builds').flatMap((build) => ledger.keys(`builds/${build}/pieces`).map((piece) => `builds/${build}/pieces/${piece}`));
  const onNet = others.filter((path) => path !== transmitter.path && ledger.at(`${path}/net`) === net && ledger.at(`${path}/mode`) !== undefined);
  return { says: `${transmitter.name} to ${name}`, patches: [transmitter.path, ...onNet].map((path) => ({ op: 'add', path: `${path}/mode`, value: mode })) };
}
