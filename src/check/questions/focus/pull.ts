import { pull as simulate } from '../../../calc/focus/pull.ts';
import type { PullGiven, PullWay } from '../../../calc/focus/pull/given.ts';
import type { PullOutcome } from '../../../calc/focus/pull/outcome.ts';
import { focus } from '../../../standards/assumptions/focus.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Curve, Judgement, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeShare } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { shotName } from '../../quantities/shotName.ts';
import { changeMends } from '../../quantities/pullChanges.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { type PullPlan, pullGiven } from '../../quantities/pullGiven.ts';
import { question } from '../../question.ts';
import type { ShotSubject } from '../../subjects.ts';

const SEED = 1;
const MOST_TAKES = 400;
const MOST_TAKES_OF_A_CHANGE = 200;
/** Time steps spent on the shot as planned, and on all the changes: some seconds. Only shots of minutes come near. */
const STEPS = { planned: 60_000_000, changed: 120_000_000 };
const CHANGES = 14; // at most that many single changes are tried
const FEWEST_TAKES = 10;

export const pull = question({
  id: 'focus.pull',
  asks: 'Can the shot be pulled in the way that is planned?',
  kind: 'studied',
  explains:
    'Some hundred takes of the shot are simulated: people who miss their places a little, a camera that sways, a hand that is early or late and lands beside its mark, a picture that comes late and shows no blur until it is visible on that screen, ' +
    'the link, the motor under the torque of this ring on this day, and the play. The share of the frames that is sharp in a usual take, against the share wished. Then each thing a crew can change is changed alone, on the same takes, and ranked. ' +
    'How far people miss and how well a hand lands are estimates until seen in rehearsal, and no study concerns focus pulling itself: read it as a ranking and as bands, never as a promise about a take. The command "pull" draws the bands.',
  sources: ['McRuer & Jex 1967: crossover model', 'Flash & Hogan 1985: minimum jerk', 'Woods et al. 2015: reaction', 'spreads of hand and subject: estimates; no study concerns focus pulling itself'],
  subjects: eachPulled,
  ask: (asking, subject) => {
    if (outOfReach(asking, subject)) return null;
    const first = pullGiven(asking, subject, { seed: SEED, trials: MOST_TAKES });
    if (first === undefined) return null;
    const plan = { ...first, given: withinTime(first) };
    return judgement(asking, subject, plan, simulate(plan.given));
  },
});

/** A shot of minutes gets fewer takes, and its changes none where they would be too few to tell. */
function withinTime({ given, modes }: PullPlan): PullGiven {
  const stepsPerTake = (given.seconds * 1000) / given.stepMs;
  const fitting = (most: number, steps: number) => Math.max(FEWEST_TAKES, Math.min(most, Math.floor(steps / stepsPerTake)));
  const trials = fitting(MOST_TAKES, STEPS.planned);
  const ofAChange = Math.min(trials, MOST_TAKES_OF_A_CHANGE, Math.floor(STEPS.changed / CHANGES / stepsPerTake));
  if (ofAChange < FEWEST_TAKES) return { ...given, trials };
  return { ...given, trials, whatIf: { trials: ofAChange, modes: modes.map(({ name, pictureDelayMs, visibleBlurMm }) => ({ name, pictureDelayMs, visibleBlurMm })) } };
}

const PULLED: Record<PullWay, string> = {
  stops: 'between two hard stops', marks: 'by known marks', picture: 'by the picture alone', both: 'by marks and picture',
};

function judgement(asking: Asking, subject: ShotSubject, plan: PullPlan, outcome: PullOutcome): Judgement {
  const wished = asking.assume(focus.shareSharp);
  const short = outcome.shareSharp < 1 - 0.9 * (1 - wished.value);
  const mends = short ? changeMends(asking, subject, plan, outcome, wished.value) : [];
  const tried = plan.given.whatIf !== undefined;
  const helpless = tried && outcome.shareSharp < wished.value && mends.length === 0;
  const shot = shotName(asking, subject);
  const pulled = PULLED[plan.way];
  return judgeShare({
    got: outcome.shareSharp,
    wished: wished.value,
    needs: { amount: { value: wished.value, unit: 'share' }, from: `of a usual take sharp, as wished ${origin(wished)}` },
    has: { amount: { value: outcome.shareSharp, unit: 'share' }, from: `of ${plan.given.trials} simulated takes, pulled ${pulled}` },
    says: {
      holds: `${shot} pulled ${pulled} stays sharp for most of a simulated take.`,
      tight: `${shot} pulled ${pulled} is only just sharp often enough in simulated takes.`,
      fails: `${shot} pulled ${pulled} is soft too much of the time in simulated takes.`,
    },
    steps: steps(plan, outcome),
    mends,
    notes: [...(helpless ? ['No single change that was tried helps.'] : []), ...outcome.limits],
    curve: bands(plan, outcome),
  });
}

function steps({ given, says }: PullPlan, outcome: PullOutcome): Step[] {
  const byPicture = given.way === 'picture' || given.way === 'both';
  return [
    ...says.map((one) => ({ says: one })),
    { says: 'sharp in the worst tenth of the takes', amount: { value: outcome.shareSharpWorstTenth, unit: 'share' } },
    { says: 'takes sharp throughout', amount: { value: outcome.takesSharpThroughout, unit: 'share' } },
    { says: 'longest soft stretch of a take, on average', amount: { value: outcome.longestSoftS, unit: 's' } },
    ...(byPicture ? [{ says: `delay round the loop, the picture ${printNumber(given.pictureDelayMs)} ms of it`, amount: { value: outcome.wholeDelayMs, unit: 'ms' as const } }] : []),
    ...(outcome.wantedDegPerS > 0 && Number.isFinite(outcome.motorDegPerS)
      ? [{ says: `fastest turn asked of the ring (the motor makes ${printAmount({ value: outcome.motorDegPerS, unit: 'deg/s' })})`, amount: { value: outcome.wantedDegPerS, unit: 'deg/s' as const } }]
      : []),
  ];
}

/** What one, five and nine takes in ten stay within, over time. */
function bands({ given }: PullPlan, { bands: columns }: PullOutcome): Curve {
  const line = (says: string, at: readonly number[]) => ({ says, unit: 'mm' as const, at });
  return {
    title: 'Blur on the sensor over the shot, in simulated takes',
    x: { says: 'time', unit: 's', at: columns.map(({ atS }) => atS) },
    lines: [
      line('nine takes in ten within', columns.map(({ nineTenthsMm }) => nineTenthsMm)),
      line('half of them within', columns.map(({ medianMm }) => medianMm)),
      line('what counts as sharp', columns.map(() => given.circleOfConfusionMm)),
    ],
  };
}
