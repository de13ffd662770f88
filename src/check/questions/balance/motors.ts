import { weightN } from '../../../calc/mechanics/gravity.ts';
import { type Vector, subtract } from '../../../assembly/placing/Transform.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { allPlaced } from '../../quantities/allPlaced.ts';
import { allInBalance } from '../../quantities/allWeighed.ts';
import { ESTIMATE } from '../../quantities/estimateNote.ts';
import { type GimbalAxis, type GimbalGust, gimbalGust } from '../../quantities/gimbalGust.ts';
import { type GimbalLoad, gimbalLoad, gimbalOf } from '../../quantities/gimbalLoad.ts';
import { WAYS, directionOf, moveSays, reachOf } from '../../quantities/gimbalReach.ts';
import { type LoadSlide, movedShare, roomAlong, settingFor, settingPatches } from '../../quantities/loadSlides.ts';
import { windSays } from '../../quantities/windOn.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass, glassesOf } from '../../subjects.ts';

export const motors = question<SetupGlass>({
  id: 'balance.motors',
  asks: 'Can the gimbal’s motors hold what is left out of balance?',
  kind: 'immediate',
  explains:
    'As the camera is set in the gimbal with this lens, its weight times the distance of the centre of mass from an axis is what that axis’s motor holds at the worst attitude, all the time; the worse of tilt and roll counts, and of focus at infinity and close. Against the torque that the weakest motor holds continuously: above it the gimbal runs hot, drones and gives up. ' +
    'The pan axis is upright as long as the gimbal is, however the camera is tilted, and weight has then no lever about it: its weight is shown and not judged. Held over by an angle, as low down with the handle level, it takes the sine of that angle of what is shown. ' +
    'Outdoors the strongest gust of the days on which it is shot is added: its push on the outline of all that turns with the camera, as it is placed and level, from the side that is worst for that axis, times the lever of its middle, the push lying up to a quarter of the width beside it; the pan axis counts for that. A gust passes while weight stays: the sum is the worst moment, not the mean. ' +
    'Quick moves and stiff cables ask for more than that.',
  sources: ['statics of rigid bodies', 'drag: air of ISO 2533, a box 1.05', 'EN 1991-1-4, 7.4.3: the push beside the middle', 'common practice: balanced until it stays where it is put, with the motors off'],
  subjects: (ledger) => eachGlass(ledger).filter((subject) => gimbalOf(ledger, subject) !== undefined),
  ask: (asking, subject) => {
    const load = gimbalLoad(asking, subject);
    if (load === undefined) return null;
    if (typeof load === 'string') return cannotJudge(load);
    const most = asking.figure(load.gimbal.part, 'carrier/motorNm');
    const gust = gimbalGust(asking, subject, load);
    const axes = axesOf(load, gust);
    const [worst, still] = [worstAxis(axes), Math.max(...axes.map(({ weightNm }) => weightNm))];
    const shiftMm = Math.hypot(...load.shiftMm);
    const inWind = worst.windNm > 0 ? ' in the wind' : '';
    return allPlaced(allInBalance(judgeRatio({
      needs: { amount: { value: worst.momentNm, unit: 'N·m' }, from: needsFrom(load, worst, gust) },
      has: { amount: { value: most.value, unit: 'N·m' }, from: `${load.gimbal.name}, held continuously ${origin(most)}` },
      says: {
        holds: `The motors of ${load.gimbal.name} hold the camera as it is set.`, tight: `The motors of ${load.gimbal.name} just hold the camera as it is set${inWind}.`,
        fails: still > most.value || worst.windNm === 0 ? `The motors of ${load.gimbal.name} do not hold the camera as it is set: it is out of balance about the ${worst.name} axis.` : `The motors of ${load.gimbal.name} do not hold the camera in the wind: a gust turns it about the ${worst.name} axis.`,
      },
      steps: [
        ...axes.map(({ name, leverMm, holds }) => ({ says: `about the ${name} axis, ${printAmount({ value: leverMm, unit: 'mm' })} off${holds ? '' : ': nothing while that axis is upright; held over on its side, up to'}`, amount: { value: weightN(load.whole.massG) * leverMm * 1e-3, unit: 'N·m' as const } })),
        ...(gust === undefined ? [] : gustSteps(axes, gust)),
        ...(shiftMm > 0.05 ? [{ says: 'from infinity to close the centre moves by', amount: { value: shiftMm, unit: 'mm' as const } }] : []),
      ],
      mends: worst.momentNm > 0.9 * most.value ? [...rebalanced(asking, subject, load, { mostNm: most.value, gust }), ...sheltered(axes, gust, most.value)] : [],
      notes: [ESTIMATE, 'Fingers, hair and cables clear when a gimbal starts.', ...load.notes],
    }), load.whole.unweighed), [load.whole]);
  },
});

interface Axis {
  readonly name: GimbalAxis;
  readonly leverMm: number;
  /** Its motor holds that lever as the gimbal is used, upright. */
  readonly holds: boolean;
  /** What its motor holds of the weight, of a gust, and together. */
  readonly weightNm: number;
  readonly windNm: number;
  readonly momentNm: number;
}

