import { expect, test } from 'vitest';
import { type Draft, exampleShoot } from '../../test/tinyShoot.ts';
import { Checker } from './Checker.ts';
import { questions } from './questions/index.generated.ts';

/** The demo with every direction of every point so many times as long. */
const stretched = (times: number) => exampleShoot('demo', (draft) => {
  for (const part of Object.values<Draft>(draft.kit.parts)) {
    for (const point of Object.values<Draft>(part.points ?? {})) {
      for (const key of ['out', 'up']) if (point[key] !== undefined) point[key] = point[key].map((one: number) => one * times);
    }
  }
});

test('a direction has no length: written with other numbers, it leaves every answer as it is', () => {
  const answersOf = (times: number) => new Checker(stretched(times), questions, 'without cures').answers().map(({ key, verdict, use, says }) => ({ key, verdict, says, use: use === undefined ? undefined : Number(use.toPrecision(6)) }));
  // Powers of two are exact, so that nothing is rounded otherwise.
  const plain = answersOf(1);
  for (const times of [4, 0.25]) expect(answersOf(times)).toEqual(plain);
});
