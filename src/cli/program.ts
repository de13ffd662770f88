import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

type Command = typeof import('./cli.ts');

/** The built command: one script, wrapped as a function of what a module is given. */
const PROGRAM = 'program.cjs';
/** What the engine made of it when it was built. Another engine finds that it does not fit, and reads the script itself. */
const COMPILED = 'program.compiled';

/**
 * Loads the built command from its folder. Reading and compiling its code anew takes longer than most commands take to run; so the code that
 * a check runs through is kept compiled beside it.
 */
export function openProgram(folder: URL): { readonly command: Command; readonly script: Script } {
  const filename = fileURLToPath(new URL(PROGRAM, folder));
  const script = new Script(readFileSync(filename, 'latin1'), { filename, cachedData: compiledIn(folder) });
  const program = { exports: {} as Command };
  const wrapped = script.runInThisContext() as (program: { exports: Command }, require: NodeJS.Require, filename: string) => void;
  wrapped(program, createRequire(filename), filename);
  return { command: program.exports, script };
}

function compiledIn(folder: URL): Buffer | undefined {
  try {
    return readFileSync(new URL(COMPILED, folder));
  } catch {
    return undefined;
  }
}
