import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { tinyShoot } from '../../test/tinyShoot.ts';
import { Checker } from './Checker.ts';
import { judgeYes } from './judge.ts';
import { question } from './question.ts';

const PART = 'Clamp, 15 mm (old)';
const BUILD = 'Handheld, alone';

/** Says one sentence, whatever is asked. */
const answerOf = (sentence: string, part = PART) => {
  const one = question<{ readonly build: string }>({
    id: 'carry.one', asks: 'Is it?', kind: 'immediate', explains: '', sources: [],
    subjects: () => [{ build: 'camera' }],
    ask: () => judgeYes({ yes: false, says: { holds: '', fails: sentence }, steps: [{ says: sentence }], mends: [{ says: sentence, edit: { says: sentence, patches: [] } }], notes: [sentence] }),
  });
  const shoot = tinyShoot((draft) => {
    draft.kit.parts.body.name = part;
    draft.kit.parts['monitor-5'].name = `${PART}, spare`;
    draft.builds.camera.name = BUILD;
  });
  const [answer] = new Checker(shoot, [one]).answers();
  if (answer === undefined) throw new Error('Not asked.');
  return answer;
};

test('a name that holds a comma stands in quotation marks wherever an answer speaks, and bare where it labels', () => {
  const answer = answerOf(`One person can lift ${BUILD} to the chest with ${PART}, by hand.`);
  const said = `One person can lift “${BUILD}” to the chest with “${PART}”, by hand.`;
  expect(answer).toMatchObject({ says: said, steps: [{ says: said }], mends: [{ says: said, edit: { says: said } }], notes: [said], about: [BUILD] });
});

test('the longer of two names counts, what is quoted stays so, and names without a comma stay bare', () => {
  expect(answerOf(`${PART}, spare turns the lens`).says).toBe(`“${PART}, spare” turns the lens`);
  expect(answerOf(`In “${BUILD}” Variable diopter holds`).says).toBe(`In “${BUILD}” Variable diopter holds`);
  expect(answerOf(`pre${PART}`).says).toBe(`pre${PART}`);
});

property.prop([fc.string({ minLength: 1, maxLength: 12 }), fc.string({ minLength: 1, maxLength: 12 })])('whatever signs a name is written with', (before, after) => {
  // The file takes names without blanks at their ends.
  const name = `x${before}, ${after}x`;
  expect(answerOf(`It is ${name} that slips.`, name).says).toBe(`It is “${name}” that slips.`);
});
