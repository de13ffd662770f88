import { gearLeastTeeth } from '../../../calc/focus/gearLeastTeeth.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import { focus } from '../../../standards/assumptions/focus.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { type RingDrive, gearsOf, ringDrive, runOf } from '../../quantities/ringDrive.ts';
import { ringTorque } from '../../quantities/ringTorque.ts';
import { eachDriven } from '../../quantities/eachDriven.ts';
import { question } from '../../question.ts';

export const turns = question({
  id: 'focus.turns',
  asks: 'Does the motor turn the ring, in the cold too?',
  kind: 'immediate',
  explains:
    'The torque that turns the focus ring on the coldest day this glass is shot on, with a margin so that it starts at once and keeps its speed, against what the motor gives at the ring: its torque at ' +
    'standstill times the teeth of the ring over those of the motor’s gear, less what the mesh takes. Between a warm and a cold measurement the torque grows by an even share with each degree; with one ' +
    'measurement alone it is an estimate with wide bounds, since nothing is published on how rings stiffen. Above use 1 the margin is eaten; where the margin stands for nothing any more, it stalls.',
  sources: ['spur gears: ISO 21771', 'torque-speed line of a permanent-magnet motor, as in textbooks', 'margin and growth in the cold: common practice, estimate'],
  subjects: eachDriven,
  ask: (asking, subject) => {
    const found = ringDrive(asking, subject);
    if (found === undefined) return null;
    const { ring, motor, torque, stall, efficiency, temperature } = found;
    const margin = asking.assume(focus.torqueMargin).value;
    const { ringStallNm, ratio } = runOf(found);
    const needed = torque.value * margin;
    const cold = printAmount({ value: temperature.value, unit: '°C' });
    const stalls = torque.value >= ringStallNm;
    return judgeRatio({
      needs: { amount: { value: needed, unit: 'N·m' }, from: `${torque.says} × ${printNumber(margin)} margin` },
      has: {
        amount: { value: ringStallNm, unit: 'N·m' },
        from: `${printNumber(stall.value)} ${motor.piece.name} ${origin(stall)} × ${found.ringTeeth}/${motor.teeth} teeth × ${printNumber(efficiency.value)} mesh ${origin(efficiency)}`,
      },
      says: {
        holds: `${motor.piece.name} turns ${ring.name} at ${cold}.`,
        tight: `${motor.piece.name} turns ${ring.name} at ${cold}, with little to spare.`,
        fails: stalls ? `${motor.piece.name} cannot turn ${ring.name} at ${cold}: it stalls.` : `${motor.piece.name} may stick on ${ring.name} at ${cold}: it turns it, but without the margin to start cleanly.`,
      },
      steps: steps(found, ratio, ringStallNm),
      mends: needed > 0.9 * ringStallNm ? mends(asking, found, margin) : [],
      notes: [
        ...(torque.measured ? [] : ['The torque of this ring is not measured in this cold: a luggage scale and an hour in the freezer tell it.']),
        ...(motor.teeth >= fewestTeeth(found) ? [] : [`A gear of ${motor.teeth} teeth is fouled at its roots by one of ${found.ringTeeth}: it runs rough below ${fewestTeeth(found)}.`]),
      ],
    });
  },
});

function steps({ motor, torque }: RingDrive, ratio: number, ringStallNm: number): Step[] {
  return [
    { says: motor.says },
    { says: 'turns of the motor for one of the ring', amount: { value: ratio, unit: 'ratio' } },
    { says: `the ring itself wants, ${printNumber(torque.low)} to ${printNumber(torque.high)}`, amount: { value: torque.value, unit: 'N·m' } },
    { says: 'the motor stands still at', amount: { value: ringStallNm, unit: 'N·m' } },
  ];
}

/** A smaller gear on the motor, another motor of the kit, a warm lens. */
function mends(asking: Asking, found: RingDrive, margin: number): Mend[] {
  const needed = found.torque.value * margin;
  const now = needed / runOf(found).ringStallNm;
  const tried = [...gears(found, needed), ...motors(asking, found, needed), ...warm(asking, found, margin)];
  return tried.filter(({ use }) => (use ?? 0) < now).toSorted((a, b) => Number((a.use ?? 2) > 1) - Number((b.use ?? 2) > 1));
}

