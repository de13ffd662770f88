import { weightN } from '../../../calc/mechanics/gravity.ts';
import type { Vector } from '../../../assembly/placing/Transform.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { ESTIMATE } from '../../quantities/estimateNote.ts';
import { type GimbalLoad, gimbalLoad, gimbalOf } from '../../quantities/gimbalLoad.ts';
import { WAYS, directionOf, moveSays, reachOf } from '../../quantities/gimbalReach.ts';
import { type LoadSlide, movedShare, roomAlong, settingFor, settingPatches } from '../../quantities/loadSlides.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass, glassesOf } from '../../subjects.ts';

export const motors = question<SetupGlass>({
  id: 'balance.motors',
  asks: 'Can the gimbal’s motors hold what is left out of balance?',
  kind: 'immediate',
  explains:
    'As the camera is set in the gimbal with this lens, its weight times the distance of the centre of mass from an axis is what that axis’s motor holds at the worst attitude, all the time; the worse of tilt and roll counts, and of focus at infinity and close. Against the torque that the weakest motor holds continuously: above it the gimbal runs hot, drones and gives up. ' +
    'Quick moves, wind and stiff cables ask for more than that. The pan axis is upright as long as the gimbal is, however the camera is tilted, and weight has then no lever about it: it is shown and not judged. Held over by an angle, as low down with the handle level, it takes the sine of that angle of what is shown.',
  sources: ['statics of rigid bodies', 'common practice: balanced until it stays where it is put, with the motors off'],
  subjects: (ledger) => eachGlass(ledger).filter((subject) => gimbalOf(ledger, subject) !== undefined),
  ask: (asking, subject) => {
    const load = gimbalLoad(asking, subject);
    if (load === undefined) return null;
    if (typeof load === 'string') return cannotJudge(load);
    const most = asking.figure(load.gimbal.part, 'carrier/motorNm');
    const worst = worstAxis(load.offMm, load.shiftMm);
    const moment = ({ leverMm }: Axis): number => weightN(load.whole.massG) * leverMm * 1e-3;
    const shiftMm = Math.hypot(...load.shiftMm);
    return judgeRatio({
      needs: { amount: { value: moment(worst), unit: 'N·m' }, from: `${printAmount({ value: load.whole.massG, unit: 'g' })}, its centre ${printAmount({ value: worst.leverMm, unit: 'mm' })} off the ${worst.name} axis` },
      has: { amount: { value: most.value, unit: 'N·m' }, from: `${load.gimbal.name}, held continuously ${origin(most)}` },
      says: {
        holds: `The motors of ${load.gimbal.name} hold the camera as it is set.`, tight: `The motors of ${load.gimbal.name} just hold the camera as it is set.`,
        fails: `The motors of ${load.gimbal.name} do not hold the camera as it is set: it is out of balance about the ${worst.name} axis.`,
      },
      steps: [
        ...axesOf(load.offMm, load.shiftMm).map((axis) => ({ says: `about the ${axis.name} axis, ${printAmount({ value: axis.leverMm, unit: 'mm' })} off${axis.holds ? '' : ': nothing while that axis is upright; held over on its side, up to'}`, amount: { value: moment(axis), unit: 'N·m' as const } })),
        ...(shiftMm > 0.05 ? [{ says: 'from infinity to close the centre moves by', amount: { value: shiftMm, unit: 'mm' as const } }] : []),
      ],
      mends: moment(worst) > 0.9 * most.value ? rebalanced(asking, subject, load, most.value) : [],
      notes: [ESTIMATE, 'Fingers, hair and cables clear when a gimbal starts.', ...load.notes],
    });
  },
});

interface Axis {
  readonly name: string;
  readonly leverMm: number;
  /** Its motor holds that lever as the gimbal is used, upright. */
  readonly holds: boolean;
}

/** Across the camera, along it, and upright: how far the centre lies off each, at the worse end of focus. */
function axesOf(offMm: Vector, shiftMm: Vector): Axis[] {
  const off = (a: 0 | 1 | 2, b: 0 | 1 | 2): number => Math.max(Math.hypot(offMm[a], offMm[b]), Math.hypot(offMm[a] + shiftMm[a], offMm[b] + shiftMm[b]));
  return [{ name: 'tilt', leverMm: off(1, 2), holds: true }, { name: 'roll', leverMm: off(0, 1), holds: true }, { name: 'pan', leverMm: off(0, 2), holds: false }];
}

