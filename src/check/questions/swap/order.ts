import type { Patch } from '../../../shoot/edit/Edit.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeYes } from '../../judge.ts';
import { shotName } from '../../nameAt.ts';
import { type DayOrder, dayOrder } from '../../quantities/dayOrder.ts';
import { question } from '../../question.ts';

/** Less than this saved is not worth reordering a day for. */
const WORTH_MIN = 2;

export const order = question<{ readonly day: string }>({
  id: 'swap.order',
  asks: 'Are the shots in the order that costs least work on the camera?',
  kind: 'immediate',
  explains:
    'Every change from one shot to the next has its minutes (see the lens changes; another build costs more). Among all orders that keep shots of one block together and what must come after what, the one with the least total is looked for: exactly up to 14 blocks, and further where the constraints leave few ways; above that a good order and a bound that none undercuts. ' +
    'Light, actors and places decide the day; this is only what the camera would like.',
  sources: ['Bellman 1962; Held & Karp 1962; sequential ordering: Escudero 1988', 'minutes of a change: estimate, common practice'],
  subjects: (ledger) => ledger.keys('days').map((day) => ({ day })),
  ask: (asking, { day }) => {
    const found = dayOrder(asking, day);
    if (found === undefined) return null;
    if (typeof found === 'string') return cannotJudge(found);
    const savedMin = found.plannedMin - found.bestMin;
    return judgeYes({
      yes: true,
      caution: savedMin > WORTH_MIN,
      needs: { amount: { value: found.plannedMin, unit: 'min' }, from: 'changes in the planned order (estimate)', word: 'planned' },
      has: { amount: { value: found.bestMin, unit: 'min' }, from: found.method === 'exact' ? 'least of all orders allowed (exact)' : `a good order, perhaps not the best; none takes less than ${printAmount({ value: found.atLeastMin, unit: 'min' })}`, word: 'least' },
      says: { holds: 'The shots stand in an order that costs little work.', tight: 'Another order of the shots would cost less work on the camera.', fails: '' },
      steps: found.best.map(({ shots }, at) => ({ says: `${at + 1}. ${shots.map((shot) => shotName(asking.ledger, shot)).join(', ')}` })),
      mends: savedMin > WORTH_MIN ? [reorder(asking, found)] : [],
      notes: ['Light, actors and places come first.'],
    });
  },
});

function reorder({ ledger }: Asking, { best, plannedMin, bestMin }: DayOrder): Mend {
  const shots = best.flatMap((block) => block.shots);
  const places = shots.map((shot, at) => (ledger.at(`shots/${shot}/order`) as number | undefined) ?? at + 1).toSorted((a, b) => a - b);
  const distinct = new Set(places).size === places.length ? places : shots.map((_, at) => at + 1);
  const patches = shots.map((shot, at): Patch => ({ op: 'add', path: `shots/${shot}/order`, value: distinct[at] }));
  const says = 'Take the shots in the order with the least work';
  return { says, edit: { says, patches }, costs: `saves ${printAmount({ value: plannedMin - bestMin, unit: 'min' })} of changes` };
}
