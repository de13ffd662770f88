/** The program's own server, where the page comes from it: it reads and writes the one file it was started with. */
export interface ServedFile {
  readonly name: string;
  readonly text: string;
  readonly version: string;
}

const token = document.querySelector<HTMLMetaElement>('meta[name="setworthy-token"]')?.content;
const file = document.querySelector<HTMLMetaElement>('meta[name="setworthy-file"]')?.content;

/** Whether the page was opened on a file of the user's. */
export const servesFile = token !== undefined && file !== undefined;
export const servedByProgram = token !== undefined;

export async function readServed(): Promise<ServedFile> {
  const response = await fetch('./shoot', { cache: 'no-store' });
  if (!response.ok) throw new Error(await response.text());
  return { name: file ?? 'shoot', text: await response.text(), version: response.headers.get('etag') ?? '' };
}

export type Written = { readonly done: true; readonly version: string } | { readonly done: false; readonly why: 'changed outside' | 'refused' | 'no answer'; readonly says: string };

/** Writes the file, unless it is no longer the version the page knows. */
export async function writeServed(text: string, version: string): Promise<Written> {
  try {
    const response = await fetch('./shoot', { method: 'PUT', body: text, headers: { 'x-setworthy-token': token ?? '', 'if-match': version, 'content-type': 'application/json' } });
    if (response.ok) return { done: true, version: response.headers.get('etag') ?? '' };
    return { done: false, why: response.status === 412 ? 'changed outside' : 'refused', says: await response.text() };
  } catch {
    return { done: false, why: 'no answer', says: 'The program no longer answers; is it still running?' };
  }
}

/** The version that stands on disk now; nothing where the program does not answer. */
export async function servedVersion(): Promise<string | undefined> {
  try {
    return (await fetch('./shoot', { method: 'HEAD', cache: 'no-store' })).headers.get('etag') ?? undefined;
  } catch {
    return undefined;
  }
}
