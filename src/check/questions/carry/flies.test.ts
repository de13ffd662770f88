import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { flies } from './flies.ts';

const flying = (change: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft) => {
    draft.days.one.flies = true;
    change(draft);
  });
const add = (parts: Draft) => flying((draft) => Object.assign(draft.kit.parts, parts));
const stand = (massG: number, count = 1) => ({ name: 'Heavy stand', kind: 'stand', massG, count });
const stepsOf = (shoot: ReturnType<typeof flying>) => askOne(flies, shoot).steps ?? [];

test('one person, by hand: packs 3 × 680, body 1900, block 620, focuser 540, lens 290 and a bag of 1200 in the cabin; a screen of 330 in a case of 5000', () => {
  const answer = askOne(flies, flying());
  expect(answer).toMatchObject({ verdict: 'good', needs: { amount: { value: 1 } }, has: { amount: { value: 1 } } });
  expect(answer.steps?.find(({ says }) => says.includes('in the cabin: '))?.amount?.value).toBeCloseTo(3 * 680 + 1900 + 620 + 540 + 290 + 1200, 6);
  expect(answer.steps?.find(({ says }) => says.startsWith('case 1'))?.amount?.value).toBeCloseTo(5330, 6);
  expect(answer.notes?.some((note) => note.includes('2 × Coax') || note.includes('Coax 0.5 m'))).toBe(true);
});

test('a day that does not fly is not asked', () => expect(askAll(flies, tinyShoot())).toEqual([]));

test('five stands of 10 kg: 18 kg net hold one each, 27 kg net two; the case allowance is the cause', () => {
  const answer = askOne(flies, add({ stand: stand(10_000, 5) }));
  expect(answer).toMatchObject({ verdict: 'tight', needs: { amount: { value: 5 } }, says: expect.stringContaining('more cases') as string });
  expect(answer.mends?.map(({ says }) => says).join('\n')).toMatch(/up to 32.kg: 3 cases[\s\S]*Book 4 more cases/);
});

test.each([[18_000, 'tight', 2], [20_000, 'tight', 2], [27_000, 'tight', 2], [27_001, 'fails', 1]])('one thing of %i g in a case of 5 kg: %s (32 kg is the most for one piece)', (massG, verdict, cases) => {
  expect(askOne(flies, add({ stand: stand(massG) }))).toMatchObject({ verdict, needs: { amount: { value: cases } } });
});

test('what breaks and finds no room in the cabin is named, the bodies having gone first', () => {
  const answer = askOne(flies, flying((draft) => { draft.kit.parts.second = { ...draft.kit.parts.body, name: 'Second body', massG: 2500 }; }));
  // 6800 less packs 2040 leave 4760: bodies 2500 and 1900, then 360 for the lens of 290; block and focuser do not go.
  expect(answer).toMatchObject({ verdict: 'tight', says: 'Not all that breaks finds room in the cabin: 1.5× block, Variable diopter in the hold.' });
  expect(answer.mends?.some(({ says }) => says.startsWith('One more to travel'))).toBe(true);
});

test('too large for the cabin by its shape, whatever it weighs', () => {
  const answer = askOne(flies, add({ tele: { name: 'Long lens', kind: 'lens', massG: 500, solids: [{ shape: 'cylinder', diameterMm: 120, lengthMm: 600, along: 'z' }], lens: { mount: 'x', focalLengthMm: 600, squeeze: 1 } } }));
  expect(answer.says).toContain('Long lens in the hold');
});

test('packs no person may carry are left to their own question; the verdict here is not theirs', () => {
  const shoot = add({ big: { name: '190 Wh pack', kind: 'battery', massG: 1200, count: 2, pack: { nominalV: 14.4, capacityAh: 13.2 } } });
  expect(askOne(flies, shoot).verdict).toBe('good');
  expect(stepsOf(shoot).some(({ says }) => says.includes('with nobody') && says.includes('190 Wh pack'))).toBe(true);
});

test('two spares a person of 100 to 160 Wh: four go to two people', () => {
  const shoot = flying((draft) => {
    draft.crew.operator = { role: 'operator' };
    Object.assign(draft.kit.parts['pack-98'], { name: '147 Wh pack', massG: 980, count: 4 });
    draft.kit.parts['pack-98'].pack.capacityAh = 10.2;
  });
  expect(stepsOf(shoot).filter(({ says }) => says.includes('2 × 147 Wh pack'))).toHaveLength(2);
});

