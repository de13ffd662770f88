import { expect, test } from 'vitest';
import { FIRST_QUESTIONS } from './firstQuestions.ts';
import { readAnswer } from './readAnswer.ts';

const read = (key: string, typed: string, so?: object) => {
  const question = FIRST_QUESTIONS.find((one) => one.key === key);
  if (question === undefined) throw new Error(`no question ${key}`);
  return readAnswer(question, typed, so);
};

test.each<[string, string, number]>([
  ['aspect', '2.39', 2.39], ['aspect', '2,39', 2.39], ['aspect', '2.39:1', 2.39], ['aspect', '16:9', 16 / 9], ['tStop', 'T2.8', 2.8], ['tStop', 'T/4', 4], ['packs', '3', 3], ['distanceMm', '1.68 m', 1680],
  ['distanceMm', `5'6"`, 1676.4], ['distanceMm', 'infinity', Infinity], ['focuserToSensorMm', '0', 0], ['focuserToSensorMm', '0 mm', 0], ['focuserToSensorMm', '0,0', 0],
])('%s %s', (key, typed, value) => expect(read(key, typed)).toEqual({ ok: true, value: Number.isFinite(value) ? (expect.closeTo(value, 9) as number) : value, warnings: [] }));

test.each([
  ['packs', '1.5'], ['widthPx', '2048.5'], ['packs', '0'], ['packs', '-1'], ['tStop', 'fast'], ['tStop', '1e999'], ['packs', '1e99'], ['aspect', '2:0'], ['aspect', ''], ['focuserToSensorMm', 'infinity'], ['distanceMm', '12'], ['distanceMm', '0'], ['distanceMm', '0 mm'],
])('%s %s is refused with what would do', (key, typed) => expect(read(key, typed)).toMatchObject({ ok: false, faults: [{ cure: expect.stringMatching(/Usual|as in/) as string }] }));

test('a pack that cannot feed the body is refused with the reason and with those that can', () => {
  expect(read('pack', 'pack-7v-16', { body: 'body-super-35' })).toMatchObject({
    ok: false, faults: [{ message: '"pack-7v-16" does not serve here: the super 35 body takes no less than 11 V, and this pack ends at 6 V.', cure: expect.stringMatching(/^Choose from: pack-14v-98/) as string }],
  });
});

test.each([
  ['block', 'block-1-7x', 'block-1-75x'], ['block', 'block-1.78x', 'block-1-8x'], ['block', 'block-1-4x', 'block-1-33x'], ['block', 'block-3x', 'block-2x'], ['lens', 'lens-80', 'lens-85'], ['lens', 'anamorphic-1-9x-60', 'anamorphic-1-8x-65'],
  ['pack', 'pack-14v-150', 'pack-14v-147'], ['operator', 'monitor-8-bright', 'monitor-7-bright'], ['block', 'blok-2x', 'block-2x'], ['operator', 'montor-7', 'monitor-7'],
])('%s %s: did you mean the nearest by its numbers, %s', (key, typed, meant) => {
  expect(read(key, typed, {})).toMatchObject({ ok: false, faults: [{ cure: `Did you mean "${meant}"?` }] });
});
