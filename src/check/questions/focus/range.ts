import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { eachDriven } from '../../quantities/eachDriven.ts';
import { focusRing, ringTeeth } from '../../quantities/focusRing.ts';
import { focusScaleOf } from '../../quantities/focusScaleOf.ts';
import { shotsWith } from '../../quantities/lightThrough.ts';
import { gearsOf, throwOf } from '../../quantities/ringDrive.ts';
import { ringTurner } from '../../quantities/ringTurner.ts';
import { shotDistances } from '../../quantities/shotDistances.ts';
import { question } from '../../question.ts';
import type { SetupGlass } from '../../subjects.ts';

export const range = question({
  id: 'focus.range',
  asks: 'Do the throw and the gear fit the turns of the motor?',
  kind: 'immediate',
  explains:
    'The throw of the ring times the teeth of the ring over those of the motor’s gear, in turns of the motor, against the turns it can make between its limits. A motor whose range ends first never sees the far stop: ' +
    'calibration fails or maps a part of the throw only. Where it does not fit, the turns for just the distances that this glass is shot at are worked out too.',
  sources: ['common practice'],
  subjects: eachDriven,
  ask: (asking, subject) => {
    const turner = ringTurner(asking, subject);
    const most = turner?.piece.part.figure('motor/maxTurns');
    if (turner === undefined || most === undefined) return null;
    const ring = focusRing(asking, subject);
    const throwDeg = throwOf(asking, subject, ring);
    const turnsFor = (deg: number, teeth = turner.teeth) => ((deg / 360) * ringTeeth(ring)) / teeth;
    const needed = turnsFor(throwDeg);
    const { piece } = turner;
    return judgeRatio({
      needs: { amount: { value: needed, unit: 'count' }, from: `turns: throw of ${printNumber(throwDeg)}° × ${ringTeeth(ring)}/${turner.teeth} teeth` },
      has: { amount: { value: most.value, unit: 'count' }, from: `turns of ${piece.name} ${origin(most)}` },
      says: { holds: `${piece.name} turns ${ring.name} from end to end.`, tight: `${piece.name} only just turns ${ring.name} from end to end.`, fails: `${piece.name} runs out of turns before the end of ${ring.name}.` },
      steps: [{ says: turner.says }],
      mends: needed > most.value ? [...gears(turner, (teeth) => turnsFor(throwDeg, teeth) / most.value), ...partly(asking, subject, (deg) => turnsFor(deg) / most.value)] : [],
    });
  },
});

function gears({ piece, teeth: fitted }: { piece: Parameters<typeof ringTeeth>[0]; teeth: number }, useWith: (teeth: number) => number): Mend[] {
  return gearsOf(piece.part).filter((teeth) => teeth > fitted).map((teeth) => {
    const says = `${teeth}-tooth gear on ${piece.name}`;
    return { says, edit: { says, patches: [{ op: 'add', path: `${piece.path}/gearTeeth`, value: teeth }] }, use: useWith(teeth), costs: 'less torque at the ring: see whether it still turns' };
  });
}

/** Only the part of the throw that the shots of this glass use. */
function partly(asking: Asking, subject: SetupGlass, useFor: (deg: number) => number): Mend[] {
  try {
    const scale = focusScaleOf(asking, subject);
    const reached = shotsWith(asking, subject).map((shot) => shotDistances(asking, shot));
    if (reached.length === 0) return [];
    const nearMm = Math.max(scale.nearMm, Math.min(...reached.map(({ nearMm: near }) => near)));
    const farMm = Math.min(scale.farMm, Math.max(...reached.map(({ farMm: far }) => far)));
    const use = useFor(Math.abs(scale.angleAt(nearMm) - scale.angleAt(farMm)));
    const tape = (mm: number) => printAmount({ value: mm / 1000, unit: 'm' });
    return use > 1 ? [] : [{ says: `Set the two ends by hand at ${tape(farMm)} and ${tape(nearMm)}, all that its shots ask`, use, costs: 'nothing beyond is reached' }];
  } catch (thrown) {
    if (thrown instanceof NotEntered) return [];
    throw thrown;
  }
}
