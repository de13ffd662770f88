import type { Change, Opened, Result } from '../../jobs/ShootKeeper.ts';
import { withEntries } from '../../jobs/changedEntries.ts';
import { entering } from '../../jobs/place.ts';
import type { Taking } from '../../jobs/importParts.ts';
import type { Typed } from '../../jobs/newShootForm.ts';
import type { Patch } from '../../shoot/edit/Edit.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { desk } from '../worker/desk.ts';
import { type Notice, page } from './page.ts';
import { keepAs, saveNow, saveSoon } from './saving.ts';

const wrong = (says: string, faults: Notice['faults'] = []): void => page.set({ notice: { says, kind: 'wrong', faults }, busy: false });
export const say = (says: string): void => page.set({ notice: { says, kind: 'plain' } });
export const hush = (): void => page.set({ notice: undefined });

/** Opens a shoot from its text. Says whether that went well; what was open stays where it did not. */
export async function openText(text: string, { as, served, file }: { as: string; served?: string; file?: string }): Promise<boolean> {
  page.set({ busy: true });
  return took(await desk.open(text), `${file ?? 'This file'} could not be opened.`, as, served, file);
}

export async function beginFrom(typed: Typed): Promise<boolean> {
  page.set({ busy: true });
  const begun = await took(await desk.beginFrom(typed), 'Something in the answers is not right.', newId());
  if (begun) void saveNow();
  return begun;
}

export const newId = (): string => `shoot-${crypto.randomUUID()}`;

async function took(opened: Result<Opened>, says: string, as: string, served?: string, file?: string): Promise<boolean> {
  if (!opened.ok) {
    wrong(says, opened.faults);
    if (page.get().phase === 'starting') page.set({ phase: 'nothing open' });
    return false;
  }
  const { shoot, answers, warnings, revision } = opened.value;
  keepAs(as, served);
  page.set({
    phase: 'open', shoot, answers: new Map(answers.map((answer) => [answer.key, answer])), revision, history: {}, moved: new Set(), kept: 'kept', file, busy: false,
    notice: warnings.length === 0 ? undefined : { says: `${warnings.length} unknown ${warnings.length === 1 ? 'entry is' : 'entries are'} kept as they are.`, kind: 'plain', faults: warnings },
  });
  if (page.get().forms === undefined) page.set({ forms: await desk.forms() });
  return true;
}

/** Sends an edit to the shoot's owner. Refused edits change nothing and say why. */
export async function edit(says: string, patches: readonly Patch[], drag?: string): Promise<boolean> {
  if (patches.length === 0) return true;
  const { kept } = page.get();
  page.set({ kept: 'keeping' });
  const done = changed(await desk.edit({ says, patches }, drag), 'That cannot be entered.');
  if (!done) page.set({ kept });
  return done;
}

/** Enters a value at a path, or takes it away. */
export async function enter(says: string, path: string, value: unknown, drag?: string): Promise<boolean> {
  const { shoot } = page.get();
  return shoot === undefined ? false : edit(says, entering(shoot, path, value), drag);
}

/** Makes an edit that was worked out elsewhere, and says what had to be left out of it. */
export async function takeIn({ edit: made, faults }: Taking, nothing: string): Promise<void> {
  if (made === undefined) return wrong(nothing, faults);
  if (await edit(made.says, made.patches)) page.set({ notice: { says: faults.length === 0 ? `${made.says}.` : `${made.says}. Left out, or taken out because it no longer fits:`, kind: faults.length === 0 ? 'plain' : 'wrong', faults } });
}

export async function undo(): Promise<void> {
  if (page.get().history.undo !== undefined) await changed(await desk.undo(), 'That could not be undone.');
}

export async function redo(): Promise<void> {
  if (page.get().history.redo !== undefined) await changed(await desk.redo(), 'That could not be done again.');
}

function changed(result: Result<Change>, says: string): boolean {
  if (!result.ok) {
    wrong(says, result.faults);
    return false;
  }
  take(result.value);
  saveSoon();
  return true;
}

/** Takes in what an edit or a studied answer changed. */
export function take({ entries, answers: news, gone, history, revision }: Change): void {
  const { shoot, answers, notice } = page.get();
  const next = new Map(answers);
  for (const key of gone) next.delete(key);
  for (const answer of news) next.set(answer.key, answer);
  page.set({
    shoot: withEntries(shoot as Shoot, entries), answers: next, history, revision, moved: new Set(news.map(({ key }) => key)),
    notice: notice?.kind === 'wrong' ? undefined : notice,
  });
}
