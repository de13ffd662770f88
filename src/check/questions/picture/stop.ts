import { opticalPath } from '../../../assembly/opticalPath.ts';
import { stopsBetween } from '../../../calc/optics/stopsBetween.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import { judgeReach } from '../../judge.ts';
import { fNumberAt, widestStop } from '../../quantities/lightThrough.ts';
import { lensOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { eachShot } from '../../subjects.ts';

export const stop = question({
  id: 'picture.stop',
  asks: 'Can the lens open to the stop of the shot?',
  kind: 'immediate',
  explains:
    'The stop of a shot is a T-stop: what the meter says. Depth goes by the f-number behind it, f = T times the root of the light that passes. A block and a focuser in front take their share, ' +
    'so that the whole opens less wide than the ring of the taking lens says. Where the light that passes is not known it is assumed, with bounds. Light is compared with light: ' +
    'use is the light the shot wants over the light there is wide open, a sixth of a stop forgiven. Filters are not counted: a T-stop is set behind them.',
  sources: ['ISO 517', 'Ray, Applied Photographic Optics'],
  subjects: eachShot,
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    if (path.lens === undefined) return null;
    const shotAt = fNumberAt(asking, subject);
    const widest = widestStop(asking, subject);
    const forgiven = asking.assume(picture.stopTolerance).value;
    const { stops: short } = stopsBetween({ fromNumber: shotAt.tNumber, toNumber: widest.tNumber.value });
    const [lens, t] = [lensOf(path, subject.glass).name, printNumber(shotAt.tNumber)];
    const whole = path.block === undefined ? lens : `${lens} behind ${path.block.name}`;
    return judgeReach({
      use: 2 ** (short - forgiven),
      needs: { amount: { value: shotAt.tNumber, unit: 'T' }, from: 'stop of the shot', word: 'asked' },
      has: { amount: { value: widest.tNumber.value, unit: 'T' }, from: `wide open, from f/${printNumber(widest.fNumber.value)} and the light that passes`, word: 'opens to' },
      says: {
        holds: `${whole} opens to T${t}.`,
        tight: short > 0 ? `Wide open, ${whole} is a touch darker than T${t}.` : `${whole} is wide open at T${t}.`,
        fails: `${whole} does not open to T${t}.`,
      },
      steps: [
        { says: `light that passes: ${shotAt.says}` },
        { says: `depth at T${t} goes by`, amount: { value: shotAt.value, unit: 'f' } },
        ...(short > 0 ? [{ says: 'stops short of it wide open', amount: { value: short, unit: 'ratio' } as const }] : []),
      ],
      mends: short > forgiven ? [closeDown(subject.shot, widest.tNumber.value, short, forgiven)] : [],
      notes: shotAt.assumed ? [`Some of the light that passes is assumed: the f-number lies between ${printNumber(shotAt.low)} and ${printNumber(shotAt.high)}.`] : [],
    });
  },
});

/** The stop it does open to, to the tenth that is engraved. */
function closeDown(shot: string, widest: number, short: number, forgiven: number): Mend {
  const tStop = Math.ceil(widest * 10 - 1e-9) / 10;
  const { stops } = stopsBetween({ fromNumber: tStop, toNumber: widest });
  return {
    says: `Shoot at T${printNumber(tStop)}`,
    edit: { says: `shot at T${printNumber(tStop)}`, patches: [{ op: 'replace', path: `shots/${shot}/tStop`, value: tStop }] },
    costs: `${printNumber(short, 2)} of a stop more light or sensitivity; a little more depth`,
    use: 2 ** (stops - forgiven),
  };
}
