import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { closeFocus } from './closeFocus.ts';

/** A bare lens that focuses to 1.5 m ahead of its front, and close-up lenses in the kit. */
const withCloseUps = (subject: readonly number[], powers: readonly number[], shot: object = {}) =>
  tinyShoot((draft: Draft) => {
    const part = draft.kit.parts['taking-58'];
    part.focus = { closeMm: 1500 + 80, datum: 'sensor' };
    draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } };
    for (const power of powers) draft.kit.parts[`plus-${String(power).replace('.', '-')}`] = { name: `Close-up +${power}`, kind: 'close-up', closeUp: { powerDpt: power, fitsMm: [55] } };
    draft.shots.portrait = { ...draft.shots.portrait, subject: subject.map((distanceMm, atS) => ({ atS, distanceMm })), ...shot };
  });

test('closer than the ring goes fails by the ratio', () => {
  const answer = askOne(closeFocus, withCloseUps([790], []));
  expect(answer).toMatchObject({ verdict: 'fails', needs: { amount: { value: 0.79, unit: 'm' } }, has: { amount: { value: 1.58, unit: 'm' } } });
  expect(answer.use).toBeCloseTo(2, 9);
});

test('through +3 dioptres, 1.5 m comes to 0.2727 m and infinity to a third of a metre', () => {
  // The published example of a close-up lens, X/(D·X + 1); the lens front stands 80 mm ahead of the sensor.
  const at = (mm: number) => askOne(closeFocus, withCloseUps([mm + 80], [3], { diopter: 'plus-3' }));
  expect(at(272.8).use).toBeCloseTo(1, 3);
  expect(at(272.8).verdict).toBe('tight');
  expect(at(333).use).toBeCloseTo(1, 2);
  expect(at(340)).toMatchObject({ verdict: 'fails', says: expect.stringContaining('as far as') as string });
});

test('of the kit, the close-up lens that holds both ends is the mend, and its edit makes it good', () => {
  const shoot = withCloseUps([700, 900], [0.5, 1, 3]);
  const answer = askOne(closeFocus, shoot);
  expect(answer.mends?.map(({ says }) => says)[0]).toBe('Put Close-up +1 on the front, ahead of the anamorphot');
  expect(answer.mends?.some(({ says }) => says.includes('+3') || says.includes('+0.5'))).toBe(false);
  const edited = applyEdit(shoot, answer.mends?.[0]?.edit ?? { says: '', patches: [] });
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  expect(askOne(closeFocus, edited.value.shoot).use).toBeCloseTo(answer.mends?.[0]?.use ?? 0, 9);
});

test('where no one power holds both ends, it says so', () => {
  const answer = askOne(closeFocus, withCloseUps([300, 5000], [0.5, 1, 3]));
  expect(answer.notes?.[0]).toMatch(/No one close-up lens/);
});

test('a close-up lens that does not fit the front is not offered', () => {
  const answer = askOne(closeFocus, tinyShoot((draft: Draft) => {
    draft.kit.parts.big = { name: 'Close-up +1, large', kind: 'close-up', closeUp: { powerDpt: 1, fitsMm: [134] } };
    draft.shots.portrait.subject = [{ atS: 0, distanceMm: 800 }];
  }));
  expect(answer.verdict).toBe('fails');
  expect(answer.mends?.every(({ says }) => !says.includes('large'))).toBe(true);
});