function gears(found: RingDrive, needed: number): Mend[] {
  const { piece, teeth: fitted } = found.motor;
  const smaller = gearsOf(piece.part).filter((teeth) => teeth < fitted && teeth >= fewestTeeth(found)).toReversed();
  return smaller.map((teeth) => {
    const run = runOf(found, { teeth });
    return {
      says: `${teeth}-tooth gear on ${piece.name}`,
      edit: { says: `${teeth}-tooth gear on ${piece.name}`, patches: [{ op: 'add', path: `${piece.path}/gearTeeth`, value: teeth }] },
      use: needed / run.ringStallNm,
      costs: endToEnd(runOf(found).fullThrowS, run.fullThrowS),
    };
  });
}

const PRESSURE_ANGLE_DEG = 20; // the standard rack, ISO 53

/** Fewest teeth on the motor that run with the gear of the ring. */
const fewestTeeth = ({ ringTeeth }: RingDrive): number => gearLeastTeeth({ drivenTeeth: ringTeeth, pressureAngleDeg: PRESSURE_ANGLE_DEG }).leastTeeth;

function motors({ ledger }: Asking, found: RingDrive, needed: number): Mend[] {
  const { piece } = found.motor;
  return ledger.keys('kit/parts').flatMap((id): Mend[] => {
    const part = new PartView(ledger, id);
    const stallTorqueNm = part.figure('motor/stallTorqueNm')?.value;
    const noLoadRpm = part.figure('motor/noLoadRpm')?.value;
    if (stallTorqueNm === undefined || noLoadRpm === undefined || part.path === piece.part.path) return [];
    const teeth = gearsOf(part).includes(found.motor.teeth) ? found.motor.teeth : (part.read('motor/gear/teeth') as number);
    const run = runOf(found, { teeth, stallTorqueNm, noLoadRpm });
    return [{
      says: `${part.name} instead, ${teeth}-tooth gear`,
      edit: { says: `${part.name} on the focus`, patches: [{ op: 'replace', path: `${piece.path}/of`, value: id }, { op: 'add', path: `${piece.path}/gearTeeth`, value: teeth }] },
      use: needed / run.ringStallNm,
      costs: [endToEnd(runOf(found).fullThrowS, run.fullThrowS), heavier(piece.part, part), hungrier(piece.part, part)].filter((one) => one !== '').join('; '),
    }];
  });
}

function warm(asking: Asking, found: RingDrive, margin: number): Mend[] {
  const at = asking.assume(focus.warmAtC);
  if (found.temperature.value >= at.value) return [];
  const torqueNm = ringTorque(asking, found.ring, at).value;
  return [{ says: `Keep ${found.ring.name} as warm as ${printAmount({ value: at.value, unit: '°C' })} until the take`, use: (torqueNm * margin) / runOf(found).ringStallNm, costs: 'it stiffens again within the hour' }];
}

function endToEnd(beforeS: number, afterS: number): string {
  const shown = (seconds: number) => (Number.isFinite(seconds) ? printAmount({ value: seconds, unit: 's' }) : 'never');
  return `end to end ${shown(beforeS)} → ${shown(afterS)}`;
}

function heavier(before: PartView, after: PartView): string {
  const [a, b] = [before.figure('massG')?.value, after.figure('massG')?.value];
  return a === undefined || b === undefined ? '' : `${b >= a ? '+' : '−'}${printAmount({ value: Math.abs(b - a), unit: 'g' })}`;
}

function hungrier(before: PartView, after: PartView): string {
  const [a, b] = [before.figure('motor/movingW')?.value, after.figure('motor/movingW')?.value];
  return a === undefined || b === undefined ? '' : `draws ${printAmount({ value: a, unit: 'W' })} → ${printAmount({ value: b, unit: 'W' })} moving`;
}
