import { opticalPath } from '../../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { infinityGap } from '../../../calc/optics/infinityGap.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { widestInUse } from '../../quantities/lightThrough.ts';
import { sharpness } from '../../quantities/sharpness.ts';
import { lensOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { stopDown } from '../../stopDown.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const infinity = question({
  id: 'picture.infinity',
  asks: 'Is the taking lens truly at infinity on this body?',
  kind: 'immediate',
  explains:
    'Behind a block with a focuser in front the taking lens is locked at infinity. If it is really focused nearer, because of flange, shims or its stop, the block passes the fault to both meridians by different amounts: ' +
    'the focuser can put one right, or share what is left between both, but not end it. What is left at best, the error at the sensor times the squeeze less one, against what still counts as sharp at the widest stop in use. ' +
    'A close-up lens between block and taking lens does the same. Stopping down hides it; only the mount cures it.',
  sources: ['Derived: least common blur of both meridians after widening, thin elements'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup, glass }) => {
    const { block, focuser } = opticalPath(ledger, setup, glass);
    return block !== undefined && focuser !== undefined;
  }),
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    const lens = lensOf(path, subject.glass);
    if (path.block === undefined) return null;
    const { focalLengthMm, squeeze } = { focalLengthMm: asking.figure(lens.part, 'lens/focalLengthMm').value, squeeze: asking.figure(path.block.part, 'block/squeeze').value };
    const { takingLensFocusMm, from, cure } = realFocus(asking, subject, lens, focalLengthMm);
    const widest = widestInUse(asking, subject);
    const circleOfConfusionMm = sharpness(asking, subject).value;
    const at = (fNumber: number) => infinityGap({ focalLengthMm, squeeze, takingLensFocusMm, circleOfConfusionMm, fNumber });
    const gap = at(widest.fNumber);
    return judgeRatio({
      needs: { amount: { value: gap.defocusMm, unit: 'mm' }, from, word: 'off by' },
      has: { amount: { value: gap.allowedMm, unit: 'mm' }, from: `what still counts as sharp at T${printNumber(widest.tNumber)}`, word: 'allowed' },
      says: {
        holds: `${lens.name} is near enough to infinity for ${path.block.name}.`,
        fails: `${lens.name} is not at infinity on this body: behind ${path.block.name}, verticals and horizontals are never sharp together.`,
      },
      steps: [
        { says: 'the image lies off the sensor by', amount: { value: gap.defocusMm / Math.abs(squeeze - 1 || 1), unit: 'mm' } },
        { says: `times the squeeze less one, ${printNumber(squeeze - 1)}: left over at best`, amount: { value: gap.defocusMm, unit: 'mm' } },
        { says: `allowed: blur ${printAmount({ value: circleOfConfusionMm, unit: 'mm' })} at f/${printNumber(widest.fNumber)}`, amount: { value: gap.allowedMm, unit: 'mm' } },
      ],
      mends: gap.use > 0.9 ? [...cure, ...stopDown(asking, subject, widest.shots, (fNumber) => at(fNumber).use)] : [],
    });
  },
});

interface RealFocus {
  readonly takingLensFocusMm: number;
  readonly from: string;
  readonly cure: readonly Mend[];
}

/** Where the taking lens is really focused: at what was measured at its infinity mark, or where a close-up lens behind the block puts it. */
function realFocus(asking: Asking, { setup, glass }: SetupGlass, lens: SetupPiece, focalLengthMm: number): RealFocus {
  const { stack, closeUps, block } = opticalPath(asking.ledger, setup, glass);
  const between = closeUps.filter((piece) => block !== undefined && stack.indexOf(piece) < stack.indexOf(block));
  if (between.length > 0) {
    const powerDpt = between.reduce((sum, { part }) => sum + asking.figure(part, 'closeUp/powerDpt').value, 0);
    const names = between.map(({ name }) => name).join(' and ');
    return { takingLensFocusMm: 1000 / powerDpt, from: `${names} behind the block`, cure: [{ says: `Put ${names} on the front, ahead of the anamorphot`, use: 0 }] };
  }
  if (lens.part.read('lens/trueInfinity') === true) return { takingLensFocusMm: Infinity, from: 'checked on this body', cure: [] };
  const real = asking.figure(lens.part, 'lens/infinityErrorMm');
  const takingLensFocusMm = Math.abs(real.value);
  const says = printAmount({ value: takingLensFocusMm / 1000, unit: 'm' });
  const beyond = real.value < 0;
  const out = printAmount({ value: focalLengthMm ** 2 / (takingLensFocusMm - focalLengthMm), unit: 'mm' });
  return {
    takingLensFocusMm,
    from: beyond ? `as far beyond infinity at its mark as ${says} falls short of it ${origin(real)}` : `in focus at its infinity mark: ${says} ${origin(real)}`,
    cure: [{
      says: `Shim the mount so that ${lens.name} sits ${out} ${beyond ? 'farther from' : 'nearer'} the sensor, then check with a distant lamp at full aperture`,
      costs: 'a job for the bench; the lens is then right for this body only',
      use: 0,
    }],
  };
}
