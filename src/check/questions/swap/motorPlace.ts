import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { printAmount } from '../../../units/print.ts';
import { judgeYes } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { listed } from '../../quantities/listed.ts';
import { motorPlaces } from '../../quantities/motorPlaces.ts';
import { question } from '../../question.ts';
import { eachSetup, glassesOf } from '../../subjects.ts';

export const motorPlace = question<{ readonly setup: string }>({
  id: 'swap.motorPlace',
  asks: 'Does one place of the motor serve the whole set?',
  kind: 'immediate',
  explains:
    'With each glass the motor has a place along its rod at which its gear meets the ring; the widths of both gears let it stand some millimetres either side. The place that serves the most glasses is the one covered by the most of these windows. A matched set keeps its gear in one place; a front adapter moves it with the length of the taking lens. Ways out: a rod that rides with the block, a collar, or the body sliding on its plate.',
  sources: ['gear windows: from the faces of both gears and the share that must stay in mesh', 'common practice: a matched set keeps its gear in one place'],
  subjects: (ledger) => eachSetup(ledger).filter(({ setup }) => glassesOf(ledger, setup).length > 1 && glassesOf(ledger, setup).some((glass) => placeSetup(ledger, setup, glass).meshes.length > 0)),
  ask: (asking, { setup }) => {
    const found = motorPlaces(asking, setup);
    if (found === undefined) return null;
    const { from, best, all, nowhere } = found;
    const name = (glass: string) => nameAt(asking.ledger, 'glasses', glass);
    const rest = all.filter(({ glass }) => !best.serves.includes(glass));
    return judgeYes({
      yes: true,
      caution: rest.length + nowhere.length > 0,
      says: {
        holds: 'One place of the motor along its rod serves every glass of the set.',
        tight: [
          ...(rest.length > 0 ? [`The motor has to move for ${listed(rest.map(({ glass }) => name(glass)))}`] : []), ...(nowhere.length > 0 ? [`${rest.length > 0 ? 'it' : 'The motor'} meets ${listed(nowhere.map(name))} nowhere along its rod`] : []), `one place serves ${listed(best.serves.map(name))}.`,
        ].join('; '),
        fails: '',
      },
      steps: [
        { says: `the place that serves most, ${from}`, amount: { value: Math.round(best.atMm * 10) / 10, unit: 'mm' } },
        ...all.map(({ glass, low, high }) => ({ says: `${name(glass)}: from ${printAmount({ value: Math.round(low), unit: 'mm' })} to ${printAmount({ value: Math.round(high), unit: 'mm' })}` })),
      ],
      notes: ['The swing of the motor about its rod still follows the diameter of each ring.'],
    });
  },
});
