import { createInterface } from 'node:readline';
import { EXIT, type World } from './World.ts';

/** The world of a real process. */
export function processWorld(): World {
  const stop = new AbortController();
  process.once('SIGINT', () => {
    stop.abort();
    process.once('SIGINT', () => process.exit(130));
  });
  const encoding = process.env['LC_ALL'] ?? process.env['LC_CTYPE'] ?? process.env['LANG'] ?? 'UTF-8';
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    lines: () => createInterface({ input: process.stdin, crlfDelay: Infinity }),
    ask: process.stdin.isTTY ? askPerson : undefined,
    colour: process.stdout.isTTY === true && process.env['NO_COLOR'] === undefined && process.env['TERM'] !== 'dumb',
    unicode: /utf-?8/i.test(encoding) || encoding === '' || encoding === 'C.UTF-8',
    columns: process.stdout.columns ?? 110,
    today: () => new Date(),
    stop: stop.signal,
    exitCode: EXIT.fine,
    traces: process.env['SETWORTHY_TRACE'] !== undefined,
  };
}

function askPerson(question: string): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  return new Promise((resolve) => {
    terminal.question(question, (answer) => {
      terminal.close();
      resolve(answer);
    });
  });
}
