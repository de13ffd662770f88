import { type Port, callerOf } from '../../jobs/protocol.ts';
import type { Studied } from '../../jobs/studyEach.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { desk } from '../worker/desk.ts';
import { take } from './actions.ts';
import { page } from './page.ts';

let worker: Worker | undefined;

/** Runs the questions that wait to be studied, all or only those given, in a worker of their own. */
export async function startStudy(only?: readonly string[]): Promise<void> {
  stopStudy();
  const { keys, shoot, revision } = await desk.study();
  const wanted = only === undefined ? keys : keys.filter((key) => only.includes(key));
  if (wanted.length === 0) return;
  const mine = new Worker(new URL('../worker/study.worker.ts', import.meta.url), { type: 'module', name: 'study' });
  worker = mine;
  page.set({ studying: { done: 0, of: wanted.length } });
  const remote = callerOf<{ study: (shoot: Shoot, keys: readonly string[]) => void }>(mine as Port, (news) => void adopt(news as Studied, revision, mine));
  mine.addEventListener('error', () => page.set({ notice: { says: 'The study broke off; the other answers stand.', kind: 'wrong' } }));
  await remote.study(shoot, wanted);
  if (worker === mine) stopStudy();
}

async function adopt(studied: Studied, revision: number, from: Worker): Promise<void> {
  if (worker !== from) return;
  const { studying } = page.get();
  if (studying !== undefined) page.set({ studying: { ...studying, done: studying.done + 1 } });
  const change = await desk.adopt(studied, revision);
  if (change !== undefined) take(change);
}

/** Stops at once; what has been found stays. */
export function stopStudy(): void {
  worker?.terminate();
  worker = undefined;
  page.set({ studying: undefined });
}
