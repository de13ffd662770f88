import { opticalPath } from '../../../assembly/opticalPath.ts';
import { coverage as sensorCoverage } from '../../../calc/picture/coverage.ts';
import { judgeRatio } from '../../judge.ts';
import { recording } from '../../quantities/recording.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';
import { origin } from '../../origin.ts';

export const coverage = question({
  id: 'picture.coverage',
  asks: 'Does the image circle cover the sensor area?',
  kind: 'immediate',
  explains:
    'The circle of the taking lens must reach the corners of the sensor area in use, whatever is cropped later: the diagonal against the circle. ' +
    'A circle is no sharp edge; the last tenth is darker and softer, hence "tight" above 0.9. A block in front does not enlarge it.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const { lens } = opticalPath(asking.ledger, subject.setup, subject.glass);
    if (lens === undefined) return null;
    const { sensorWidth, sensorHeight, modeName } = recording(asking, subject);
    const circle = asking.figure(lens.part, 'lens/imageCircleMm');
    const { diagonalMm, marginMm } = sensorCoverage({ imageCircleMm: circle.value, sensorWidthMm: sensorWidth.value, sensorHeightMm: sensorHeight.value });
    return judgeRatio({
      needs: { amount: { value: diagonalMm, unit: 'mm' }, from: `diagonal of ${modeName}, ${sensorWidth.value} × ${sensorHeight.value} mm` },
      has: { amount: { value: circle.value, unit: 'mm' }, from: `image circle of ${lens.name} ${origin(circle)}` },
      says: { holds: `${lens.name} covers ${modeName}.`, tight: `${lens.name} only just covers ${modeName}.`, fails: `${lens.name} leaves the corners of ${modeName} dark.` },
      steps: [{ says: 'circle less diagonal', amount: { value: marginMm, unit: 'mm' } }],
    });
  },
});
