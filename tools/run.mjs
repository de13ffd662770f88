import { spawnSync } from 'node:child_process';

/** Runs a program and ends this one where it fails. */
export function run(program, args, options = {}) {
  const { status, error } = spawnSync(program, args, { stdio: 'inherit', ...options });
  if (error !== undefined) throw error;
  if (status !== 0) process.exit(status ?? 1);
}

/** Runs a program and says whether it went well. */
export function succeeds(program, args, options = {}) {
  return spawnSync(program, args, { stdio: 'inherit', ...options }).status === 0;
}
