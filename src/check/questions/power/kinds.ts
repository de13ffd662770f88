import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { packsOfDay } from '../../quantities/batteryDay.ts';
import { question } from '../../question.ts';
import { power as assumed } from '../../../standards/assumptions/power.ts';

export const kinds = question({
  id: 'power.kinds',
  asks: 'How many kinds of battery must be kept apart in a day?',
  kind: 'immediate',
  explains: 'Every kind wants its own spares, chargers and somebody who knows which is full. Counted over all packs that the setups of a day run on, against the most that is wanted. What one common battery would save, and darken, is asked of each setup apart.',
  sources: ['common practice'],
  subjects: (ledger) => ledger.keys('days').filter((day) => packsOfDay(ledger, day).length > 0).map((day) => ({ day })),
  ask: (asking, { day }) => {
    const packs = packsOfDay(asking.ledger, day);
    const stated = asking.ledger.at('needs/batteryKinds') as number | undefined;
    const usual = stated === undefined ? asking.assume(assumed.batteryKinds) : undefined;
    const most = stated ?? usual?.value ?? 0;
    const names = packs.map(({ part }) => part.name);
    return judgeRatio({
      needs: { amount: { value: packs.length, unit: 'count' }, from: names.join(', '), word: 'in use' },
      has: { amount: { value: most, unit: 'count' }, from: usual === undefined ? 'kinds wanted at most' : `kinds that a small crew keeps apart ${origin(usual)}`, word: 'wished at most' },
      says: { holds: packs.length === 1 ? `One kind of battery serves the day: ${names[0] ?? ''}.` : `${packs.length} kinds of battery serve the day.`, fails: `${packs.length} kinds of battery are used in a day: ${names.join(', ')}.` },
      goodUpTo: 1,
    });
  },
});
