/** What a command may touch of the outside. Passed in, so that tests can run commands without a process. */
export interface World {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Everything on standard input, line by line. */
  readonly lines: () => AsyncIterable<string>;
  /** Asks a person one question; `undefined` where nobody can answer. */
  readonly ask: ((question: string) => Promise<string>) | undefined;
  /** Whether the output goes to somebody's eyes: then it may have colour. */
  readonly colour: boolean;
  /** Whether the terminal shows more than ASCII. */
  readonly unicode: boolean;
  readonly columns: number;
  readonly today: () => Date;
  /** Aborted when the user presses ctrl-C. */
  readonly stop: AbortSignal;
  /** What the process ends with. */
  exitCode: number;
  /** Whether a fault of the program shows where it is: for those who mend it. */
  readonly traces?: boolean;
}

/** `ourFault` is what systems keep for a fault of the software itself; `stopped` is what shells call ended by ctrl-C. */
export const EXIT = { fine: 0, fails: 1, badInput: 2, ourFault: 70, stopped: 130 } as const;