/** Across the camera, along it, and upright: how far the centre lies off each, at the worse end of focus; as it is set, or slid to another place. */
function axesOf({ shiftMm, whole, offMm: before }: GimbalLoad, gust: GimbalGust | undefined, offMm: Vector = before): Axis[] {
  const off = (a: 0 | 1 | 2, b: 0 | 1 | 2): number => Math.max(Math.hypot(offMm[a], offMm[b]), Math.hypot(offMm[a] + shiftMm[a], offMm[b] + shiftMm[b]));
  // What moves the centre moves the outline by about as much.
  const movedMm = subtract(offMm, before);
  const axis = (name: GimbalAxis, leverMm: number, holds: boolean): Axis => {
    const weightNm = holds ? weightN(whole.massG) * leverMm * 1e-3 : 0;
    const windNm = gust?.about(name, movedMm) ?? 0;
    return { name, leverMm, holds, weightNm, windNm, momentNm: weightNm + windNm };
  };
  return [axis('tilt', off(1, 2), true), axis('roll', off(0, 1), true), axis('pan', off(0, 2), false)];
}

const worstAxis = (axes: readonly Axis[]): Axis => axes.reduce((worst, one) => (one.momentNm > worst.momentNm ? one : worst));
const inNm = (value: number): string => printAmount({ value, unit: 'N·m' });

function needsFrom({ whole }: GimbalLoad, { name, leverMm, holds, weightNm, windNm }: Axis, gust: GimbalGust | undefined): string {
  const weight = `${printAmount({ value: whole.massG, unit: 'g' })}, its centre ${printAmount({ value: leverMm, unit: 'mm' })} off the ${name} axis`;
  if (gust === undefined || windNm === 0) return weight;
  const wind = `${holds ? `${inNm(windNm)} of wind` : 'wind about the pan axis'}: ${windSays(gust.air, gust.areaMm2)}`;
  return holds ? `${inNm(weightNm)} of weight, ${weight}, and ${wind}` : wind;
}

const gustSteps = (axes: readonly Axis[], { forceN, areaMm2, air }: GimbalGust): Step[] => [
  { says: `a gust on what turns with the camera, ${windSays(air, areaMm2)}`, amount: { value: forceN, unit: 'N' } },
  ...axes.map(({ name, windNm }) => ({ says: `wind besides, about the ${name} axis`, amount: { value: windNm, unit: 'N·m' as const } })),
];

/** What weight alone leaves of the motors is held against wind, which goes with the square of its speed. */
function sheltered(axes: readonly Axis[], gust: GimbalGust | undefined, mostNm: number): Mend[] {
  const still = Math.max(...axes.map(({ weightNm }) => weightNm));
  if (gust === undefined || still > mostNm) return [];
  const speedMps = gust.air.speedMps * Math.sqrt(Math.min(...axes.map(({ weightNm, windNm }) => (windNm > 0 ? (mostNm - weightNm) / windNm : Infinity))));
  const upTo = Number.isFinite(speedMps) ? `: as it is set they hold it in gusts of up to ${printAmount({ value: speedMps, unit: 'm/s' })}` : '';
  return [{ says: `Keep it out of the wind${upTo}`, use: still / mostNm, costs: 'a windbreak, or another place' }];
}

/** Slid to balance with this lens on: first by the joints that the file knows, as far as they go; then along the gimbal's own plates as well, by hand. */
function rebalanced(asking: Asking, subject: SetupGlass, load: GimbalLoad, { mostNm, gust }: { readonly mostNm: number; readonly gust: GimbalGust | undefined }): Mend[] {
  const { offMm } = load;
  const useAt = (off: Vector): number => worstAxis(axesOf(load, gust, off)).momentNm / mostNm;
  const slid = alongJoints(asking, subject, load);
  const byHand = alongGimbal(asking, subject, load, slid.offMm);
  const says = (off: Vector): string => `Balance it with this lens on: slide the camera on its plate until the centre comes ${movesSaid(load, offMm, off)}`;
  const only = glassesOf(asking.ledger, subject.setup).length > 1 ? subject.glass : undefined;
  const patches = slid.set.flatMap(({ slide, value }, at) => patchesAfter(slid.set.slice(0, at), slide, value, only));
  const costs = 'again at each lens change';
  return [
    ...(patches.length > 0 && useAt(slid.offMm) < 0.98 * useAt(offMm) ? [{ says: says(slid.offMm), use: useAt(slid.offMm), costs, edit: { says: says(slid.offMm), patches } }] : []),
    ...(useAt(byHand) < 0.98 * useAt(slid.offMm) ? [{ says: says(byHand), use: useAt(byHand), costs: `${costs}; ${movesSaid(load, slid.offMm, byHand)} along the gimbal itself, where the file has no joint to set` }] : []),
  ];
}

/** What of a move is worth the words. One that ends within what nobody slides more finely is told as what is wanted, as the question whether it can be balanced tells it. */
const movesSaid = (load: GimbalLoad, before: Vector, after: Vector): string => WAYS.flatMap((way) => {
  const [wentMm, wantedMm] = [after[way.at] - before[way.at], wantedOf({ ...load, offMm: before }, way.at)];
  return Math.abs(wentMm) < LEAST_MM ? [] : [moveSays(way, Math.abs(wentMm - wantedMm) < LEAST_MM ? wantedMm : wentMm)];
}).join(', ');

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
