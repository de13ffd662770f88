import { desk } from '../worker/desk.ts';
import { newId, openText, say } from './actions.ts';
import { page } from './page.ts';
import { saveNow } from './saving.ts';

const MOST_BYTES = 33_000_000;

/** Opens a file the user picked or dropped. */
export async function openFile(file: File): Promise<boolean> {
  if (file.size > MOST_BYTES) {
    page.set({ notice: { says: `${file.name} has ${Math.round(file.size / 1e6)} MB; at most 33 MB are read. Is it a shoot file?`, kind: 'wrong' } });
    return false;
  }
  const opened = await openText(await file.text(), { as: newId(), file: file.name });
  if (opened) await saveNow();
  return opened;
}

export function pickFile(): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (file !== undefined) void openFile(file);
  });
  input.click();
}

/** Hands the shoot over as a file. */
export async function downloadShoot(): Promise<void> {
  const text = await desk.text();
  const title = page.get().shoot?.title ?? 'shoot';
  download(`${title.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '') || 'shoot'}.shoot.json`, text, 'application/json');
  say('Saved to your downloads.');
}

export function download(name: string, content: BlobPart, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
