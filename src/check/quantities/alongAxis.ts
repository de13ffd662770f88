import { type OpticalPath, opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import type { Missing } from '../answer.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Bounded, sumOf, through } from './Bounded.ts';

/** A length along the optical axis, and what it is made of. */
export interface AxisLength extends Bounded {
  readonly says: string;
  /** All of it stands on a sheet or was measured. */
  readonly sure: boolean;
}

/** How far the front face of a piece of the glass stands ahead of the sensor plane, from the lengths of what stands behind it. */
export function frontToSensor(asking: Asking, { setup, glass }: SetupGlass, piece: SetupPiece): AxisLength {
  return asking.ledger.cell(`front to sensor|${setup}|${glass}|${piece.ref}`, () => {
    const path = opticalPath(asking.ledger, setup, glass);
    const behind = barrels(path).slice(0, barrels(path).findIndex(({ ref }) => ref === piece.ref) + 1);
    const lengths: { figure: Figure; name: string }[] = [];
    const missing: Missing[] = [];
    // The last path named is the one to ask for.
    const add = ({ part, name }: SetupPiece, paths: readonly string[]): void => {
      const figure = paths.map((one) => part.figure(one)).find((one) => one !== undefined);
      if (figure === undefined) missing.push(describeFigure(part, paths.at(-1) ?? ''));
      else lengths.push({ figure, name });
    };
    if (path.body === undefined) missing.push({ path: `builds/${asking.ledger.at(`setups/${setup}/camera`) as string}/camera`, says: 'the camera body of the build' });
    else add(path.body, ['body/sensorBehindFrontMm', 'body/flangeMm']);
    for (const one of behind) add(one, one.part.has('mountAdapter') ? ['lengthMm', 'mountAdapter/thicknessMm'] : ['lengthMm']);
    if (missing.length > 0) throw new NotEntered(missing);
    return {
      ...sumOf(lengths.map(({ figure }) => figure)),
      says: lengths.map(({ figure, name }) => `${name} ${printNumber(figure.value)}`).join(' + '),
      sure: lengths.every(({ figure }) => figure.basis === 'measured' || figure.basis === 'sheet'),
    };
  });
}

/** The outermost piece of the glass that the light passes; a close-up lens sits on its front. */
export function outermost(asking: Asking, { setup, glass }: SetupGlass): SetupPiece | undefined {
  return barrels(opticalPath(asking.ledger, setup, glass)).at(-1);
}

/**
 * How far a focuser in front stands ahead of the sensor plane: at the middle of its barrel, wherever its thin equivalent lies.
 * Lengths from a sheet or the bench come first, then the offset stated with the focuser, then lengths that are estimates.
 */
export function focuserToSensor(asking: Asking, subject: SetupGlass, focuser: SetupPiece): AxisLength {
  const stated = focuser.part.figure('focuser/toSensorMm');
  const length = focuser.part.figure('lengthMm');
  try {
    const front = frontToSensor(asking, subject, focuser);
    if (stated === undefined || front.sure) return { ...middle(front, length?.value ?? 0), says: `middle of ${focuser.name}; ${front.says} mm`, sure: front.sure };
  } catch (thrown) {
    if (!(thrown instanceof NotEntered) || stated === undefined) throw thrown;
  }
  return { ...(stated as Figure), says: `stated with ${focuser.name}`, sure: true };
}

const middle = (front: Bounded, lengthMm: number): Bounded => {
  const at = through(front, (mm) => mm - lengthMm / 2);
  return { value: at.value, low: at.low - lengthMm / 2, high: at.high + lengthMm / 2 };
};

/** Pieces with a barrel of their own; clamp rings, boxes and filters sit around or on them. */
const barrels = ({ stack }: OpticalPath): SetupPiece[] =>
  stack.filter(({ part }) => part.has('mountAdapter') || part.has('lens') || part.has('block') || part.has('focuser'));
