import { counterbalance as sum } from '../../../calc/mechanics/counterbalance.ts';
import { weightN } from '../../../calc/mechanics/gravity.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import { balance } from '../../../standards/assumptions/balance.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { allPlaced } from '../../quantities/allPlaced.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { type HeadLoad, headLoad, plateNow, plateRoom } from '../../quantities/headLoad.ts';
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
    'The camera is taken as slid to balance fore and aft; where the plate does not slide far enough for that, what the spring holds cannot be judged. Slid to balance it falls forward, once tilted, with its weight times the height of its centre above the tilt axis times the sine of the tilt; a spring counterbalance gives as much back, up to its highest moment. The centre is worked out from the placed pieces with each lens; the tilt axis lies a little below the plate. Too little counterbalance: the camera falls when the handle is let go. ' +
    'Tall rigs ask more than heavy ones.',
  sources: ['statics of rigid bodies; a counterbalance whose moment goes with the sine of the tilt'],
  subjects: (ledger) => eachGlass(ledger),
  ask: (asking, subject) => {
    const found = headLoad(asking, subject);
    if (found === undefined || found.head.part.figure('carrier/counterbalanceNm') === undefined || found.whole.massG === 0) return null;
    const { head, whole, aboveMm } = found;
    const most = asking.figure(head.part, 'carrier/counterbalanceNm');
    const axis = head.part.figure('carrier/tiltAxisBelowPlateMm') ?? asking.assume(balance.tiltAxisBelowMm);
    const { springNm, momentNm } = sum({ massG: whole.massG, aboveAxisMm: aboveMm + axis.value, aheadOfAxisMm: 0, tiltDeg: WORKING_TILT_DEG });
    const beyondMm = beyondPlate(found);
    if (springNm <= most.value && beyondMm > 0) return outOfBalance(found, beyondMm, springNm, most.value);
    return allPlaced(allWeighed(judgeRatio({
      needs: { amount: { value: Math.max(0, springNm), unit: 'N·m' }, from: `${printAmount({ value: whole.massG, unit: 'g' })}, its centre ${printAmount({ value: aboveMm, unit: 'mm' })} above the plate + ${printAmount({ value: axis.value, unit: 'mm' })} to the tilt axis ${origin(axis)}` },
      has: { amount: { value: most.value, unit: 'N·m' }, from: `${head.name} ${origin(most)}` },
      says: { holds: `Slid to balance, ${head.name} holds the camera at any tilt.`, tight: `Slid to balance, ${head.name} just holds the camera at any tilt.`, fails: `On ${head.name} the camera falls when it is let go tilted.` },
      steps: [{ says: `at ${WORKING_TILT_DEG}° of tilt it asks for`, amount: { value: momentNm, unit: 'N·m' } }],
      mends: springNm > 0.9 * most.value ? [...lower(found, { axisMm: axis.value, mostNm: most.value, target: springNm > most.value ? 1 : 0.9 }), ...otherHeads(asking, found, springNm / most.value)] : [],
      notes: [...cautionsFor('tripod'), ...leftOut(whole)],
    }), whole.unweighed), [whole]);
  },
});

/** How much further than it goes the plate would have to slide to balance this lens. */
function beyondPlate(load: HeadLoad): number {
  const room = plateRoom(load);
  return room === undefined ? 0 : Math.abs(plateNow(load) - load.aheadMm) - room.halfMm;
}

/** The spring would hold its height, but what lies ahead of the axis or behind it no spring evens out. */
function outOfBalance({ head, whole }: HeadLoad, beyondMm: number, springNm: number, mostNm: number): Judgement {
  return cannotJudge(`Whether ${head.name} holds the camera cannot be told: its plate does not slide far enough to balance it first.`, [
    { says: `${printAmount({ value: whole.massG, unit: 'g' })} with its centre off the tilt axis once the plate is at its end`, amount: { value: beyondMm, unit: 'mm' } },
    { says: 'moment that is then left when it is level', amount: { value: weightN(whole.massG) * beyondMm * 1e-3, unit: 'N·m' } },
    { says: 'slid to balance, its spring would have to hold', amount: { value: Math.max(0, springNm), unit: 'N·m' } },
    { says: 'and holds', amount: { value: mostNm, unit: 'N·m' } },
  ], [...cautionsFor('tripod'), ...leftOut(whole)]);
}

/** The centre brought down to where the spring holds it: in all, and by the one piece that gives most for each millimetre. */
function lower({ head, whole, aboveMm }: HeadLoad, { axisMm, mostNm, target }: { readonly axisMm: number; readonly mostNm: number; readonly target: number }): Mend[] {
  const heldMm = Math.floor((target * mostNm * 1000) / weightN(whole.massG) - axisMm);
  const useAt = (centreMm: number): number => sum({ massG: whole.massG, aboveAxisMm: centreMm + axisMm, aheadOfAxisMm: 0, tiltDeg: 90 }).springNm / mostNm;
  if (heldMm <= 0) return [];
  const plateY = whole.centreMm[1] - aboveMm;
  const raised = whole.pieces.filter(({ piece }) => !piece.fromGlass && !piece.part.has('body') && piece.ref !== head.ref).toSorted((a, b) => b.massG * (b.centreMm[1] - plateY) - a.massG * (a.centreMm[1] - plateY))[0];
  const downMm = raised === undefined ? Infinity : Math.ceil(((aboveMm - heldMm) * whole.massG) / raised.massG - 1e-6);
  const one = raised === undefined || downMm > raised.centreMm[1] - plateY ? [] : [{
    says: `Carry ${raised.piece.name} ${printAmount({ value: downMm, unit: 'mm' })} lower`, use: useAt(aboveMm - (downMm * raised.massG) / whole.massG), costs: 'look whether it is still in sight and clear there',
  }];
  return [...one, { says: `Bring the centre down to ${printAmount({ value: heldMm, unit: 'mm' })} above the plate: monitor and transmitter lower, no riser`, use: useAt(heldMm) }];
}

/** Heads of the kit whose spring is enough and that bear the load. */
function otherHeads(asking: Asking, { head, whole, aboveMm }: HeadLoad, nowUse: number): Mend[] {
  return asking.ledger.keys('kit/parts').flatMap((id): Mend[] => {
    const part = new PartView(asking.ledger, id);
    const [spring, payload] = [part.figure('carrier/counterbalanceNm'), part.figure('carrier/payloadG')];
    if (part.read('carrier/kind') !== 'head' || id === head.part.id || spring === undefined || (payload?.value ?? Infinity) < whole.massG) return [];
    const axis = part.figure('carrier/tiltAxisBelowPlateMm') ?? asking.assume(balance.tiltAxisBelowMm);
    const use = sum({ massG: whole.massG, aboveAxisMm: aboveMm + axis.value, aheadOfAxisMm: 0, tiltDeg: 90 }).springNm / spring.value;
    return use > 1 || use >= nowUse ? [] : [{ says: `${part.name} instead`, use, costs: 'see that its plate and the legs fit it' }];
  });
}
