import { amountsInWords } from '../../units/amountsInWords.ts';
import type { System } from '../../units/print.ts';
import { Store, useStore } from './Store.ts';

interface Preferences {
  readonly system: System;
  readonly ground: 'day' | 'night';
  /** The working stands beside the view on wide screens. */
  readonly workingOpen: boolean;
  readonly asksOpen: boolean;
}

const KEY = 'setworthy.preferences';

function remembered(): Partial<Preferences> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Preferences>;
  } catch {
    return {};
  }
}

const dark = matchMedia('(prefers-color-scheme: dark)').matches;
export const preferences = new Store<Preferences>({ system: 'metric', ground: dark ? 'night' : 'day', workingOpen: true, asksOpen: true, ...remembered() });

function show(): void {
  const { ground } = preferences.get();
  document.documentElement.dataset['ground'] = ground;
}
show();
preferences.watch(() => {
  show();
  try {
    localStorage.setItem(KEY, JSON.stringify(preferences.get()));
  } catch {
    // Private windows may refuse; the choice then lasts as long as the page.
  }
});

export const useSystem = (): System => useStore(preferences, ({ system }) => system);
/** Sentences come in the metric system; this says them in the one that is chosen. */
export function useSaid(): (text: string) => string {
  const system = useSystem();
  return (text) => amountsInWords(text, system);
}
export const usePreferences = (): Preferences => useStore(preferences, (state) => state);
