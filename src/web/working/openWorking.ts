import { goTo, currentRoute } from '../state/route.ts';
import { preferences } from '../state/preferences.ts';

/** Wide screens show the working beside the view; narrower ones go to it. */
export const WORKING_BESIDE = '(min-width: 1100px)';

export function openWorking(answer: string): void {
  if (matchMedia(WORKING_BESIDE).matches) {
    preferences.set({ workingOpen: true });
    goTo({ answer });
  } else goTo({ answer, view: 'working' }, currentRoute().view === 'working');
}
