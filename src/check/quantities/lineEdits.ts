import { freeKey } from '../../shoot/edit/freeKey.ts';
import type { WiredLine, WiredPort } from '../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';

/** Puts one end of a line into another socket. */
export function movedTo(line: WiredLine, side: 'from' | 'to', port: WiredPort): Edit {
  const end = (side === 'from') === line.turned ? 'to' : 'from';
  const other = side === 'from' ? line.to : line.from;
  const says = side === 'from' ? `${port.piece.name}, ${port.name} to ${other.piece.name}` : `${other.piece.name} to ${port.piece.name}, ${port.name}`;
  return { says, patches: [{ op: 'replace', path: `${line.path}/${end}`, value: endIn(homeOf(line), port) }] };
}

/** A new line between two sockets, in the build of the socket it feeds. */
export function newLine(name: string, from: WiredPort, to: WiredPort, hasLines: boolean, cable?: string): Edit {
  const { build } = to.piece;
  const line = { from: endIn(build, from), to: endIn(build, to), ...(cable === undefined ? {} : { cable }) };
  const patch = hasLines ? { op: 'add' as const, path: `builds/${build}/lines/${name}`, value: line } : { op: 'add' as const, path: `builds/${build}/lines`, value: { [name]: line } };
  return { says: `${from.piece.name} to ${to.piece.name}`, patches: [patch] };
}

/** Sets something on a piece: mode, channel, squeeze, zoom. */
export const setOn = (piece: SetupPiece, key: 'mode' | 'net' | 'channel' | 'squeeze' | 'zoom', value: string | number, says: string): Edit => ({ says, patches: [{ op: 'add', path: `${piece.path}/${key}`, value }] });

/** A socket as a line of a build writes it. */
export const endIn = (build: string, { piece, id, key }: WiredPort): string => (piece.build === build ? `${piece.id}/${id}` : key);

/** A name that no piece and no line of a build has. */
export const freeName = (ledger: Ledger, build: string, base: string): string => freeKey(base, [...ledger.keys(`builds/${build}/pieces`), ...ledger.keys(`builds/${build}/lines`)]);

const homeOf = ({ key }: WiredLine): string => key.slice(0, key.indexOf('/'));