const worstAxis = (offMm: Vector, shiftMm: Vector): Axis => axesOf(offMm, shiftMm).filter(({ holds }) => holds).reduce((worst, one) => (one.leverMm > worst.leverMm ? one : worst));

/** Slid to balance with this lens on: first by the joints that the file knows, as far as they go; then along the gimbal's own plates as well, by hand. */
function rebalanced(asking: Asking, subject: SetupGlass, load: GimbalLoad, mostNm: number): Mend[] {
  const { offMm, shiftMm, whole } = load;
  const useAt = (off: Vector): number => (weightN(whole.massG) * worstAxis(off, shiftMm).leverMm * 1e-3) / mostNm;
  const slid = alongJoints(asking, subject, load);
  const byHand = alongGimbal(asking, subject, load, slid.offMm);
  const says = (off: Vector): string => `Balance it with this lens on: the centre ${movesSaid(offMm, off)}`;
  const only = glassesOf(asking.ledger, subject.setup).length > 1 ? subject.glass : undefined;
  const patches = slid.set.flatMap(({ slide, value }, at) => patchesAfter(slid.set.slice(0, at), slide, value, only));
  const costs = 'again at each lens change';
  return [
    ...(patches.length > 0 && useAt(slid.offMm) < 0.98 * useAt(offMm) ? [{ says: says(slid.offMm), use: useAt(slid.offMm), costs, edit: { says: says(slid.offMm), patches } }] : []),
    ...(useAt(byHand) < 0.98 * useAt(slid.offMm) ? [{ says: says(byHand), use: useAt(byHand), costs: `${costs}; ${movesSaid(slid.offMm, byHand)} along the gimbal itself, where the file has no joint to set` }] : []),
  ];
}

/** What of a move is worth the words. */
const movesSaid = (before: Vector, after: Vector): string => WAYS.filter(({ at }) => Math.abs(after[at] - before[at]) >= LEAST_MM).map((way) => moveSays(way, after[way.at] - before[way.at])).join(', ');

const LEAST_MM = 0.5;
const wantedOf = ({ offMm, shiftMm }: GimbalLoad, at: 0 | 1 | 2): number => -(offMm[at] + shiftMm[at] / 2);

interface Slid {
  /** Where the centre then lies off the axes. */
  readonly offMm: Vector;
  readonly set: readonly { readonly slide: LoadSlide; readonly value: number }[];
}

function alongJoints(asking: Asking, { setup, glass }: SetupGlass, load: GimbalLoad): Slid {
  const off: [number, number, number] = [...load.offMm];
  const set: { slide: LoadSlide; value: number }[] = [];
  for (const way of WAYS) {
    const wanted = wantedOf(load, way.at);
    if (Math.abs(wanted) < LEAST_MM) continue;
    const before = off[way.at];
    const direction = directionOf(load.turn, way, wanted);
    for (const slide of reachOf(asking.ledger, { setup, glass }, load, way, wanted)?.slides ?? []) {
      const left = Math.abs(wanted) - Math.abs(off[way.at] - before);
      const share = movedShare(load.whole, slide);
      const value = settingFor(slide, direction, Math.min(left / Math.max(share, 0.01), roomAlong(slide, direction)));
      if (value === slide.valueMm) continue;
      set.push({ slide, value });
      const went = load.turn(slide.way);
      for (const { at } of WAYS) off[at] += (value - slide.valueMm) * share * went[at];
    }
  }
  return { offMm: off, set };
}

/** Ways for which the file has no joint, and the gimbal states its travel. */
function alongGimbal(asking: Asking, { setup, glass }: SetupGlass, load: GimbalLoad, offMm: Vector): Vector {
  const off: [number, number, number] = [...offMm];
  for (const way of WAYS) {
    const wanted = wantedOf({ ...load, offMm }, way.at);
    const reach = reachOf(asking.ledger, { setup, glass }, load, way, wanted);
    if (reach === undefined || reach.slides.length > 0 || Math.abs(wanted) < LEAST_MM) continue;
    off[way.at] += Math.sign(wanted) * Math.min(Math.abs(wanted), reach.roomMm);
  }
  return off;
}

/** Two settings of one joint that has none yet: the first makes the map, the second goes into it. */
function patchesAfter(before: readonly { slide: LoadSlide }[], slide: LoadSlide, value: number, glass: string | undefined) {
  const made = before.some((one) => one.slide.joint.path === slide.joint.path);
  return settingPatches(made ? { ...slide, joint: { ...slide.joint, settings: { ...slide.joint.settings, [slide.key]: slide.joint.settings[slide.key] ?? slide.valueMm } } } : slide, value, glass);
}
