import { fc, test as property } from '@fast-check/vitest';
import { expect, test as plainTest } from 'vitest';
import { checkShoot } from '../read.ts';
import { FIRST_QUESTIONS, type FirstAnswers } from './firstQuestions.ts';
import { newShoot } from './newShoot.ts';

/** Any way through the questions: each picks one of its choices or the usual answer. */
const answersFrom = (picks: readonly number[]): FirstAnswers => {
  const answers: Record<string, unknown> = {};
  FIRST_QUESTIONS.forEach(({ key, kind, choices, usual }, at) => {
    const among = choices?.(answers);
    if (among !== undefined) answers[key] = among[(picks[at] ?? 0) % among.length];
    else answers[key] = kind === 'text' ? usual(answers) : kind === 'length' ? 1500 : Number(usual(answers));
  });
  return answers as unknown as FirstAnswers;
};

property.prop([fc.array(fc.nat({ max: 60 }), { minLength: FIRST_QUESTIONS.length, maxLength: FIRST_QUESTIONS.length })], { numRuns: 80 })(
  'whatever is answered, the first shoot reads without a fault and counts its cables',
  (picks) => {
    const shoot = newShoot(answersFrom(picks));
    const read = checkShoot(shoot);
    expect(read.ok ? [] : read.faults).toEqual([]);
    const lines = Object.values(shoot.builds).flatMap(({ lines: own = {} }) => Object.values(own));
    for (const [id, { kind, count }] of Object.entries(shoot.kit.parts)) if (kind === 'cable') expect(count).toBe(lines.filter(({ cable }) => cable === id).length);
  },
);

const usual = (given: Partial<FirstAnswers>): FirstAnswers => {
  const answers: Record<string, unknown> = {};
  for (const { key, kind, usual: usually } of FIRST_QUESTIONS) answers[key] = given[key] ?? (kind === 'number' ? Number(usually(answers)) : kind === 'length' ? 1500 : usually(answers));
  return answers as unknown as FirstAnswers;
};

plainTest('what was not asked is written as an estimate', () => {
  const { days, needs, shots } = newShoot(usual({}));
  expect(days?.['first']).toMatchObject({ temperatureC: { basis: 'estimate' }, illuminanceLux: { basis: 'estimate' } });
  expect(needs?.viewers?.['puller']).toMatchObject({ distanceMm: { basis: 'estimate' } });
  expect(shots?.['first']).toMatchObject({ linkDistanceM: { basis: 'estimate' } });
});

plainTest('packs of 26 V feed 14 V devices through taps that are brought down (common practice)', () => {
  const { builds, kit } = newShoot(usual({ pack: 'pack-26v-98' }));
  const plate = kit.parts[builds['camera']?.pieces['plate']?.of ?? ''];
  expect(Object.values(plate?.ports ?? {}).map(({ power }) => power?.outputV)).toEqual([14.4, 14.4, 14.4]);
});
