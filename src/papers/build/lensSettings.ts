import { type SolvedSetting, placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Stands } from './settingPlace.ts';

export interface LensSetting extends Stands {
  /** The end of its way that it stands at, if at one. */
  readonly atLimit: SolvedSetting['atLimit'];
}

/** What is set for one glass: found by the program, or pinned for it in the file. */
export function lensSettings(ledger: Ledger, setup: string, glass: string): LensSetting[] {
  const { settings, model } = placeSetup(ledger, setup, glass);
  const solved = settings.map(({ joint, key, value, low, rangeKnown, atLimit }) => ({ joint, key, value, low: rangeKnown ? low : undefined, atLimit }));
  const pinned = [...model.tree, ...model.loops].flatMap(({ joint }) =>
    Object.entries(joint.settings).flatMap(([key, setting]) => {
      const value = typeof setting === 'object' && 'pinned' in setting ? (setting.pinned[glass] ?? setting.otherwise) : undefined;
      return value === undefined ? [] : [{ joint, key: key as SolvedSetting['key'], value, atLimit: undefined }];
    }),
  );
  return [...solved, ...pinned];
}
