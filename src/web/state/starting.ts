import { goTo, currentRoute } from './route.ts';
import { openText } from './actions.ts';
import { type KeptShoot, keptShoot } from './keeping.ts';
import { page } from './page.ts';
import { lastKept, watchFile } from './saving.ts';
import { readServed, servesFile } from './server.ts';

/** What is open when the page starts: the program's file, the one the address names, the last one kept, or nothing. */
export async function start(): Promise<void> {
  try {
    if (servesFile) return await startFromServer();
    if (currentRoute().open === 'demo') return await openDemo();
    const last = lastKept();
    const kept = last === undefined ? undefined : await keptShoot(last);
    if (kept !== undefined && (await openKept(kept))) return;
    if (last === 'demo') return await openDemo();
  } catch (thrown) {
    page.set({ notice: { says: thrown instanceof Error ? thrown.message : String(thrown), kind: 'wrong' } });
  }
  if (page.get().phase === 'starting') page.set({ phase: 'nothing open' });
}

async function startFromServer(): Promise<void> {
  const { name, text, version } = await readServed();
  const take = (newer: string, newVersion: string) => openText(newer, { as: `file-${name}`, served: newVersion, file: name });
  await take(text, version);
  watchFile((newer, newVersion) => void take(newer, newVersion).then((taken) => taken && page.set({ notice: { says: `${name} was changed outside and has been read again.`, kind: 'plain' } })));
}

export async function openKept({ id, text }: KeptShoot): Promise<boolean> {
  return openText(text, { as: id });
}

/** Opens the demo as it was last left in this browser, or afresh. */
export async function openDemo(afresh = false): Promise<void> {
  const kept = afresh ? undefined : await keptShoot('demo').catch(() => undefined);
  const text = kept?.text ?? (await (await fetch('./demo.shoot.json')).text());
  if (await openText(text, { as: 'demo' })) goTo({ open: undefined, answer: undefined }, true);
}
