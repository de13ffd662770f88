import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { stop } from './stop.ts';

/** The tiny shoot's lens alone, or with front glass that takes a share. */
const with58 = (lens: object, front: { block: number; focuser: number } | undefined, tStop: number) =>
  tinyShoot((draft: Draft) => {
    const { parts } = draft.kit;
    const { tStop: _t, fNumber: _f, ...rest } = parts['taking-58'].lens;
    parts['taking-58'].lens = { ...rest, ...lens };
    draft.shots.portrait.tStop = tStop;
    if (front === undefined) draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } };
    else {
      parts['block-1-5'].block.transmittance = front.block;
      parts.focuser.focuser.transmittance = front.focuser;
    }
  });

// T = N/√τ: the published example of the handbook, N 2, τ 0.75 gives 2.309; half the light is one stop.
test.each([
  ['three quarters of the light', { fNumber: 2, transmittance: 0.75 }, undefined, 2.3094],
  ['half of it again in front', { fNumber: 2, transmittance: 0.75 }, { block: 0.5, focuser: 1 }, 2.3094 * Math.SQRT2],
] as const)('the whole opens as far as the light lets it: %s', (_, lens, front, widest) => {
  expect(askOne(stop, with58(lens, front, 5.6)).has?.amount).toMatchObject({ unit: 'T', value: expect.closeTo(widest, 3) as number });
});

test('a stop short fails, and the mend opens no wider than the glass', () => {
  const answer = askOne(stop, with58({ fNumber: 2, tStop: 2 }, { block: 0.5, focuser: 1 }, 2));
  expect(answer.verdict).toBe('fails');
  expect(answer.use).toBeCloseTo(2 ** (1 - 1 / 6), 6); // one stop, a sixth forgiven
  expect(answer.mends?.[0]?.edit?.patches).toEqual([{ op: 'replace', path: 'shots/portrait/tStop', value: 2.9 }]);
  expect(answer.mends?.[0]?.use).toBeLessThanOrEqual(1);
});

test('where the light that passes is not known it is assumed, and the answer says so', () => {
  const answer = askOne(stop, with58({ tStop: 2 }, undefined, 4));
  expect(answer.verdict).toBe('good');
  expect(answer.notes?.[0]).toMatch(/assumed/);
  // 4·√0.8, between 4·√0.65 and 4·√0.95: common practice, a tenth to a third of a stop.
  expect(answer.steps?.at(-1)?.amount?.value).toBeCloseTo(4 * Math.sqrt(0.8), 9);
});

test('without any widest stop it is not entered', () => {
  expect(askOne(stop, with58({}, undefined, 4))).toMatchObject({ verdict: 'unknown', unknown: 'not entered' });
});
