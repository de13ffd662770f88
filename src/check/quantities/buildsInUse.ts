import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type SetupGlass, buildsOf, glassesOf } from '../subjects.ts';

/** Where a build is used: setups and glasses. A station does not change with the glass, so that one is enough. */
export function usesOf(ledger: Ledger, build: string): readonly SetupGlass[] {
  return ledger.cell(`uses of|${build}`, () =>
    ledger.keys('setups').flatMap((setup) => {
      if (!buildsOf(ledger, setup).includes(build)) return [];
      const glasses = glassesOf(ledger, setup);
      return (ledger.at(`setups/${setup}/camera`) === build ? glasses : glasses.slice(0, 1)).map((glass) => ({ setup, glass }));
    }));
}

/** Every build that some setup uses, once. */
export const buildsInUse = (ledger: Ledger): readonly string[] => ledger.cell('builds in use', () => [...new Set(ledger.keys('setups').flatMap((setup) => buildsOf(ledger, setup)))]);

/** Whether it carries the camera body. */
export const isCamera = (ledger: Ledger, { setup }: SetupGlass, build: string): boolean => ledger.at(`setups/${setup}/camera`) === build;
