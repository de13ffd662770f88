import { type OpticalPath, opticalPath } from '../../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { squeezeSkewLimit } from '../../../calc/optics/squeezeSkewLimit.ts';
import { type Figure, figureOf } from '../../../shoot/ledger/figures.ts';
import type { StatedFigure } from '../../../shoot/schema/basics.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Judgement, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { shotsWith } from '../../quantities/lightThrough.ts';
import { squeezeOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const axis = question({
  id: 'picture.axis',
  asks: 'Does the squeeze axis stay level?',
  kind: 'immediate',
  explains:
    'Turned about the lens axis, an anamorphot leans upright lines by about the turn times the squeeze less one, more than level ones. The turn that leans them as far as is seen is the tolerance of whatever holds the axis: ' +
    'a pin, a key or screws hold; a clamp or friction holds up to a torque. That torque is held against the ring ahead of it, which a motor or a hand turns through the same seat, cold where the day is cold, with a margin. ' +
    'However it is held, it has to be set: hold a torch in frame and set its streak against a spirit level.',
  sources: ['Derived: matrix of the squeeze turned, determinant 1', 'common practice'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    if (path.lens === undefined) return null;
    const { by, value: squeeze } = squeezeOf(asking, subject);
    if (by === undefined) return null;
    const steps = tolerance(asking, squeeze, by);
    return by.part.has('block') ? heldBlock(asking, subject, path, by, steps) : heldLens(by, steps);
  },
});

/** How far it may turn, in degrees and at the rim, where it can be marked. */
function tolerance(asking: Asking, squeeze: number, by: SetupPiece): Step[] {
  const path = 'needs/verticalLeanDeg';
  const stated = asking.ledger.at(path) as StatedFigure | undefined;
  const lean = stated === undefined ? asking.assume(picture.verticalLeanDeg) : figureOf(stated, path, 'sheet');
  const { rotationDeg } = squeezeSkewLimit({ squeeze, verticalLeanDeg: lean.value });
  const rim = by.part.figure('front/diameterMm');
  const allowed: Step = { says: `verticals lean by ${printAmount({ value: lean.value, unit: 'deg' })} (${stated === undefined ? 'assumed' : 'the needs'}) when it is out by`, amount: { value: rotationDeg, unit: 'deg' } };
  return rim === undefined || rotationDeg === Infinity
    ? [allowed]
    : [allowed, { says: `that much at the rim, ${printAmount({ value: rim.value, unit: 'mm' })} across`, amount: { value: (rim.value / 2) * ((rotationDeg * Math.PI) / 180), unit: 'mm' } }];
}

function heldLens({ part, name }: SetupPiece, steps: readonly Step[]): Judgement {
  const lock = part.read('lens/rollLock') as string | undefined;
  if (lock === undefined) throw new NotEntered([{ path: `${part.path}/lens/rollLock`, says: `what keeps the squeeze axis of ${part.name} from turning` }]);
  const says = `${name} is kept level by its lock: ${lock}.`;
  return judgeYes({ yes: true, says: { holds: says, fails: says }, steps });
}

function heldBlock(asking: Asking, subject: SetupGlass, path: OpticalPath, block: SetupPiece, steps: readonly Step[]): Judgement {
  const heldBy = block.part.read('block/roll/heldBy') as 'friction' | 'clamp' | 'screws' | 'key' | undefined;
  if (heldBy === undefined) throw new NotEntered([{ path: `${block.part.path}/block/roll/heldBy`, says: `what keeps the squeeze axis of ${block.name} from turning` }]);
  if (heldBy === 'screws' || heldBy === 'key') {
    const says = `${block.name} is kept level by ${heldBy === 'key' ? 'a key' : 'screws'}.`;
    return judgeYes({ yes: true, says: { holds: says, fails: says }, steps });
  }
  const slip = block.part.figure('block/roll/slipTorqueNm');
  const ring = path.focuser === undefined ? undefined : ringTorque(asking, subject, path.focuser);
  if (slip === undefined || ring === undefined) {
    const says = `${block.name} is kept level by ${heldBy === 'clamp' ? 'a clamp' : 'friction'} alone.`;
    return judgeYes({ yes: true, caution: true, says: { holds: says, fails: says }, steps, notes: ['Mark block and taking lens across the joint, and look at the mark after every lens change and every calibration.'] });
  }
  return againstRing(asking, block, path.focuser?.name ?? '', { slip, ring, heldBy }, steps);
}

function againstRing(asking: Asking, block: SetupPiece, focuser: string, { slip, ring, heldBy }: { slip: Figure; ring: Figure & { cold: boolean }; heldBy: string }, steps: readonly Step[]): Judgement {
  const margin = asking.assume(picture.axisSlipMargin).value;
  const torque = printAmount({ value: ring.value, unit: 'N·m' });
  const fails = `Turning ${focuser} can turn ${block.name} with it: the ${heldBy} does not hold the axis.`;
  return judgeRatio({
    needs: { amount: { value: ring.value * margin, unit: 'N·m' }, from: `${torque} at the ring of ${focuser}${ring.cold ? ', cold,' : ''} ${origin(ring)} × ${printNumber(margin)}`, word: 'turned by' },
    has: { amount: { value: slip.value, unit: 'N·m' }, from: `before ${block.name} turns in its seat ${origin(slip)}`, word: 'holds' },
    says: { holds: `The ${heldBy} of ${block.name} holds the axis against ${focuser}.`, tight: `The ${heldBy} of ${block.name} only just holds the axis against ${focuser}.`, fails },
    steps,
    mends: ring.value * margin > 0.9 * slip.value ? [{ says: 'Take the turn of the focuser on a collar or a rod, so that it does not pass through the seat' }, { says: 'Lock the block with a screw or a key once the axis is set' }] : [],
    notes: ['Calibration drives the ring into its stop: look at the witness mark after it. Estimate, not a load rating.'],
  });
}

/** Days below this count as cold, °C; common practice: greases stiffen from here on. */
const COLD_C = 5;

/** Torque at the ring: the cold one where a day with this glass is cold and it was measured. */
function ringTorque(asking: Asking, subject: SetupGlass, focuser: SetupPiece): (Figure & { cold: boolean }) | undefined {
  const { ledger } = asking;
  const days = shotsWith(asking, subject).map((shot) => ledger.at(`shots/${shot}/day`) as string | undefined).filter((day) => day !== undefined);
  const isCold = days.some((day) => {
    const path = `days/${day}/temperatureC`;
    const stated = ledger.at(path) as StatedFigure | undefined;
    return stated !== undefined && figureOf(stated, path, 'estimate').value <= COLD_C;
  });
  const cold = isCold ? focuser.part.figure('focus/coldTorqueNm') : undefined;
  const torque = cold ?? focuser.part.figure('focus/ringTorqueNm');
  return torque === undefined ? undefined : { ...torque, cold: cold !== undefined };
}
