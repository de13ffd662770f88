/** What crosses between the page and a worker: a method's name with its arguments, and what came of it; and news unasked for. */
export interface Call {
  readonly id: number;
  readonly method: string;
  readonly args: readonly unknown[];
}

export type Reply = { readonly id: number; readonly value: unknown } | { readonly id: number; readonly broke: string };

/** The two ends alike: what a worker and the page have in common. */
export interface Port {
  postMessage(message: unknown): void;
  addEventListener(type: 'message', listener: (event: { readonly data: unknown }) => void): void;
}

/** The methods of an object, seen from the other end. */
export type Remote<T> = { readonly [Key in keyof T]: T[Key] extends (...args: infer Args) => infer Out ? (...args: Args) => Promise<Awaited<Out>> : never };

/** Answers calls on an object's methods. What a method throws goes back as words; the worker lives on. */
export function serveCalls(port: Port, methods: object): void {
  port.addEventListener('message', ({ data }) => void answer(port, methods, data as Call));
}

async function answer(port: Port, methods: object, { id, method, args }: Call): Promise<void> {
  try {
    const call = (methods as Record<string, ((...given: readonly unknown[]) => unknown) | undefined>)[method];
    if (call === undefined) throw new Error(`There is no method ${method}.`);
    port.postMessage({ id, value: await call.apply(methods, [...args]) });
  } catch (thrown) {
    port.postMessage({ id, broke: thrown instanceof Error ? thrown.message : String(thrown) });
  }
}

/** Calls methods at the other end. `onNews` hears what comes unasked. */
export function callerOf<T extends object>(port: Port, onNews: (news: unknown) => void = () => undefined): Remote<T> {
  const waiting = new Map<number, { resolve: (value: unknown) => void; reject: (reason: Error) => void }>();
  let last = 0;
  port.addEventListener('message', ({ data }) => {
    if (typeof data === 'object' && data !== null && 'news' in data) return onNews(data.news);
    const reply = data as Reply;
    const waiter = waiting.get(reply.id);
    waiting.delete(reply.id);
    if ('broke' in reply) waiter?.reject(new Error(reply.broke));
    else waiter?.resolve(reply.value);
  });
  return new Proxy({} as Remote<T>, {
    get: (_, method) => (...args: unknown[]) =>
      new Promise((resolve, reject) => {
        last += 1;
        waiting.set(last, { resolve, reject });
        port.postMessage({ id: last, method: String(method), args } satisfies Call);
      }),
  });
}
