import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** A program or file of a Debian package that a test holds the code against. Where it is not installed, the test is skipped, and says so. */
export interface OutsideTool {
  readonly missing: boolean;
}

/** A program: `run` gives what it prints. */
export function outsideProgram(program: string, debianPackage = program): OutsideTool & { run: (args: readonly string[], input?: Uint8Array) => string } {
  const missing = spawnSync('which', [program]).status !== 0;
  if (missing) warn(debianPackage);
  return {
    missing,
    run: (args, input) => {
      const { stdout, stderr, error } = spawnSync(program, args, { ...(input === undefined ? {} : { input }), maxBuffer: 1e8 });
      if (error !== undefined) throw error;
      return `${String(stdout)}${String(stderr)}`;
    },
  };
}

/** A file at the first of some places. */
export function outsideFile(places: readonly string[], debianPackage: string): OutsideTool & { path: string } {
  const path = places.find((place) => existsSync(place));
  if (path === undefined) warn(debianPackage);
  return { missing: path === undefined, path: path ?? '' };
}

function warn(debianPackage: string): void {
  // oxlint-disable-next-line no-console -- a check against the outside that did not run must be seen
  console.warn(`SKIPPED: the checks against the Debian package ${debianPackage}, which is not installed here.`);
}
