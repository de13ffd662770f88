import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { seatsOf } from '../coarseShape.ts';
import { opticalPath } from '../opticalPath.ts';
import type { SetupPiece } from '../setupPieces.ts';
import type { RigJoint } from './rigJoints.ts';
import { unit } from './Transform.ts';

/**
 * Seats that go without saying: a piece of the glass that no joint fixes sits on the one behind it, in the order of the stack, the first
 * on the body; a pane of filter stands in the first stage of the box that holds one.
 */
export function stackSeats(ledger: Ledger, setup: string, glass: string, stated: readonly RigJoint[]): RigJoint[] {
  const { body, stack } = opticalPath(ledger, setup, glass);
  const seats: RigJoint[] = [];
  let behind = body;
  stack.forEach((piece, at) => {
    const pane = piece.part.has('filter') && piece.part.figure('filter/widthMm') !== undefined;
    const seat = behind === undefined || carriesItself(piece, stated) ? undefined : (pane ? paneSeat : barrelSeat)(behind, piece);
    if (seat !== undefined && behind !== undefined) {
      const path = `glasses/${glass}/stack/${at}`;
      const [a, b] = [{ ref: behind.ref, piece: behind, pointId: '', point: seat[0] }, { ref: piece.ref, piece, pointId: '', point: seat[1] }];
      seats.push({ path, build: piece.build, a, b, settings: {}, mesh: false, torqueNm: undefined, fault: undefined, mateFault: undefined, implied: true });
    }
    if (!pane) behind = piece;
  });
  return seats;
}

/** A piece whose own joints say where it sits, or that goes on rods. What only carries others ahead of it, or is touched, still needs its seat. */
function carriesItself(piece: SetupPiece, stated: readonly RigJoint[]): boolean {
  if (piece.part.read('matteBox/fit') === 'rods') return true;
  return stated.some(({ a, b, mesh }) => !mesh && ((a.ref === piece.ref && holds(a.point)) || (b.ref === piece.ref && holds(b.point))));
}

const holds = ({ kind, out }: Point): boolean => kind !== 'surface' && kind !== 'hand' && !((kind === 'front' || kind === 'lens mount') && unit(out ?? [0, 0, 0], [0, 0, 0])[2] > 0.5);

function barrelSeat(behind: SetupPiece, piece: SetupPiece): readonly [Point, Point] | undefined {
  const [{ front }, { rear }] = [seatsOf(behind.part), seatsOf(piece.part)];
  return front === undefined || rear === undefined ? undefined : [front, rear];
}

function paneSeat(behind: SetupPiece, piece: SetupPiece): readonly [Point, Point] | undefined {
  const { part } = behind;
  const stages = part.ledger.keys(`${part.path}/matteBox/openings`).map((id) => `matteBox/openings/${id}`);
  const stage = stages.find((path) => ['filter', 'turning filter'].includes(part.read(`${path}/holds`) as string));
  const ahead = stage === undefined ? undefined : part.figure(`${stage}/aheadOfFrontMm`)?.value;
  const rear = seatsOf(part).rear?.at;
  if (ahead === undefined || rear === undefined || !piece.part.has('filter')) return undefined;
  return [seat([rear[0], rear[1], rear[2] + ahead], 1), seat([0, 0, 0], -1)];
}

const seat = (at: readonly [number, number, number], way: 1 | -1): Point => ({ kind: 'front', at: [...at], out: [0, 0, way], up: [0, 1, 0] });
