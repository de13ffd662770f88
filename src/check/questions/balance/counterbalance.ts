import { counterbalance as sum } from '../../../calc/mechanics/counterbalance.ts';
import { balance } from '../../../standards/assumptions/balance.ts';
import { printAmount } from '../../../units/print.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { headLoad } from '../../quantities/headLoad.ts';
import { leftOut } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

/** Tilt at which drag and spring are looked at beside the rated figure. */
const WORKING_TILT_DEG = 30;

export const counterbalance = question<SetupGlass>({
  id: 'balance.counterbalance',
  asks: 'Does the head’s counterbalance hold the camera at any tilt?',
  kind: 'immediate',
  explains:
    'A camera slid to balance falls forward, once tilted, with its weight times the height of its centre above the tilt axis times the sine of the tilt; a spring counterbalance gives as much back, up to its highest moment. The centre is worked out from the placed pieces with each lens; the tilt axis lies a little below the plate. Too little counterbalance: the camera falls when the handle is let go. ' +
    'Tall rigs ask more than heavy ones.',
  sources: ['statics of rigid bodies; a counterbalance whose moment goes with the sine of the tilt'],
  subjects: (ledger) => eachGlass(ledger),
  ask: (asking, subject) => {
    const found = headLoad(asking, subject);
    if (found === undefined || found.head.part.figure('carrier/counterbalanceNm') === undefined) return null;
    const { head, whole, aboveMm } = found;
    const most = asking.figure(head.part, 'carrier/counterbalanceNm');
    const axis = asking.assume(balance.tiltAxisBelowMm);
    const { springNm, momentNm } = sum({ massG: whole.massG, aboveAxisMm: aboveMm + axis.value, aheadOfAxisMm: 0, tiltDeg: WORKING_TILT_DEG });
    const lower = (most.value / (whole.massG * 9.80665e-6)) - axis.value;
    return judgeRatio({
      needs: { amount: { value: Math.max(0, springNm), unit: 'N·m' }, from: `${printAmount({ value: whole.massG, unit: 'g' })}, its centre ${printAmount({ value: aboveMm, unit: 'mm' })} above the plate + ${printAmount({ value: axis.value, unit: 'mm' })} to the tilt axis ${origin(axis)}` },
      has: { amount: { value: most.value, unit: 'N·m' }, from: `${head.name} ${origin(most)}` },
      says: { holds: `${head.name} holds the camera at any tilt.`, tight: `${head.name} just holds the camera at any tilt.`, fails: `On ${head.name} the camera falls when it is let go tilted.` },
      steps: [{ says: `at ${WORKING_TILT_DEG}° of tilt it asks for`, amount: { value: momentNm, unit: 'N·m' } }],
      mends: springNm > most.value && lower > 0 ? [{ says: `Bring the centre down to ${printAmount({ value: Math.round(lower), unit: 'mm' })} above the plate: monitor and transmitter lower, no riser`, use: 1 }] : [],
      notes: [...cautionsFor('tripod'), ...leftOut(whole)],
    });
  },
});
