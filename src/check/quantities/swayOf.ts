import { focus } from '../../standards/assumptions/focus.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Build } from '../../shoot/schema/build.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { shootFigure } from './shootFigures.ts';

/** Sway of the camera towards the subject, either way: as the shot states it, else as the camera is carried. `undefined`: it stands. */
export function swayOf(asking: Asking, { setup, shot }: ShotSubject): Figure | undefined {
  const stated = shootFigure(asking.ledger, `shots/${shot}/swaySpread`);
  if (stated !== undefined) return stated.value === 0 ? undefined : { ...stated, unit: 'mm' };
  const purpose = asking.ledger.at(`builds/${asking.ledger.at(`setups/${setup}/camera`) as string}/purpose`) as Build['purpose'];
  if (purpose === 'handheld') return asking.assume(focus.swayHandheldMm);
  return purpose === 'shoulder' ? asking.assume(focus.swayShoulderMm) : undefined;
}

/** Sway is stated as far as it goes either way; nineteen in twenty of a normal spread lie within two of its rms. */
export const RMS_OF_SWAY = 1 / 2;
