import { desk } from '../worker/desk.ts';
import { keep } from './keeping.ts';
import { page } from './page.ts';
import { readServed, servedVersion, servesFile, writeServed } from './server.ts';

const WAIT_MS = 500;
const LAST = 'setworthy.last';

let id = '';
let version = '';
let timer: ReturnType<typeof setTimeout> | undefined;
let writing: Promise<void> = Promise.resolve();

/** Where the open shoot is kept from now on. */
export function keepAs(newId: string, servedAs?: string): void {
  id = newId;
  version = servedAs ?? '';
  try {
    localStorage.setItem(LAST, newId);
  } catch {
    // The last shoot is then not remembered; it is still kept.
  }
}

export function lastKept(): string | undefined {
  try {
    return localStorage.getItem(LAST) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Saves a moment after the last edit. */
export function saveSoon(): void {
  page.set({ kept: 'keeping' });
  clearTimeout(timer);
  timer = setTimeout(() => void saveNow(), WAIT_MS);
}

/** Saves now. `over`: also over a file that was changed outside. */
export function saveNow(over = false): Promise<void> {
  clearTimeout(timer);
  writing = writing.then(() => save(over));
  return writing;
}

async function save(over: boolean): Promise<void> {
  const { shoot, revision } = page.get();
  if (shoot === undefined) return;
  const text = await desk.text();
  const inBrowser = await keptInBrowser(text, shoot.title);
  if (!servesFile) {
    settle(revision, inBrowser ? 'kept' : 'not kept', inBrowser ? undefined : 'The browser will not keep this shoot: its storage is full or refused. Save it to a file.');
    return;
  }
  if (over) version = (await servedVersion()) ?? version;
  const written = await writeServed(text, version);
  if (written.done) {
    version = written.version;
    settle(revision, 'kept');
  } else if (written.why === 'changed outside') settle(revision, 'changed outside');
  else settle(revision, 'not kept', `${written.says} ${inBrowser ? 'Your changes are kept in this browser; save them to a file to be sure.' : 'Save to a file to be sure.'}`);
}

async function keptInBrowser(text: string, title: string): Promise<boolean> {
  try {
    await keep({ id, title, text, savedAt: Date.now() });
    return true;
  } catch {
    return false;
  }
}

function settle(revision: number, kept: 'kept' | 'not kept' | 'changed outside', says?: string): void {
  if (page.get().revision !== revision) return;
  page.set({ kept, ...(says === undefined ? {} : { notice: { says, kind: 'wrong' } }) });
}

/** Looks now and then whether the file was changed by another program. */
export function watchFile(takeTheirs: (text: string, version: string) => void): void {
  setInterval(() => {
    if (document.hidden || page.get().kept === 'keeping') return;
    void look(takeTheirs);
  }, 3000);
}

async function look(takeTheirs: (text: string, version: string) => void): Promise<void> {
  const now = await servedVersion();
  if (now === undefined || now === version || page.get().kept === 'changed outside') return;
  if (page.get().kept !== 'kept') return page.set({ kept: 'changed outside' });
  const served = await readServed();
  takeTheirs(served.text, served.version);
}

addEventListener('beforeunload', (event) => {
  if (page.get().kept !== 'kept' && page.get().phase === 'open') event.preventDefault();
});
addEventListener('visibilitychange', () => {
  if (document.hidden && page.get().kept === 'keeping') void saveNow();
});
