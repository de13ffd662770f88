import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { anamorphPupil } from '../../calc/optics/anamorphPupil.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { widestStop } from './lightThrough.ts';
import { lensOf } from './squeezeOf.ts';

/** Where the light of one meridian goes through, seen from the front. */
export interface Pupil {
  /** Behind the front face of the piece named. */
  readonly behindFrontMm: number;
  readonly diameterMm: number;
}

/** The entrance pupils of a glass at its widest stop, one per meridian. */
export interface EntrancePupils {
  readonly horizontal: Pupil;
  readonly vertical: Pupil;
  /** The piece behind whose front face they lie: the block, or without one the lens. */
  readonly front: SetupPiece;
}

/** Pupils of an anamorphic lens as entered; behind a block, those of the taking lens seen through it. A focuser at rest moves neither. */
export function entrancePupils(asking: Asking, subject: SetupGlass): EntrancePupils {
  return asking.ledger.cell(`pupils|${subject.setup}|${subject.glass}`, () => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    const lens = lensOf(path, subject.glass);
    return path.block === undefined ? ofLens(asking, subject, lens) : throughBlock(asking, subject, lens, path.block);
  });
}

function ofLens(asking: Asking, subject: SetupGlass, front: SetupPiece): EntrancePupils {
  const { part } = front;
  const { focal, squeeze, across, up } = asking.figures(part, {
    focal: 'lens/focalLengthMm', squeeze: 'lens/squeeze', across: 'lens/pupils/horizontal/behindFrontMm', up: 'lens/pupils/vertical/behindFrontMm',
  });
  const stated = { across: part.figure('lens/pupils/horizontal/diameterMm'), up: part.figure('lens/pupils/vertical/diameterMm') };
  const height = stated.up?.value ?? focal.value / widestStop(asking, subject).fNumber.value;
  return {
    horizontal: { behindFrontMm: across.value, diameterMm: stated.across?.value ?? height / squeeze.value },
    vertical: { behindFrontMm: up.value, diameterMm: height },
    front,
  };
}

function throughBlock(asking: Asking, subject: SetupGlass, lens: SetupPiece, block: SetupPiece): EntrancePupils {
  const on = blockOnLens(asking, subject, lens, block);
  const recess = recessOf(asking, block, on);
  const { squeeze, elementSpacingMm, rearToPupilMm, focalLengthMm, fNumber } = on;
  const pupil = anamorphPupil({ squeeze, elementSpacingMm, rearToPupilMm, focalLengthMm, fNumber });
  return {
    horizontal: { behindFrontMm: pupil.horizontalDistanceMm + recess, diameterMm: pupil.horizontalDiameterMm },
    vertical: { behindFrontMm: pupil.verticalDistanceMm + recess, diameterMm: pupil.verticalDiameterMm },
    front: block,
  };
}

/** From the front element of a block forward to its front face: what is left of the barrel once the rear element lies as deep as its distance to the lens it seats on. */
export function recessOf(asking: Asking, block: SetupPiece, { elementSpacingMm, gap }: { elementSpacingMm: number; gap: number }): number {
  return Math.max(0, asking.figure(block.part, 'lengthMm').value - elementSpacingMm - gap);
}

/** The figures of a block that sits on a taking lens, as the calculators want them. */
export function blockOnLens(asking: Asking, subject: SetupGlass, lens: SetupPiece, block: SetupPiece) {
  const { focal, pupil } = asking.figures(lens.part, { focal: 'lens/focalLengthMm', pupil: 'lens/pupils/vertical/behindFrontMm' });
  const { squeeze, spacing, gap } = asking.figures(block.part, { squeeze: 'block/squeeze', spacing: 'block/elementSpacingMm', gap: 'block/rearToPupilGapMm' });
  return {
    focalLengthMm: focal.value,
    fNumber: widestStop(asking, subject).fNumber.value,
    rearToPupilMm: gap.value + pupil.value,
    elementSpacingMm: spacing.value,
    squeeze: squeeze.value,
    gap: gap.value,
  };
}
