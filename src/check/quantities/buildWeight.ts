import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { printAmount } from '../../units/print.ts';
import type { Step } from '../answer.ts';
import { nameAt } from '../nameAt.ts';
import { glassesOf } from '../subjects.ts';
import { listed } from './listed.ts';
import { type BuildLoad, buildLoad, cableStep } from './wholeMass.ts';

/** What a build weighs with one of the glasses of its setup. */
export interface BuildWeight extends BuildLoad {
  readonly glass: string;
}

/** What a build weighs with each glass of a setup, heaviest first; only pieces that `counts` takes. Nothing needs a place for it. */
export function buildWeights(ledger: Ledger, setup: string, build: string, counts: (piece: SetupPiece) => boolean = () => true): readonly BuildWeight[] {
  return glassesOf(ledger, setup)
    .map((glass) => ({ glass, ...buildLoad(ledger, { setup, glass }, build, counts) }))
    .toSorted((a, b) => b.massG - a.massG);
}

export const sumOf = (pieces: readonly { readonly massG: number }[]): number => pieces.reduce((sum, { massG }) => sum + massG, 0);

/** The three heaviest pieces, the cables, and what the choice of lens makes of it. */
export function weightSteps(ledger: Ledger, weights: readonly BuildWeight[]): Step[] {
  const [heaviest, lightest] = [weights[0], weights.at(-1)];
  if (heaviest === undefined || lightest === undefined) return [];
  const top = heaviest.weighed.toSorted((a, b) => b.massG - a.massG).slice(0, 3);
  const name = ({ glass }: BuildWeight) => nameAt(ledger, 'glasses', glass);
  const spreadG = heaviest.massG - lightest.massG;
  return [
    ...top.map(({ piece, massG }) => ({ says: piece.name, amount: { value: massG, unit: 'g' as const } })),
    ...cableStep(heaviest),
    ...(spreadG > 0 ? [{ says: `${name(heaviest)} weighs more than ${name(lightest)} by`, amount: { value: spreadG, unit: 'g' as const } }] : []),
  ];
}

/** Why a build cannot be weighed at all. */
export const nothingWeighed = (weights: readonly BuildWeight[]): string => {
  const names = weights[0]?.unweighed.map(({ name }) => name) ?? [];
  return names.length === 0 ? 'There is nothing in this build to weigh.' : `No piece of this build has a mass entered: ${listed(names)}.`;
};

export const inWords = (grams: number): string => printAmount({ value: grams, unit: 'g' });
