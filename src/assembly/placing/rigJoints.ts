import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Joint, Setting } from '../../shoot/schema/build.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { type MateFault, type SettingKey, mateFault } from '../mates.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { stackSeats } from './stackSeats.ts';

/** One end of a joint: the piece and its point. */
export interface JointEnd {
  /** `build/piece`. */
  readonly ref: string;
  readonly piece: SetupPiece;
  /** Key of the point in the part. */
  readonly pointId: string;
  readonly point: Point;
}

/** A joint of a setup, with both ends looked up. */
export interface RigJoint {
  /** Where it stands in the file; for a seat that is taken for granted, the place in the stack. */
  readonly path: string;
  readonly build: string;
  readonly a: JointEnd;
  readonly b: JointEnd;
  readonly settings: Readonly<Partial<Record<SettingKey, Setting | undefined>>>;
  /** Two gears that turn each other, not a fixing. */
  readonly mesh: boolean;
  readonly torqueNm: number | undefined;
  /** Why the two points do not mate, where they do not. It is placed all the same, so that one sees where. */
  readonly fault: string | undefined;
  /** The same, with what would help. */
  readonly mateFault: MateFault | undefined;
  /** Not in the file: one piece of the glass sits on the one behind it. */
  readonly implied: boolean;
}

/** A joint of the file that does not arise with this glass: there is no such piece, or its piece has no such point. */
export interface DanglingJoint {
  readonly path: string;
  /** The end that is not there, as the file writes it. */
  readonly end: string;
  /** The piece whose part lacks the point; `undefined` where the piece itself is not there. */
  readonly lacking: SetupPiece | undefined;
  /** The piece at the other end. */
  readonly other: SetupPiece | undefined;
  readonly mesh: boolean;
}

export interface RigJoints {
  readonly joints: readonly RigJoint[];
  readonly dangling: readonly DanglingJoint[];
}

/** All joints of a setup with one of its glasses, by path, so that the order of the file is nothing. */
export function rigJoints(ledger: Ledger, setup: string, glass: string): RigJoints {
  return ledger.cell(`joints|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    const joints: RigJoint[] = [];
    const dangling: DanglingJoint[] = [];
    for (const { build, root } of homesOf(ledger, setup, glass)) {
      for (const id of ledger.keys(`${root}/joints`)) {
        const path = `${root}/joints/${id}`;
        const joint = ledger.at(path) as Joint;
        const [a, b] = [endOf(pieces, build, joint.a), endOf(pieces, build, joint.b)];
        if (isWhole(a) && isWhole(b)) joints.push(rigJoint({ path, build, a, b, joint }));
        else dangling.push({ path, end: isWhole(a) ? joint.b : joint.a, lacking: isWhole(a) ? b.piece : a.piece, other: isWhole(a) ? a.piece : b.piece, mesh: joint.mesh ?? false });
      }
    }
    const all = [...joints, ...stackSeats(ledger, setup, glass, joints)];
    return { joints: all.toSorted((one, other) => (one.path < other.path ? -1 : 1)), dangling };
  });
}

function rigJoint({ path, build, a, b, joint }: { path: string; build: string; a: JointEnd; b: JointEnd; joint: Joint }): RigJoint {
  const fault = mateFault(a.point, b.point);
  return { path, build, a, b, settings: joint.settings ?? {}, mesh: joint.mesh ?? false, torqueNm: joint.torqueNm, fault: fault?.says, mateFault: fault, implied: false };
}

interface Home {
  readonly build: string;
  readonly root: string;
}

/** Where a setup's pieces, joints and lines stand in the file: camera build, glass, live stations. */
function homesOf(ledger: Ledger, setup: string, glass: string): readonly Home[] {
  const camera = ledger.at(`setups/${setup}/camera`) as string;
  const stations = (ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[];
  return [{ build: camera, root: `builds/${camera}` }, { build: camera, root: `glasses/${glass}` }, ...stations.map((build) => ({ build, root: `builds/${build}` }))];
}

type Looked = JointEnd | { readonly piece: SetupPiece | undefined; readonly point?: undefined };
const isWhole = (end: Looked): end is JointEnd => end.point !== undefined;

function endOf(pieces: ReadonlyMap<string, SetupPiece>, build: string, end: string): Looked {
  const [pointId = '', pieceId = '', other] = end.split('/').toReversed();
  const piece = pieces.get(`${other ?? build}/${pieceId}`);
  const point = piece?.part.read(`points/${pointId}`) as Point | undefined;
  return piece === undefined || point === undefined ? { piece } : { ref: piece.ref, piece, pointId, point };
}
