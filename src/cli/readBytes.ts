import { closeSync, constants, openSync, readSync, statSync } from 'node:fs';

/** A pipe that nobody writes to is given up after so long. */
const PATIENCE_MS = 5000;
const PAUSE_MS = 5;
const CHUNK = 1 << 16;

/** What came of reading: the bytes, or why there are none. */
export type Bytes = { readonly bytes: Buffer } | { readonly tooLarge: number } | { readonly silent: true };

/** Everything in a file, a pipe or a device, up to `most` bytes: neither an endless one nor a silent one holds the program up. */
export function readBytes(path: string, most: number): Bytes {
  const status = statSync(path);
  if (status.isFile() && status.size > most) return { tooLarge: status.size };
  // Without waiting: opening a pipe that has no writer would wait for ever.
  const file = openSync(path, status.isFIFO() ? constants.O_RDONLY | constants.O_NONBLOCK : constants.O_RDONLY);
  try {
    return gathered(file, { most, waits: status.isFIFO() });
  } finally {
    closeSync(file);
  }
}

function gathered(file: number, { most, waits }: { most: number; waits: boolean }): Bytes {
  const chunks: Buffer[] = [];
  let [size, silentMs] = [0, 0];
  for (;;) {
    const chunk = Buffer.alloc(CHUNK);
    const count = readSome(file, chunk);
    if (count === 'nothing yet' || (count === 0 && size === 0 && waits)) {
      if ((silentMs += PAUSE_MS) > PATIENCE_MS) return { silent: true };
      pause();
    } else if (count === 0) return { bytes: Buffer.concat(chunks, size) };
    else {
      silentMs = 0;
      size += count;
      chunks.push(chunk.subarray(0, count));
      if (size > most) return { tooLarge: size };
    }
  }
}

function readSome(file: number, into: Buffer): number | 'nothing yet' {
  try {
    return readSync(file, into, 0, into.length, null);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EAGAIN') return 'nothing yet';
    throw thrown;
  }
}

function pause(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS);
}
