import { useSyncExternalStore } from 'react';

const list = matchMedia('(prefers-reduced-motion: reduce)');

/** Whether whoever looks at the page asked for nothing to move. */
export function useReducedMotion(): boolean {
  return useSyncExternalStore(
    (watcher) => {
      list.addEventListener('change', watcher);
      return () => list.removeEventListener('change', watcher);
    },
    () => list.matches,
  );
}
