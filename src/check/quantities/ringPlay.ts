import { opticalPath } from '../../assembly/opticalPath.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Bounded, sumOf, through } from './Bounded.ts';
import { focusRing, ringTeeth } from './focusRing.ts';
import { pieceAt, ringTurner } from './ringTurner.ts';

/** Free play between the motor, or the wheel, and the focus, in degrees of the ring. */
export interface RingPlay extends Bounded {
  readonly parts: readonly { readonly says: string; readonly atRing: Bounded; readonly assumed: boolean }[];
}

/**
 * Everything that may turn at a reversal before the glass follows: play of the motor's gear, of the ring itself, the twist each
 * seat of the glass leaves free (the ring then takes the barrel along), and play entered at the points that hold the motor.
 */
export function ringPlay(asking: Asking, subject: SetupGlass): RingPlay {
  return asking.ledger.cell(`ring play|${subject.setup}|${subject.glass}`, () => {
    const ring = focusRing(asking, subject);
    const parts = [...gearPlay(asking, subject, ring), ofRing(asking, ring), ...seatPlays(asking, subject, ring), ...holdPlays(asking, subject, ring)];
    return { ...sumOf(parts.map(({ atRing }) => atRing)), parts };
  });
}

type Part = RingPlay['parts'][number];

function gearPlay(asking: Asking, subject: SetupGlass, ring: SetupPiece): Part[] {
  const turner = ringTurner(asking, subject);
  if (turner === undefined) return [];
  const ratio = ringTeeth(ring) / turner.teeth;
  const entered = turner.piece.part.figure(turner.kind === 'motor' ? 'motor/backlashDeg' : 'handWheel/backlashDeg');
  const play = entered ?? asking.assume(focus.backlashDeg);
  return [{ says: `gear of ${turner.piece.name}`, atRing: through(play, (deg) => deg / ratio), assumed: entered === undefined }];
}

function ofRing(asking: Asking, { part, name }: SetupPiece): Part {
  const entered = part.figure('focus/playDeg');
  return { says: `ring of ${name}`, atRing: entered ?? asking.assume(focus.ringPlayDeg), assumed: entered === undefined };
}

/** Seats from the body out to the ring's own piece: one behind each piece of the stack. */
function seatPlays(asking: Asking, subject: SetupGlass, ring: SetupPiece): Part[] {
  const { stack } = opticalPath(asking.ledger, subject.setup, subject.glass);
  const behind = stack.slice(0, stack.findIndex(({ ref }) => ref === ring.ref) + 1).filter(({ part }) => ['mountAdapter', 'lens', 'block', 'focuser'].some((facet) => part.has(facet as 'lens')));
  const camera = asking.ledger.at(`setups/${subject.setup}/camera`) as string;
  return behind.map((piece) => {
    const entered = pointFigures(asking, subject, (ends) => stackJoint(ends, piece, stack, camera), 'playDeg');
    const sum = sumOf(entered);
    return entered.length > 0
      ? { says: `seat of ${piece.name}`, atRing: sum, assumed: false }
      : { says: `seat of ${piece.name}`, atRing: asking.assume(focus.seatPlayDeg), assumed: true };
  });
}

/** A joint of a piece of the stack to what stands behind it: an earlier piece, or the body. */
function stackJoint(ends: readonly [string, string], piece: SetupPiece, stack: readonly SetupPiece[], camera: string): boolean {
  const order = (ref: string) => stack.findIndex((one) => one.ref === ref);
  const other = ends[0] === piece.ref ? ends[1] : ends[0];
  return ends.includes(piece.ref) && other.startsWith(`${camera}/`) && order(other) < order(piece.ref);
}

/** Play across the teeth where the motor is clamped, over the radius of the ring's gear. */
function holdPlays(asking: Asking, subject: SetupGlass, ring: SetupPiece): Part[] {
  const turner = ringTurner(asking, subject);
  if (turner === undefined) return [];
  const module = (ring.part.figure('focus/gear/module')?.value ?? 0.8) / 2;
  const radiusMm = module * ringTeeth(ring);
  const entered = pointFigures(asking, subject, (ends) => ends.includes(turner.piece.ref), 'playMm');
  return entered.length === 0 ? [] : [{ says: `clamp of ${turner.piece.name}`, atRing: through(sumOf(entered), (mm) => (mm / radiusMm) * (180 / Math.PI)), assumed: false }];
}

interface Fixing {
  /** `build/piece` at both ends. */
  readonly refs: readonly [string, string];
  readonly points: readonly [string, string];
}

/** Joints that hold pieces of the camera's build and its glass; meshes hold nothing. */
function fixings({ ledger }: Asking, { setup, glass }: SetupGlass): readonly Fixing[] {
  return ledger.cell(`fixings|${setup}|${glass}`, () => {
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    return [`builds/${camera}`, `glasses/${glass}`].flatMap((root) =>
      ledger.keys(`${root}/joints`).flatMap((id): Fixing[] => {
        const joint = `${root}/joints/${id}`;
        if (ledger.at(`${joint}/mesh`) === true) return [];
        const [a, b] = [ledger.at(`${joint}/a`) as string, ledger.at(`${joint}/b`) as string];
        return [{ refs: [pieceAt(a, camera), pieceAt(b, camera)], points: [pointAt(a), pointAt(b)] }];
      }),
    );
  });
}

const pointAt = (end: string): string => end.slice(end.lastIndexOf('/') + 1);

/** Play entered at both points of the joints that `pick` takes. */
function pointFigures(asking: Asking, subject: SetupGlass, pick: (ends: readonly [string, string]) => boolean, key: 'playDeg' | 'playMm'): Figure[] {
  const pieces = setupPieces(asking.ledger, subject.setup, subject.glass);
  return fixings(asking, subject)
    .filter(({ refs }) => pick(refs))
    .flatMap(({ refs, points }) => points.flatMap((point, at) => pieces.get(refs[at] ?? '')?.part.figure(`points/${point}/${key}`) ?? []));
}
