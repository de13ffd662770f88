import { type SetupPiece, pieceSetting, setupPieces } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { NotEntered } from '../NotEntered.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { focusRing } from './focusRing.ts';

/** What turns the focus ring: a motor, or the wheel of a follow focus on rods. */
export interface RingTurner {
  readonly kind: 'motor' | 'wheel';
  readonly piece: SetupPiece;
  /** Teeth of the gear it meshes with. */
  readonly teeth: number;
  /** How it is known. */
  readonly says: string;
}

/**
 * The motor or wheel whose gear is joined to the ring by a mesh; where no joint says so, the only motor of the camera, else its
 * only geared wheel. `undefined`: a hand on the ring itself.
 */
export function ringTurner(asking: Asking, subject: SetupGlass): RingTurner | undefined {
  const { ledger } = asking;
  return ledger.cell(`ring turner|${subject.setup}|${subject.glass}`, () => {
    const ring = focusRing(asking, subject);
    const camera = ledger.at(`setups/${subject.setup}/camera`) as string;
    const pieces = setupPieces(ledger, subject.setup, subject.glass);
    const meshed = meshesOf(ledger, camera, subject.glass)
      .filter((ends) => ends.includes(ring.ref))
      .flatMap((ends) => pieces.get(ends.find((ref) => ref !== ring.ref) ?? '') ?? [])
      .find((piece) => kindOf(piece) !== undefined);
    if (meshed !== undefined) return turner(meshed, `${meshed.name} meshes with ${ring.name}`);
    const own = [...pieces.values()].filter(({ build }) => build === camera);
    const motors = own.filter((piece) => kindOf(piece) === 'motor');
    if (motors.length > 1) {
      throw new NotEntered([{ path: `builds/${camera}/joints`, says: `which motor turns ${ring.name}: a joint that meshes its gear with the ring` }]);
    }
    const only = motors[0] ?? own.find((piece) => kindOf(piece) === 'wheel');
    return only === undefined ? undefined : turner(only, `${only.name} is the only ${kindOf(only) ?? ''} of the build, so it is taken to turn ${ring.name}`);
  });
}

/** Glasses that something other than a hand on the ring focuses; where it cannot be told yet, the question says what is missing. */
export function isTurned(asking: Asking, subject: SetupGlass): boolean {
  try {
    return ringTurner(asking, subject) !== undefined;
  } catch (thrown) {
    if (thrown instanceof NotEntered) return true;
    throw thrown;
  }
}

function kindOf({ part }: SetupPiece): RingTurner['kind'] | undefined {
  if (part.has('motor')) return 'motor';
  return part.read('handWheel/gear/teeth') === undefined ? undefined : 'wheel';
}

function turner(piece: SetupPiece, says: string): RingTurner {
  const kind = kindOf(piece) ?? 'motor';
  const fitted = pieceSetting(piece, 'gearTeeth');
  return { kind, piece, teeth: fitted ?? (piece.part.read(kind === 'motor' ? 'motor/gear/teeth' : 'handWheel/gear/teeth') as number), says };
}

/** Pairs of pieces whose gears turn each other, in the camera's build and its glass, by `build/piece`. */
function meshesOf(ledger: Ledger, camera: string, glass: string): (readonly [string, string])[] {
  return [`builds/${camera}`, `glasses/${glass}`].flatMap((root) =>
    ledger.keys(`${root}/joints`).flatMap((id) => {
      const joint = `${root}/joints/${id}`;
      if (ledger.at(`${joint}/mesh`) !== true) return [];
      return [[pieceAt(ledger.at(`${joint}/a`) as string, camera), pieceAt(ledger.at(`${joint}/b`) as string, camera)] as const];
    }),
  );
}

/** The piece an end names: `piece/point`, or with its build first. */
export function pieceAt(end: string, build: string): string {
  const parts = end.split('/');
  return parts.length === 3 ? `${parts[0]}/${parts[1]}` : `${build}/${parts[0]}`;
}
