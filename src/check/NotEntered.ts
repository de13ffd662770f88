import type { Missing } from './answer.ts';

/** Thrown while a question is asked, or a quantity worked out, for want of something the user has not entered. */
export class NotEntered extends Error {
  readonly missing: readonly Missing[];

  constructor(missing: readonly Missing[]) {
    super(`Not entered: ${missing.map(({ path }) => path).join(', ')}`);
    this.name = 'NotEntered';
    this.missing = missing;
  }
}