test('nobody in the crew counts as one; a part of which there are none does not fly', () => {
  const shoot = flying((draft) => {
    draft.crew = {};
    draft.needs.viewers = {};
    for (const shot of Object.values<Draft>(draft.shots)) delete shot.pulledBy;
    draft.kit.parts.stand = stand(15_000, 0);
  });
  expect(askOne(flies, shoot)).toMatchObject({ verdict: 'good', has: { from: expect.stringContaining('nobody being entered') as string } });
});

test('no mass at all: it names the parts', () => {
  const answer = askOne(flies, flying((draft) => { for (const part of Object.values<Draft>(draft.kit.parts)) delete part.massG; }));
  expect(answer).toMatchObject({ verdict: 'unknown', says: expect.stringContaining('Body') as string });
});

test('200 kinds of 400 g: 80 kg and the screen into five cases of 18 kg net; as many as the sum asks for', () => {
  const parts = Object.fromEntries(Array.from({ length: 200 }, (_, at) => [`extra-${at}`, { name: `Extra ${at}`, kind: 'other', massG: 400 }]));
  expect(askOne(flies, add(parts)).needs).toMatchObject({ amount: { value: 5 }, from: expect.stringContaining('it cannot be fewer') as string });
});

test('ten thousand stands are freight, and it says so at once', () => expect(askOne(flies, add({ stand: stand(10_000, 10_000) }))).toMatchObject({ verdict: 'fails', says: 'The kit is freight, not baggage.' }));

// NIOSH 94-110 by hand, a case 350 mm deep by handles 300 mm up, from the floor over a sill of 700 mm: 23 · 25/37.5 · (1 − 0.003 · 45) · (0.82 + 4.5/70) = 11.73 kg,
// of which the case itself is 5 kg: 6.73 kg of things.
const crewOf = (people: number, count: number, massG = 1000) => flying((draft) => {
  for (let at = 1; at < people; at += 1) draft.crew[`hand-${at}`] = { role: `hand ${at}` };
  for (const part of Object.values<Draft>(draft.kit.parts)) delete part.massG;
  draft.kit.parts.stand = stand(massG, count);
});
const casesOf = (shoot: ReturnType<typeof flying>) => stepsOf(shoot).flatMap(({ says, amount }) => (says.startsWith('case ') ? (amount?.value ?? []) : []));
const notesOf = (shoot: ReturnType<typeof flying>) => askOne(flies, shoot).notes?.join(' ');

test('12 kg and three tickets: two cases that one person lifts each, though one would hold it all', () => {
  expect(casesOf(crewOf(3, 12))).toEqual([11_000, 11_000]);
  expect(askOne(flies, crewOf(3, 12)).needs?.from).toContain('by mass 1 would do');
  expect(notesOf(crewOf(3, 12))).toContain('within what one person should lift');
});

test('17 kg and two tickets: three would be light enough, but one more than comes with them; two as even as goes', () => {
  expect(casesOf(crewOf(2, 17)).toSorted((a, b) => a - b)).toEqual([13_000, 14_000]);
  expect(notesOf(crewOf(2, 17))).toMatch(/two people\. Light enough for one person they would be 3, 1 more than come with the tickets\./);
});

test('one ticket, 12 kg: one case, never a second for its weight', () => expect(casesOf(crewOf(1, 12))).toEqual([17_000]));

test('a thing of 8 kg is more than one person should lift whatever else is in the case, and it is said', () => {
  expect(casesOf(crewOf(3, 2, 8000))).toEqual([13_000, 13_000]);
  expect(notesOf(crewOf(3, 2, 8000))).toContain('Too heavy for one person whatever else is in the case: Heavy stand.');
});

test('a case lists all that is in it', () => {
  const parts = Object.fromEntries(Array.from({ length: 30 }, (_, at) => [`extra-${at}`, { name: `Extra ${at}`, kind: 'other', massG: 100 }]));
  expect(stepsOf(add(parts)).find(({ says }) => says.startsWith('case 1'))?.says).toMatch(/Extra 0 .*Extra 29/);
});
