import { swap } from '../../../standards/assumptions/swap.ts';
import { printAmount } from '../../../units/print.ts';
import { counted } from '../../counted.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { changeWords } from '../../quantities/changeWords.ts';
import type { ChangeStep } from '../../quantities/changeStep.ts';
import { lensChange } from '../../quantities/lensChange.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';
import { eachSetup, glassesOf } from '../../subjects.ts';

export const change = question<{ readonly setup: string }>({
  id: 'swap.change',
  asks: 'Does a lens change go quickly enough?',
  kind: 'immediate',
  explains:
    'For every two glasses of the set: which joints open and close, which pieces come off and go on (the same part under the same name stays in the hand), which clamps, plates and supports stand elsewhere and by how much, whether a squeeze axis has to be set upright, and the calibration of the motor. A gear that does not reach its ring is named with how much it is short; such a change cannot be finished as built. The time is a plain sum of so much for each; the minutes are estimates that one timed change of your own replaces. ' +
    'The longest change of the set is held against the time after which the set waits.',
  sources: ['time model: estimate, common practice', 'a remote motor is calibrated on every lens swap: common practice'],
  subjects: (ledger) => eachSetup(ledger).filter(({ setup }) => glassesOf(ledger, setup).length > 1),
  ask: (asking, { setup }) => {
    const glasses = glassesOf(asking.ledger, setup);
    const all = glasses.flatMap((from) => glasses.filter((to) => to !== from).map((to) => ({ from, to, ...lensChange(asking, { setup, glass: from }, { setup, glass: to }) })));
    const [first] = all;
    if (first === undefined) return null;
    const worst = all.reduce((most, one) => (one.minutes > most.minutes ? one : most), first);
    const best = all.reduce((least, one) => (one.minutes < least.minutes ? one : least), first);
    const allowed = asking.assume(swap.allowedMin);
    const name = (glass: string) => nameAt(asking.ledger, 'glasses', glass);
    const pair = `${name(worst.from)} → ${name(worst.to)}`;
    const unfinished = all.filter(({ finishes }) => !finishes).map(({ from, to }) => `${name(from)} → ${name(to)}`);
    const but = unfinished.length > 0 ? `, but as built ${listed(unfinished)} cannot be finished` : '';
    const judged = judgeRatio({
      needs: { amount: { value: worst.minutes, unit: 'min' }, from: `${pair}: ${stepsOf(worst.steps)} ${origin({ ...worst, value: worst.minutes, unit: 'min', basis: 'estimate' })}`, word: 'takes' },
      has: { amount: { value: allowed.value, unit: 'min' }, from: `before the set waits ${origin(allowed)}`, word: 'allowed' },
      says: {
        holds: unfinished.length > 0 ? `No lens change takes long${but}.` : `Every lens change goes quickly; ${pair} takes longest.`,
        tight: `${pair} takes as long as the set will wait${but}.`,
        fails: `${pair} holds the set up${but}.`,
      },
      steps: [...worst.steps.map(changeWords), { says: `the quickest, ${name(best.from)} → ${name(best.to)}: ${printAmount({ value: best.minutes, unit: 'min' })}` }],
      notes: [...(unfinished.length > 0 ? ['Where a gear stays out of reach, and what brings it there: see space.gearReach.'] : []), 'Fingers, hair and cables clear when the motor calibrates. Two hands on front glass, and a tether above people.'],
    });
    // That a gear does not reach is a finding of its own; here it is something to mind.
    return unfinished.length > 0 && judged.verdict === 'good' ? { ...judged, verdict: 'tight' } : judged;
  },
});

/** "14 steps, one a move". */
function stepsOf(steps: readonly ChangeStep[]): string {
  const moves = steps.filter(({ kind }) => kind === 'move').length;
  return `${counted(steps.length, 'step')}${moves === 0 ? '' : moves === 1 ? ', one a move' : `, ${moves} of them moves`}`;
}
