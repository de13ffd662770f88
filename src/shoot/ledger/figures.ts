import type { Assumption } from '../../standards/Assumption.ts';
import { defaultBounds } from '../../standards/defaultBounds.ts';
import type { Unit } from '../../units/Unit.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import type { Basis, StatedFigure } from '../schema/basics.ts';
import type { Ledger } from './Ledger.ts';

/** A number with its doubt, as questions read it. */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  readonly basis: Basis | 'assumed';
  /** Where it stands in the file. */
  readonly path: string;
}

/** Makes a figure of what the file states; `basis` is that of bare numbers around it. */
export function figureOf(stated: StatedFigure, path: string, basis: Basis): Figure {
  const key = path.slice(path.lastIndexOf('/') + 1);
  const unit = unitOfKey(key);
  const entry = typeof stated === 'number' ? { value: stated } : stated;
  const ownBasis = entry.basis ?? basis;
  const { low, high } = boundsOf(entry, { key, unit, basis: ownBasis });
  return { value: entry.value, low, high, unit, basis: ownBasis, path };
}

type Entry = Exclude<StatedFigure, number>;

function boundsOf(entry: Entry, { key, unit, basis }: { key: string; unit: Unit; basis: Basis }): { low: number; high: number } {
  const { value, within, plusMinus } = entry;
  const spread = plusMinus ?? (within === undefined ? undefined : (Math.abs(value) * Number.parseFloat(within)) / 100);
  const usual = spread === undefined ? defaultBounds({ value, key, unit, basis }) : { low: value - spread, high: value + spread };
  return { low: entry.low ?? usual.low, high: entry.high ?? usual.high };
}

/** A default, or what the shoot states in its place under `assumptions`. */
export function assume(ledger: Ledger, assumption: Assumption): Figure {
  const path = `assumptions/${assumption.key}`;
  const stated = ledger.at(path) as StatedFigure | undefined;
  if (stated === undefined) return { value: assumption.value, low: assumption.low, high: assumption.high, unit: assumption.unit, basis: 'assumed', path };
  return { ...figureOf(stated, path, 'estimate'), unit: assumption.unit };
}
