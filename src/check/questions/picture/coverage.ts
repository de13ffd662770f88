import { opticalPath } from '../../../assembly/opticalPath.ts';
import { coverage as sensorCoverage } from '../../../calc/picture/coverage.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { NotEntered } from '../../NotEntered.ts';
import { deliveryFrame } from '../../quantities/deliveryFrame.ts';
import { recording } from '../../quantities/recording.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';
import { origin } from '../../origin.ts';

export const coverage = question({
  id: 'picture.coverage',
  asks: 'Does the image circle cover the sensor area?',
  kind: 'immediate',
  explains:
    'The circle of the taking lens should reach the corners of the sensor area in use: the diagonal against the circle. ' +
    'A circle is no sharp edge; the last tenth is darker and softer, hence "tight" above 0.9. Where it falls short but the frame, with what is kept free around it, lies inside the circle, it is tight too. ' +
    'A block in front does not enlarge it.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const { lens } = opticalPath(asking.ledger, subject.setup, subject.glass);
    // The one question on the picture that asks for a lens: the others wait for it.
    if (lens === undefined) throw new NotEntered([{ path: `glasses/${subject.glass}/stack`, says: `the lens in the stack of ${nameAt(asking.ledger, 'glasses', subject.glass)}` }]);
    const { sensorWidth, sensorHeight, modeName } = recording(asking, subject);
    const circle = asking.figure(lens.part, 'lens/imageCircleMm');
    const { diagonalMm, marginMm } = sensorCoverage({ imageCircleMm: circle.value, sensorWidthMm: sensorWidth.value, sensorHeightMm: sensorHeight.value });
    const { frame, guarded } = deliveryFrame(asking, subject);
    const guardedMm = Math.hypot(guarded.sensorWidthMm, guarded.sensorHeightMm);
    const cropped = guardedMm <= circle.value;
    const says = {
      holds: `${lens.name} covers ${modeName}.`,
      tight: `${lens.name} only just covers ${modeName}.`,
      fails: cropped ? `${lens.name} covers the frame, but not the corners of ${modeName} around it.` : `${lens.name} leaves the corners of ${modeName} dark.`,
    };
    const judged = judgeRatio({
      needs: { amount: { value: diagonalMm, unit: 'mm' }, from: `diagonal of ${modeName}, ${sensorWidth.value} × ${sensorHeight.value} mm` },
      has: { amount: { value: circle.value, unit: 'mm' }, from: `image circle of ${lens.name} ${origin(circle)}` },
      says,
      steps: [
        { says: 'circle less diagonal', amount: { value: marginMm, unit: 'mm' } },
        { says: 'diagonal of the frame with what is kept free around it', amount: { value: guardedMm, unit: 'mm' } },
      ],
      mends: marginMm < 0 ? otherModes(asking, subject, circle.value) : [],
      notes: !cropped && Math.hypot(frame.sensorWidthMm, frame.sensorHeightMm) <= circle.value ? ['The frame itself lies inside the circle; what is kept free around it does not.'] : [],
    });
    // The use stays that of the whole area: nothing of the frame is lost, but nothing around it can be had.
    return judged.verdict === 'fails' && cropped ? { ...judged, verdict: 'tight' } : judged;
  },
});

/** Modes of the same body whose corners the circle reaches, the largest first. */
function otherModes(asking: Asking, subject: SetupGlass, circleMm: number): Mend[] {
  const { body } = opticalPath(asking.ledger, subject.setup, subject.glass);
  if (body === undefined) return [];
  const setup = nameAt(asking.ledger, 'setups', subject.setup);
  return asking.ledger
    .keys(`${body.part.path}/body/modes`)
    .map((mode) => ({ mode, ...recording(asking, subject, `body/modes/${mode}`) }))
    .map(({ mode, modeName, sensorWidth, sensorHeight }) => ({ mode, modeName, use: Math.hypot(sensorWidth.value, sensorHeight.value) / circleMm }))
    .filter(({ use }) => use <= 1)
    .toSorted((a, b) => b.use - a.use)
    .map(({ mode, modeName, use }) => ({
      says: `Record ${setup} in ${modeName}`,
      edit: { says: `${setup} in ${modeName}`, patches: [{ op: 'replace', path: `setups/${subject.setup}/mode`, value: mode }] },
      costs: 'for every lens of the setup: narrower view, other outputs',
      use,
    }));
}
