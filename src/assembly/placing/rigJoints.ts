import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Joint, Setting } from '../../shoot/schema/build.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { mateFault } from './mates.ts';

/** One end of a joint: the piece and its point. */
export interface JointEnd {
  /** `build/piece`. */
  readonly ref: string;
  readonly piece: SetupPiece;
  /** Name of the point in the part. */
  readonly pointId: string;
  readonly point: Point;
}

/** A joint of a setup, with both ends looked up. */
export interface RigJoint {
  /** Where it stands in the file. */
  readonly path: string;
  readonly build: string;
  readonly a: JointEnd;
  readonly b: JointEnd;
  readonly settings: Readonly<Partial<Record<string, Setting>>>;
  readonly mesh: boolean;
  readonly torqueNm: number | undefined;
  /** Why the two points do not mate, where they do not. */
  readonly fault: string | undefined;
}

/** A joint that names a piece which this setup does not have. */
export interface DanglingJoint {
  readonly path: string;
  readonly end: string;
}

export interface RigJoints {
  readonly joints: readonly RigJoint[];
  readonly dangling: readonly DanglingJoint[];
}

/** All joints of a setup with one of its glasses, in an order that does not hang on the order of the file. */
export function rigJoints(ledger: Ledger, setup: string, glass: string): RigJoints {
  return ledger.cell(`joints|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    const stations = (ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[];
    const roots = [[camera, `builds/${camera}`], [camera, `glasses/${glass}`], ...stations.map((id) => [id, `builds/${id}`])] as const;
    const joints: RigJoint[] = [];
    const dangling: DanglingJoint[] = [];
    for (const [build, root] of roots) {
      for (const id of ledger.keys(`${root}/joints`)) {
        const path = `${root}/joints/${id}`;
        const joint = ledger.at(path) as Joint;
        const [a, b] = [endOf(pieces, build, joint.a), endOf(pieces, build, joint.b)];
        if (a === undefined || b === undefined) dangling.push({ path, end: a === undefined ? joint.a : joint.b });
        else joints.push({ path, build, a, b, settings: joint.settings ?? {}, mesh: joint.mesh ?? false, torqueNm: joint.torqueNm, fault: mateFault(a.point, b.point) });
      }
    }
    return { joints: joints.toSorted((one, other) => (one.path < other.path ? -1 : 1)), dangling };
  });
}

function endOf(pieces: ReadonlyMap<string, SetupPiece>, build: string, end: string): JointEnd | undefined {
  const [pointId = '', pieceId = '', other] = end.split('/').toReversed();
  const piece = pieces.get(`${other ?? build}/${pieceId}`);
  const point = piece?.part.read(`points/${pointId}`) as Point | undefined;
  return piece === undefined || point === undefined ? undefined : { ref: piece.ref, piece, pointId, point };
}
