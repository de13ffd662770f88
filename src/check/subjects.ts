/** The things questions arise for, enumerated through the ledger. */
import type { Ledger } from '../shoot/ledger/Ledger.ts';

export interface SetupGlass {
  readonly setup: string;
  readonly glass: string;
}

/** Every setup once. */
export const eachSetup = (ledger: Ledger): { setup: string }[] => ledger.keys('setups').map((setup) => ({ setup }));

/** The glasses a setup is shot with. */
export const glassesOf = (ledger: Ledger, setup: string): readonly string[] => (ledger.at(`setups/${setup}/glasses`) ?? []) as readonly string[];

/** Every glass of every setup. */
export const eachGlass = (ledger: Ledger): SetupGlass[] => ledger.keys('setups').flatMap((setup) => glassesOf(ledger, setup).map((glass) => ({ setup, glass })));

export interface ShotSubject extends SetupGlass {
  readonly shot: string;
}

/** Every shot with the setup and glass it names. */
export const eachShot = (ledger: Ledger): ShotSubject[] =>
  ledger.keys('shots').map((shot) => ({
    setup: ledger.at(`shots/${shot}/setup`) as string,
    glass: ledger.at(`shots/${shot}/glass`) as string,
    shot,
  }));

export interface ViewerSubject extends SetupGlass {
  readonly viewer: string;
}

/** Every viewer in every setup in which they watch, with the setup's first glass (pictures and lines do not change with the others). */
export const eachViewer = (ledger: Ledger): ViewerSubject[] =>
  ledger.keys('needs/viewers').flatMap((viewer) => {
    const only = ledger.at(`needs/viewers/${viewer}/setups`) as readonly string[] | undefined;
    const build = (ledger.at(`needs/viewers/${viewer}/screen`) as string).split('/')[0] ?? '';
    return eachSetup(ledger)
      .filter(({ setup }) => only?.includes(setup) ?? buildsOf(ledger, setup).includes(build))
      .map(({ setup }) => ({ setup, glass: glassesOf(ledger, setup)[0] ?? '', viewer }));
  });

/** The camera build and live stations of a setup. */
export const buildsOf = (ledger: Ledger, setup: string): string[] => [
  ledger.at(`setups/${setup}/camera`) as string,
  ...((ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[]),
];
