import { useSyncExternalStore } from 'react';

/** One value that parts of the page watch. */
export class Store<T extends object> {
  #state: T;
  readonly #watchers = new Set<() => void>();

  constructor(state: T) {
    this.#state = state;
  }

  get = (): T => this.#state;

  set(change: Partial<T>): void {
    this.#state = { ...this.#state, ...change };
    this.#watchers.forEach((watcher) => watcher());
  }

  watch = (watcher: () => void): (() => void) => {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  };
}

/** What `select` picks from a store; the component draws again when that changes. */
export function useStore<T extends object, Picked>(store: Store<T>, select: (state: T) => Picked): Picked {
  return useSyncExternalStore(store.watch, () => select(store.get()));
}
