import { printAmount } from '../../../units/print.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { headLoad } from '../../quantities/headLoad.ts';
import { leftOut } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { eachSetup, glassesOf } from '../../subjects.ts';

export const travel = question<{ readonly setup: string }>({
  id: 'balance.travel',
  asks: 'Does the plate of the head slide far enough to balance every lens?',
  kind: 'immediate',
  explains:
    'With each lens the centre of mass stands some way ahead of or behind the middle of the head. To balance, the plate has to be slid by as much from the middle of its travel; the lens that asks for most decides. How far the plate slides from lens to lens is what has to be done again at each change.',
  sources: ['statics of rigid bodies'],
  subjects: (ledger) => eachSetup(ledger),
  ask: (asking, { setup }) => {
    const all = glassesOf(asking.ledger, setup).flatMap((glass) => {
      const load = headLoad(asking, { setup, glass });
      return load === undefined ? [] : [{ glass, load, offMm: load.aheadMm }];
    });
    const [first] = all;
    if (first === undefined) return null;
    const stated = first.load.head.part.figure('carrier/plateTravelMm');
    const { slide } = first.load;
    const halfMm = stated === undefined ? (slide === undefined ? undefined : (slide.highMm - slide.lowMm) / 2) : stated.value / 2;
    if (halfMm === undefined) return null;
    // Where the plate stands now, ahead of the middle of its travel, has to be undone as well.
    const now = slide === undefined ? 0 : slide.valueMm - (slide.highMm + slide.lowMm) / 2;
    const wanted = all.map(({ glass, offMm }) => ({ glass, mm: now - offMm }));
    const worst = wanted.reduce((most, one) => (Math.abs(one.mm) > Math.abs(most.mm) ? one : most));
    const name = (glass: string) => nameAt(asking.ledger, 'glasses', glass);
    const spread = Math.max(...wanted.map(({ mm }) => mm)) - Math.min(...wanted.map(({ mm }) => mm));
    const shiftMm = Math.abs(worst.mm) - halfMm;
    return judgeRatio({
      needs: { amount: { value: Math.abs(worst.mm), unit: 'mm' }, from: `${worst.mm < 0 ? 'back' : 'forward'} from the middle, ${name(worst.glass)}` },
      has: { amount: { value: halfMm, unit: 'mm' }, from: stated === undefined ? 'half the range of the plate' : 'half the travel of the plate' },
      says: {
        holds: 'Every lens of the set can be balanced on the head.', tight: `${name(worst.glass)} can just be balanced on the head.`,
        fails: `${name(worst.glass)} cannot be balanced: the plate does not slide far enough ${worst.mm < 0 ? 'back' : 'forward'}.`,
      },
      steps: [
        ...wanted.map(({ glass, mm }) => ({ says: `${name(glass)}: slide the plate ${mm < 0 ? 'back' : 'forward'}`, amount: { value: Math.abs(mm), unit: 'mm' as const } })),
        { says: 'from lens to lens it moves by', amount: { value: spread, unit: 'mm' } },
      ],
      mends: shiftMm > 0 ? [{ says: `Set the camera ${printAmount({ value: Math.ceil(shiftMm), unit: 'mm' })} further ${worst.mm < 0 ? 'back' : 'forward'} on its wedge or baseplate`, use: 1, costs: 'the other lenses shift by as much' }] : [],
      notes: [...cautionsFor('tripod'), ...leftOut(first.load.whole)],
    });
  },
});
