import { Store, useStore } from './Store.ts';

export const VIEWS = ['asks', 'working', 'rig', 'lines', 'frame', 'pulls', 'swaps', 'kit', 'shoot', 'papers'] as const;
export type View = (typeof VIEWS)[number];

/** What the address says: which view, and what it looks at. Every view has an address of its own. */
export interface Route {
  readonly view: View;
  readonly answer?: string | undefined;
  readonly setup?: string | undefined;
  readonly glass?: string | undefined;
  readonly shot?: string | undefined;
  readonly part?: string | undefined;
  readonly open?: string | undefined;
}

function read(): Route {
  const [path = '', query = ''] = location.hash.replace(/^#\/?/, '').split('?');
  const view = VIEWS.find((one) => one === path) ?? 'asks';
  return { view, ...Object.fromEntries(new URLSearchParams(query)) };
}

const route = new Store<{ route: Route }>({ route: read() });
addEventListener('hashchange', () => route.set({ route: read() }));

export const currentRoute = (): Route => route.get().route;
export const useRoute = (): Route => useStore(route, (state) => state.route);

export function addressOf(to: Partial<Route>): string {
  const { view, ...rest } = { ...currentRoute(), ...to };
  const query = new URLSearchParams(Object.entries(rest).flatMap(([key, value]) => (value === undefined || value === '' ? [] : [[key, value]])));
  const text = query.toString();
  return `#/${view}${text === '' ? '' : `?${text}`}`;
}

/** Goes to a view; `quietly` leaves no step for the back button. */
export function goTo(to: Partial<Route>, quietly = false): void {
  const address = addressOf(to);
  if (address === location.hash) return;
  if (quietly) history.replaceState(null, '', address);
  else history.pushState(null, '', address);
  route.set({ route: read() });
}
addEventListener('popstate', () => route.set({ route: read() }));
