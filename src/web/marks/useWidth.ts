import { type RefObject, useSyncExternalStore } from 'react';

/** The width an element has just now; 0 before it stands. */
export function useWidth(of: RefObject<HTMLElement | null>): number {
  return useSyncExternalStore(
    (watcher) => {
      const observer = new ResizeObserver(watcher);
      if (of.current !== null) observer.observe(of.current);
      return () => observer.disconnect();
    },
    () => of.current?.clientWidth ?? 0,
  );
}
