import * as z from 'zod';
import { nearestName } from '../../faults/nearestName.ts';
import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative, orInfinity, text, whole } from '../inputs.ts';
import { exactOrder } from './sequencing/exactOrder.ts';
import { goodOrder, lawfulOrder } from './sequencing/goodOrder.ts';
import { type Sequence, leastCost } from './sequencing/Sequence.ts';

export interface SwapOrder {
  order: string[];
  totalMin: number;
  method: 'exact' | 'heuristic';
  atLeastMin: number;
}

const minutes = (meaning: string) => orInfinity(nonNegative('min', meaning));
const block = z.strictObject({
  name: text('name, one of a kind'),
  after: z.array(text('name of a block that must come before')).optional(),
  place: whole(1, 'count', 'place it must have, counted from 1').optional(),
});

/** The order of the day with the least work on the camera. What each change costs is the caller's: `costsMin`. */
export const swapOrder = calculator(
  {
    name: 'mechanics.swapOrder',
    sentence: 'The order of blocks of shots that costs the fewest minutes of changing over, under fixed constraints.',
    inputs: inputs({
      blocks: z.array(block).min(1).meta(
        { unit: '', description: 'blocks of shots; `after`: blocks that must come before; `place`: where it is fixed, counted from 1' },
      ),
      costsMin: z.array(z.array(minutes('minutes'))).meta(
        {
          unit: 'min',
          description: 'row for each block: minutes from it to each block, in their order (its own entry does not count); null: cannot follow',
        },
      ),
      firstMin: z.array(minutes('minutes')).optional().meta({ unit: 'min', description: 'minutes to begin with each block; absent: none' }),
    }),
    results: {
      order: 'names, in order',
      totalMin: 'min, of all changes',
      method:
        '"exact": no order is better; "heuristic": a good one, perhaps not the best. ' +
        'Exact for 14 blocks, and for up to 30 where constraints leave few ways',
      atLeastMin: 'min that no order undercuts; the total itself where exact',
    },
    formula:
      'exact: least cost of each set of blocks done and the last of them (dynamic programming); ' +
      'heuristic: iterated local search that moves stretches; bound: each block\'s cheapest way in',
    source: 'Bellman 1962; Held & Karp 1962; the sequential ordering problem of Escudero 1988',
    examples: [
      {
        given: { blocks: [{ name: 'wide' }, { name: 'long' }, { name: 'wide again' }], costsMin: [[0, 12, 2], [12, 0, 12], [2, 12, 0]] },
        gives: { totalMin: '14', method: 'exact', atLeastMin: '14' },
        source: 'by hand: the two wide ones together, one lens change',
      },
      {
        given: {
          blocks: [{ name: 'wide' }, { name: 'long' }, { name: 'wide again', after: ['long'] }], costsMin: [[0, 12, 2], [12, 0, 12], [2, 12, 0]],
        },
        gives: { totalMin: '14', method: 'exact' },
        source: 'by hand: the long one first',
      },
    ],
  },
  (given): SwapOrder => {
    const sequence = sequenceOf(given);
    const exact = exactOrder(sequence);
    const { order, cost } = exact ?? goodOrder(sequence);
    if (cost === Infinity) throw new NoAnswer('blocks', whyNone(sequence, exact !== undefined));
    return {
      order: order.map((k) => given.blocks[k]!.name),
      totalMin: cost,
      method: exact === undefined ? 'heuristic' : 'exact',
      atLeastMin: exact === undefined ? Math.min(cost, leastCost(sequence)) : cost,
    };
  },
);

function whyNone(sequence: Sequence, exact: boolean): string {
  if (lawfulOrder(sequence) === undefined) return 'No order keeps both the fixed places and what must come before what. Free one of them.';
  const found = exact ? 'No order avoids' : 'No order was found that avoids';
  return `${found} every change that is marked as impossible (null). Allow one of them, or free a constraint.`;
}

interface Given {
  readonly blocks: readonly z.output<typeof block>[];
  readonly costsMin: readonly (readonly number[])[];
  readonly firstMin?: readonly number[] | undefined;
}

function sequenceOf({ blocks, costsMin, firstMin }: Given): Sequence {
  const count = blocks.length;
  needsLength(costsMin, count, 'costsMin');
  costsMin.forEach((row, i) => needsLength(row, count, `costsMin/${i}`));
  if (firstMin !== undefined) needsLength(firstMin, count, 'firstMin');
  return {
    count,
    costs: Float64Array.from(costsMin.flat()),
    firstCosts: Float64Array.from(firstMin ?? blocks.map(() => 0)),
    before: everythingBefore(directlyBefore(blocks), blocks.map(({ name }) => name)),
    places: placesOf(blocks),
  };
}

function needsLength(list: readonly unknown[], count: number, path: string): void {
  if (list.length !== count) throw new NoAnswer(path, `Found ${list.length} entries for ${count} blocks; give one for each.`);
}

function directlyBefore(blocks: Given['blocks']): number[][] {
  const names = blocks.map(({ name }) => name);
  blocks.forEach(({ name }, i) => {
    if (names.indexOf(name) !== i) throw new NoAnswer(`blocks/${i}/name`, `There are two blocks named "${name}". Give each a name of its own.`);
  });
  return blocks.map(({ after = [] }, i) =>
    after.map((name, k) => {
      const index = names.indexOf(name);
      if (index >= 0) return index;
      const near = nearestName(name, names);
      throw new NoAnswer(`blocks/${i}/after/${k}`, `There is no block named "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`}`);
    }),
  );
}

/** What comes before each, through any number of steps; a ring is named. */
function everythingBefore(direct: readonly (readonly number[])[], names: readonly string[]): Set<number>[] {
  const before = direct.map((list) => new Set(list));
  for (let through = 0; through < before.length; through++) {
    for (const set of before) if (set.has(through)) for (const one of before[through]!) set.add(one);
  }
  const ring = [...before.keys()].filter((k) => before[k]!.has(k));
  if (ring.length > 0) throw new NoAnswer(
    `blocks/${ring[0]}/after`, `These wait for one another, so none can be first: ${ring.map((k) => `"${names[k]}"`).join(', ')}.`,
  );
  return before;
}

function placesOf(blocks: Given['blocks']): Int32Array {
  const places = Int32Array.from(blocks, ({ place }) => (place === undefined ? -1 : place - 1));
  places.forEach((place, i) => {
    if (place >= blocks.length) throw new NoAnswer(`blocks/${i}/place`, `Found place ${place + 1} among ${blocks.length} blocks.`);
    if (place >= 0 && places.indexOf(place) !== i) throw new NoAnswer(
      `blocks/${i}/place`, `"${blocks[places.indexOf(place)]!.name}" has place ${place + 1} already.`,
    );
  });
  return places;
}
