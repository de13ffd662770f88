import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { counterbalance } from './counterbalance.ts';

test('2 kg, 104 mm above the plate and 60 mm more to the tilt axis: m·g·h = 3.217 N·m', () => {
  const answer = askOne(counterbalance, headShoot(), 'glass=normal');
  expect(answer.needs?.amount.value).toBeCloseTo(2 * 9.80665 * 0.164, 4);
  expect(answer.verdict).toBe('good');
  expect(answer.notes).toContain('Estimate, not a load rating.');
});

test('a head that states where its tilt axis lies is taken at its word', () => {
  const answer = askOne(counterbalance, headShoot((draft) => (draft.kit.parts.head.carrier.tiltAxisBelowPlateMm = 35)), 'glass=normal');
  expect(answer.needs?.amount.value).toBeCloseTo(2 * 9.80665 * 0.139, 4);
  expect(answer.needs?.from).toContain('(sheet)');
});

test('a weaker spring lets it fall, and says how low the centre would have to be', () => {
  // 3 N·m hold 2 kg up to 152.96 mm above the axis: 92 mm above the plate, to the whole millimetre.
  const answer = askOne(counterbalance, headShoot((draft) => (draft.kit.parts.head.carrier.counterbalanceNm = 3)), 'glass=normal');
  expect(answer).toMatchObject({ verdict: 'fails', mends: [{ says: expect.stringContaining('92') as string, use: expect.closeTo((2 * 9.80665 * 0.152) / 3, 6) as number }] });
});

test('a spring that only just holds it is eased like its neighbours: to nine tenths', () => {
  const answer = askOne(counterbalance, headShoot((draft) => {
    draft.kit.parts.head.carrier.counterbalanceNm = 3.3;
    draft.kit.parts.other = { name: 'Other head', kind: 'head', carrier: { kind: 'head', counterbalanceNm: 3.25 } };
    draft.kit.parts.stronger = { name: 'Stronger head', kind: 'head', carrier: { kind: 'head', counterbalanceNm: 5 } };
  }), 'glass=normal');
  // 3.217 of 3.3; nine tenths hold 2 kg 151.4 mm above the axis, 91 above the plate.
  expect(answer).toMatchObject({ verdict: 'tight', mends: [{ says: expect.stringMatching(/91\s?mm above/) as string, use: expect.closeTo((2 * 9.80665 * 0.151) / 3.3, 6) as number }, { says: 'Stronger head instead' }] });
});

test('a heavy piece up high is carried lower, and a stronger head of the kit is named', () => {
  const answer = askOne(counterbalance, headShoot((draft) => {
    draft.kit.parts.head.carrier.counterbalanceNm = 4.2;
    draft.kit.parts.stronger = { name: 'Stronger head', kind: 'head', carrier: { kind: 'head', counterbalanceNm: 5, payloadG: 8000 } };
    // 500 g with its middle 200 mm above the plate.
    draft.kit.parts.weight = { name: 'Weight', kind: 'other', massG: 500, points: { foot: { kind: 'thread', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } } };
    draft.kit.parts.body.points.top = { kind: 'hole', class: '1/4-20', sex: 'female', at: [0, 96, -37], out: [0, 1, 0], up: [0, 0, 1] };
    draft.builds.camera.pieces.weight = { of: 'weight' };
    draft.builds.camera.joints.weight = { a: 'body/top', b: 'weight/foot' };
  }), 'glass=normal');
  // 2.5 kg, moments about the axis: 2000 g at 164 mm, 500 g at 260 mm: 183.2 mm. 4.2 N·m hold it at 171.3 mm, to the whole millimetre at 171: five times as far down for a fifth of the mass.
  const centre = (2000 * 164 + 500 * 260) / 2500;
  expect(answer.needs?.amount.value).toBeCloseTo((2.5 * 9.80665 * centre) / 1000, 3);
  expect(answer.mends?.[0]).toMatchObject({ says: expect.stringMatching(/Carry Weight 61\s?mm lower/) as string, use: expect.closeTo((2.5 * 9.80665 * 0.171) / 4.2, 3) as number });
  expect(answer.mends?.find(({ says }) => says === 'Stronger head instead')?.use).toBeCloseTo((2.5 * 9.80665 * centre) / 5000, 3);
});

test('a head without a counterbalance is not asked about', () => expect(askAll(counterbalance, headShoot((draft) => delete draft.kit.parts.head.carrier.counterbalanceNm))).toEqual([]));

test('while the mass of one piece is not entered, no head holds it; what falls without it falls', () => {
  const without = (counterbalanceNm: number) => askOne(counterbalance, headShoot((draft) => {
    delete draft.kit.parts.motor.massG;
    draft.kit.parts.head.carrier.counterbalanceNm = counterbalanceNm;
  }));
  expect(without(40)).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing: [{ path: 'kit/parts/motor/massG' }] });
  expect(without(1).verdict).toBe('fails');
});

test('it presumes the camera slid to balance; where the plate does not reach, it is not told to hold', () => {
  // The centre lies 17 mm behind the middle of the plate, which goes 45 mm either way; with 20 mm of travel 7 mm are left: 2 kg × g × 7 mm.
  expect(askOne(counterbalance, headShoot(), 'glass=normal').says).toBe('Slid to balance, Head holds the camera at any tilt.');
  const short = (counterbalanceNm: number) => askOne(counterbalance, headShoot((draft) => Object.assign(draft.kit.parts.head.carrier, { plateTravelMm: 20, counterbalanceNm })), 'glass=normal');
  expect(short(4)).toMatchObject({ verdict: 'unknown', unknown: 'could not judge', says: expect.stringContaining('does not slide far enough') as string });
  expect(short(4).steps?.map(({ amount }) => amount?.value).slice(0, 2)).toEqual([expect.closeTo(7, 6), expect.closeTo(2 * 9.80665 * 0.007, 6)]);
  expect(short(3).verdict).toBe('fails');
});
