import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { swapOrder } from './swapOrder.ts';

type Given = Parameters<typeof swapOrder>[0];
type Block = Given['blocks'][number];

function best(given: Given) {
  const answer = swapOrder.answer(given);
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults));
  return answer.value;
}

const cost = ({ blocks, costsMin, firstMin }: Given, order: readonly string[]) => {
  const at = order.map((name) => blocks.findIndex((one) => one.name === name));
  return at.reduce((sum, to, k) => sum + (k === 0 ? (firstMin?.[to] ?? 0) : costsMin[at[k - 1]!]![to]!), 0);
};
const keeps = ({ blocks }: Given, order: readonly string[]) =>
  blocks.every(({ name, after = [], place }) => {
    const waits = after.every((one) => order.indexOf(one) < order.indexOf(name));
    return waits && (place === undefined || order[place - 1] === name);
  });

/** Every order of some names. */
function* orders(names: readonly string[]): Generator<string[]> {
  if (names.length === 0) yield [];
  for (const name of names) for (const rest of orders(names.filter((one) => one !== name))) yield [name, ...rest];
}

const days = (size: number) =>
  fc.record({
    costs: fc.array(fc.nat({ max: 30 }), { minLength: size * size, maxLength: size * size }),
    firsts: fc.array(fc.nat({ max: 30 }), { minLength: size, maxLength: size }),
    after: fc.array(fc.tuple(fc.nat({ max: size - 1 }), fc.nat({ max: size - 1 })), { maxLength: 3 }),
    pin: fc.tuple(fc.boolean(), fc.nat({ max: size - 1 }), fc.nat({ max: size - 1 })),
  }).map(({ costs, firsts, after, pin: [pinned, which, place] }): Given => ({
    // Only from a higher to a lower number, so that no ring comes about.
    blocks: Array.from({ length: size }, (_, k): Block => ({
      name: `b${k}`,
      after: after.filter(([a, b]) => Math.max(a, b) === k && a !== b).map(([a, b]) => `b${Math.min(a, b)}`),
      ...(pinned && which === k ? { place: place + 1 } : {}),
    })),
    costsMin: Array.from({ length: size }, (_, k) => costs.slice(k * size, k * size + size)),
    firstMin: firsts,
  }));

const shortDays = fc.integer({ min: 1, max: 6 }).chain(days);

property.prop([shortDays])('to six blocks, nothing among all orders is better, and the constraints are kept', (given) => {
  const lawful = [...orders(given.blocks.map(({ name }) => name))].filter((order) => keeps(given, order));
  const answer = swapOrder.answer(given);
  if (lawful.length === 0) {
    expect(answer).toMatchObject({ ok: false, faults: [{ path: 'blocks' }] });
    return;
  }
  const { order, totalMin, method } = best(given);
  expect(method).toBe('exact');
  expect(keeps(given, order)).toBe(true);
  expect(totalMin).toBe(cost(given, order));
  expect(totalMin).toBe(Math.min(...lawful.map((one) => cost(given, one))));
});

/** Lenses in a row, so many minutes for each step along it: the least is once along the row. */
function rowOfLenses(size: number): Given {
  const lens = (k: number) => (k * 11) % size;
  return {
    blocks: Array.from({ length: size }, (_, k) => ({ name: `lens ${lens(k)}` })),
    costsMin: Array.from({ length: size }, (_, k) => Array.from({ length: size }, (_, j) => 5 * Math.abs(lens(k) - lens(j)))),
  };
}

test.each(
  [[14, 'exact'], [15, 'heuristic'], [24, 'heuristic'], [60, 'heuristic']] as const,
)('%i lenses in a row: once along it, found by the %s way', (size, method) => {
  const given = rowOfLenses(size);
  const answer = best(given);
  expect(answer.method).toBe(method);
  expect(answer.totalMin).toBe(5 * (size - 1));
  expect(answer.atLeastMin).toBeLessThanOrEqual(answer.totalMin);
  expect(new Set(answer.order).size).toBe(size);
});

