import { type Figure, figureOf } from '../shoot/ledger/figures.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Basis, StatedFigure } from '../shoot/schema/basics.ts';
import { assumptionCatalogue } from '../standards/assumptions/index.generated.ts';

/** The figures an answer rests on, from the log of what was read while it was worked out; assumed ones included. */
export function restsOn(ledger: Ledger, answerKey: string): Figure[] {
  return ledger.readsOf(answerKey).flatMap((path) => figureAt(ledger, path) ?? []);
}

/** The figure at a path, or `undefined` where what stands there is not one. */
function figureAt(ledger: Ledger, path: string): Figure | undefined {
  const value = ledger.at(path);
  const assumed = path.startsWith('assumptions/') ? assumptionCatalogue[path.slice('assumptions/'.length)] : undefined;
  if (!isStated(value)) return assumed === undefined ? undefined : { ...assumed, basis: 'assumed', path };
  const figure = figureOf(value, path, basisAround(ledger, path));
  if (isChosen(path) && typeof value === 'number') return { ...figure, low: value, high: value };
  return assumed === undefined ? figure : { ...figure, unit: assumed.unit };
}

/** What a shot, setup or day asks for is what it asks for: a bare number there is not in doubt. */
const isChosen = (path: string): boolean => !path.startsWith('kit/') && !path.startsWith('assumptions/');

const isStated = (value: unknown): value is StatedFigure =>
  typeof value === 'number' || (typeof value === 'object' && value !== null && typeof (value as { value?: unknown }).value === 'number');

/** Bare figures of a part have the part's basis; those of shots and days are what the shoot wants, sure as a sheet. */
function basisAround(ledger: Ledger, path: string): Basis {
  const part = /^kit\/parts\/[^/]+/.exec(path)?.[0];
  return ((part === undefined ? undefined : ledger.at(`${part}/basis`)) as Basis | undefined) ?? 'sheet';
}

