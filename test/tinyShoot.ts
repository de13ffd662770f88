import { readFileSync } from 'node:fs';
import { checkShoot } from '../src/shoot/read.ts';
import type { Shoot } from '../src/shoot/schema/shoot.ts';

/** A shoot from the examples, changed by `change`, that still reads without a fault. */
export function exampleShoot(file: string, change: (draft: Draft) => void = () => undefined): Shoot {
  const draft = JSON.parse(readFileSync(new URL(`../examples/${file}.shoot.json`, import.meta.url), 'utf8')) as Draft;
  change(draft);
  const read = checkShoot(draft);
  if (!read.ok) throw new Error(`The test's shoot has faults: ${JSON.stringify(read.faults, null, 1)}`);
  return read.value;
}

/** The smallest example: one lens, one block, one puller. */
export const tinyShoot = (change?: (draft: Draft) => void): Shoot => exampleShoot('tiny', change);

/** Test data is changed freely; what it became is checked afterwards. */
// oxlint-disable-next-line typescript/no-explicit-any
export type Draft = any;
