import { createInterface } from 'node:readline';
import { Stopped } from './Refusal.ts';
import { EXIT, type World } from './World.ts';

/** The world of a real process. */
export function processWorld(): World {
  let stop: AbortController | undefined;
  const encoding = process.env['LC_ALL'] ?? process.env['LC_CTYPE'] ?? process.env['LANG'] ?? 'UTF-8';
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    lines: () => createInterface({ input: process.stdin, crlfDelay: Infinity }),
    ask: process.stdin.isTTY ? askPerson : undefined,
    colour: process.stdout.isTTY === true && process.env['NO_COLOR'] === undefined && process.env['TERM'] !== 'dumb',
    unicode: /utf-?8/i.test(encoding) || encoding === '' || encoding === 'C.UTF-8',
    columns: columnsOf(process.stdout.columns, process.env['COLUMNS']),
    today: () => new Date(),
    // Only who asks for it hears ctrl-C; whatever else runs is ended by it at once, as the system does.
    get stop() {
      stop ??= heardStop();
      return stop.signal;
    },
    exitCode: EXIT.fine,
    traces: process.env['SETWORTHY_TRACE'] !== undefined,
  };
}

/** What is not a terminal is as wide as the environment says, else as wide as reads well. */
export function columnsOf(terminal: number | undefined, stated: string | undefined): number {
  if (terminal !== undefined && terminal > 0) return terminal;
  return /^[1-9]\d{0,3}$/.test(stated ?? '') ? Number(stated) : 110;
}

function heardStop(): AbortController {
  const stop = new AbortController();
  process.once('SIGINT', () => {
    stop.abort();
    process.once('SIGINT', () => process.exit(130));
  });
  return stop;
}

function askPerson(question: string): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  return new Promise((resolve, reject) => {
    // Closed by ctrl-C or ctrl-D; after an answer this comes too late to matter.
    terminal.once('close', () => reject(new Stopped()));
    terminal.question(question, (answer) => {
      resolve(answer);
      terminal.close();
    });
  });
}
