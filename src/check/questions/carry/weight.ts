import { pieceMasses } from '../../../assembly/hold/pieceMasses.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { ESTIMATE } from '../../quantities/estimateNote.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const weight = question({
  id: 'carry.weight',
  asks: 'Is the build light enough for who carries it?',
  kind: 'immediate',
  explains:
    'The mass of a shoulder or handheld build, with each lens, against the most that was wanted for it. No published kilogram limit exists for holding a camera: lifting rules cover lifting. Operators of heavy cameras show shoulder trouble several times as often as office staff; pain is a reason to stop. Asked where a wish was entered.',
  sources: ['common practice; a wish of the shoot, not a limit'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup }) => wishOf(ledger.at(`builds/${ledger.at(`setups/${setup}/camera`) as string}/purpose`)) !== undefined),
  ask: (asking, { setup, glass }) => {
    const camera = asking.ledger.at(`setups/${setup}/camera`) as string;
    const wish = wishOf(asking.ledger.at(`builds/${camera}/purpose`));
    if (wish === undefined || asking.ledger.at(wish.path) === undefined) return null;
    const stated = asking.ledger.at(wish.path) as number | { value: number };
    const wanted = typeof stated === 'number' ? stated : stated.value;
    const { weighed, unweighed } = pieceMasses(asking.ledger, setup, glass, camera);
    if (weighed.length === 0) return cannotJudge('No piece of this build has a mass entered.');
    const massG = weighed.reduce((sum, one) => sum + one.massG, 0);
    const heaviest = weighed.toSorted((a, b) => b.massG - a.massG).slice(0, 3);
    return judgeRatio({
      needs: { amount: { value: massG, unit: 'g' }, from: `${weighed.length} pieces` },
      has: { amount: { value: wanted, unit: 'g' }, from: `most that is wanted ${wish.says}` },
      says: { holds: `The build is light enough ${wish.says}.`, tight: `The build is only just light enough ${wish.says}.`, fails: `The build is heavier than is wanted ${wish.says}.` },
      steps: heaviest.map(({ piece, massG: own }) => ({ says: piece.name, amount: { value: own, unit: 'g' as const } })),
      notes: [`${ESTIMATE} Pain is a reason to stop.`, ...(unweighed.length === 0 ? [] : [`Weighs nothing here: ${unweighed.map(({ name }) => name).join(', ')}.`])],
    });
  },
});

function wishOf(purpose: unknown): { path: string; says: string } | undefined {
  if (purpose === 'shoulder') return { path: 'needs/shoulderMassG', says: 'on a shoulder' };
  return purpose === 'handheld' ? { path: 'needs/handheldMassG', says: 'in the hands' } : undefined;
}