test('more than 14 blocks are exact too where the days leave few ways', () => {
  const given = rowOfLenses(24);
  const dayOf = (k: number) => Math.floor(k / 8);
  const blocks = given.blocks.map((block, k) => ({
    ...block, after: given.blocks.filter((_, j) => dayOf(j) === dayOf(k) - 1).map(({ name }) => name),
  }));
  const answer = best({ ...given, blocks });
  expect(answer.method).toBe('exact');
  expect(keeps({ ...given, blocks }, answer.order)).toBe(true);
});

property.prop([days(16)], { numRuns: 10 })('the heuristic keeps the constraints and never undercuts its bound', (given) => {
  const answer = swapOrder.answer(given);
  if (!answer.ok) return;
  expect(keeps(given, answer.value.order)).toBe(true);
  expect(answer.value.totalMin).toBe(cost(given, answer.value.order));
  expect(answer.value.totalMin).toBeGreaterThanOrEqual(answer.value.atLeastMin);
});

test('on twelve blocks with constraints the heuristic comes within a tenth of the exact answer', async () => {
  const { goodOrder } = await import('./sequencing/goodOrder.ts');
  const { exactOrder } = await import('./sequencing/exactOrder.ts');
  let state = 9;
  const random = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  for (let run = 0; run < 20; run++) {
    const count = 12;
    const sequence = {
      count, costs: Float64Array.from({ length: count * count }, () => 1 + Math.floor(30 * random())), firstCosts: new Float64Array(count),
      before: Array.from(
        { length: count }, (_, k) => new Set(k > 3 && k % 3 === 0 ? [k - 3] : []),
      ), places: new Int32Array(count).fill(-1).fill(0, 5, 6),
    };
    // Through any number of steps.
    sequence.before.forEach((set, k) => [...set].forEach((one) => sequence.before[one]!.forEach((earlier) => sequence.before[k]!.add(earlier))));
    expect(goodOrder(sequence).cost).toBeLessThanOrEqual(1.1 * exactOrder(sequence)!.cost);
  }
});

const three = (blocks: Block[]): Given => ({ blocks, costsMin: [[0, 1, 1], [1, 0, 1], [1, 1, 0]] });

test.each([
  ['blocks/0/after', three([{ name: 'a', after: ['b'] }, { name: 'b', after: ['a'] }, { name: 'c' }]), 'wait for one another'],
  ['blocks/1/after/0', three([{ name: 'morning' }, { name: 'b', after: ['mourning'] }, { name: 'c' }]), 'Did you mean "morning"?'],
  ['blocks/1/name', three([{ name: 'a' }, { name: 'a' }, { name: 'c' }]), 'two blocks'],
  ['blocks/1/place', three([{ name: 'a', place: 1 }, { name: 'b', place: 1 }, { name: 'c' }]), 'has place 1 already'],
  ['blocks', three([{ name: 'a', place: 1 }, { name: 'b' }, { name: 'c', place: 2, after: ['a', 'b'] }]), 'keeps both'],
  ['costsMin/1', { ...three([{ name: 'a' }, { name: 'b' }, { name: 'c' }]), costsMin: [[0, 1, 1], [1], [1, 1, 0]] }, 'give one for each'],
  [
    'blocks',
    {
      ...three([{ name: 'a' }, { name: 'b' }, { name: 'c' }]), costsMin: [[0, Infinity, Infinity], [Infinity, 0, Infinity], [Infinity, Infinity, 0]],
    },
    'avoids',
  ],
])('%s: %o', (path, given, says) => {
  const asJson = JSON.parse(JSON.stringify(given)) as unknown;
  expect(swapOrder.answer(asJson)).toMatchObject({ ok: false, faults: [{ path, message: expect.stringContaining(says) }] });
});
