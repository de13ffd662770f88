import { opticalPath } from '../../../assembly/opticalPath.ts';
import { printAmount } from '../../../units/print.ts';
import type { Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { deliveryFrame } from '../../quantities/deliveryFrame.ts';
import { sharpness, sharpnessFromLines } from '../../quantities/sharpness.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass, eachShot } from '../../subjects.ts';

export const sharp = question({
  id: 'picture.sharp',
  asks: 'What counts as sharp, and can the recording hold it?',
  kind: 'immediate',
  explains:
    'Depth of field, focus and delay are all judged against one number: the largest blur on the sensor that still counts as sharp, in the vertical meridian, which governs. ' +
    'It is what the shot states, else what the delivery states; where neither does, it is the frame’s height over the delivery’s lines times the lines that a blur may cover. ' +
    'A stated one must not be finer than two recorded lines, the finest that a sensor can show. It is a choice of the shoot, not a property of the lens.',
  sources: ['Ray, Applied Photographic Optics', 'common practice: 0.025 mm for 35 mm cine'],
  subjects: (ledger) => [...eachGlass(ledger), ...eachShot(ledger).filter(({ shot }) => ledger.at(`shots/${shot}/circleOfConfusionMm`) !== undefined)],
  ask: (asking, subject: SetupGlass & { shot?: string }) => {
    if (opticalPath(asking.ledger, subject.setup, subject.glass).lens === undefined) return null;
    const { value, statedBy, says } = sharpness(asking, subject);
    const blur = printAmount({ value, unit: 'mm' });
    const has = { amount: { value, unit: 'mm' }, from: says, word: 'asked' } as const;
    const holds = `Sharp is a blur of up to ${blur} on the sensor, ${statedBy === 'lines' ? `from the delivery’s lines` : says}.`;
    if (statedBy === 'lines') return judgeYes({ yes: true, says: { holds, fails: holds }, has, steps: [frameStep(asking, subject), { says, amount: { value, unit: 'mm' } }] });
    const { recording } = deliveryFrame(asking, subject);
    const finestMm = (2 * recording.sensorHeight.value) / recording.heightPx;
    return judgeRatio({
      needs: { amount: { value: finestMm, unit: 'mm' }, from: `two recorded lines of ${recording.modeName}`, word: 'recorded' },
      has,
      says: { holds, fails: `What counts as sharp, ${blur} on the sensor, is finer than ${recording.modeName} can record.` },
      steps: [frameStep(asking, subject), { says: 'the delivery’s own lines would ask', amount: { value: sharpnessFromLines(asking, subject).value, unit: 'mm' } }],
    });
  },
});

function frameStep(asking: Asking, subject: SetupGlass): Step {
  return { says: 'height of the frame on the sensor', amount: { value: deliveryFrame(asking, subject).frame.sensorHeightMm, unit: 'mm' } };
}
