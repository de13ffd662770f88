/** The pull against a bare typed-array loop of as many steps. `limitRatio`: how many times the floor still counts as healthy. */
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import { pullInputs } from '../../src/calc/focus/pull/given.ts';
import { pullJob, pullLedger, pullRunner } from '../../src/calc/focus/pull/job.ts';
import { prepareShot } from '../../src/calc/focus/pull/shot.ts';
import { runTakes } from '../../src/calc/focus/pull/takes.ts';

const KEYFRAMES = [
  { atS: 0, distanceMm: 5000 }, { atS: 1, distanceMm: 5000 }, { atS: 6, distanceMm: 1500 }, { atS: 8, distanceMm: 1500 },
  { atS: 8.6, distanceMm: 3500, by: 'rack' },
];

/** Every part of the model at work: marks and picture, sway, misses, play, steps, a real motor. All figures invented. */
const SHOT = {
  seed: 5, trials: 1000, seconds: 10, stepMs: 2, frameRateHz: 24, keyframes: KEYFRAMES, subjectMissMm: 30, swayMm: 12, swayHz: 0.7,
  scale: [[null, 0], [5000, 40], [3000, 70], [1500, 140], [900, 220]].map(([distanceMm, angleDeg]) => ({ distanceMm, angleDeg })),
  focalLengthMm: 85, fNumber: 2, focuserToSensorMm: 250, circleOfConfusionMm: 0.025, way: 'both', marksPerMove: 3, markErrorMm: 20, markErrorDeg: 0.5,
  stopErrorDeg: 0.3, timingSpreadMs: 80, lateMs: 0, pictureDelayMs: 70, visibleBlurMm: 0.03, reactionMs: 231, reactionSpreadMs: 25,
  direction: 'seen', phaseMarginDeg: 50, crossoverCapRadPerS: 5, remnantShare: 0.4, linkDelayMs: 20, handStepDeg: 0.05, motorRpm: 150, gearRatio: 2,
  spinUpMs: 60, motorLagMs: 15, playDeg: 0.3,
};

const even = (low, high, count) => Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));

/** Forty points in all; the ranking of single changes, which comes on top, is left out. */
const WHAT_IF = {
  trials: 200, pictureDelaysMs: even(0, 300, 10), fNumbers: even(1.4, 8, 8), focalLengthsMm: even(40, 135, 6), speeds: even(0.8, 1.25, 6),
  marksPerMove: even(0, 7, 8),
  modes: [{ name: 'fast', pictureDelayMs: 20, visibleBlurMm: 0.04 }, { name: 'detailed', pictureDelayMs: 150, visibleBlurMm: 0.02 }],
};

export async function bench() {
  const shot = prepareShot(pullInputs.parse(SHOT));
  const takesMs = best(5, () => runTakes(shot, 0, 1000, true));
  const steps = shot.frames * shot.stepsPerFrame;
  const takesFloorMs = best(5, () => bareLoop(1000, steps));
  const curveFloorMs = best(3, () => bareLoop(40 * 200, steps));
  const work = points();
  const oneCoreMs = best(3, () => work.tasks.forEach((task) => work.ledger.enter(task, work.run(task))));
  const twoCoreMs = await onTwoCores();
  const floorName = 'bare typed-array loop';
  return [
    { name: 'pull: 1000 takes of 10 s at 2 ms, one core', ms: takesMs, aimMs: 250, floorName, floorMs: takesFloorMs, limitRatio: 30 },
    { name: 'pull: what-if curves, 40 points × 200 takes, one core', ms: oneCoreMs, floorName, floorMs: curveFloorMs, limitRatio: 30 },
    { name: 'pull: the same on two cores', ms: twoCoreMs, aimMs: 1500, floorName: `${floorName} on one`, floorMs: curveFloorMs, limitRatio: 25 },
  ];
}

/** What any simulation of this length must at least do: read a path, follow it with a lag, keep a delayed copy. */
function bareLoop(takes, steps) {
  const path = Float64Array.from({ length: steps }, (_, n) => n % 100);
  const delayed = new Float64Array(steps + 10);
  let ring = 0;
  for (let take = 0; take < takes; take++) {
    for (let n = 0; n < steps; n++) {
      delayed[n + 10] = ring;
      ring += (path[n] - delayed[n]) * 0.01;
    }
  }
  return ring;
}

/** The job of the shot with its curves, and those of its tasks that are points on a curve. */
function points() {
  const job = pullJob(pullInputs.parse({ ...SHOT, trials: 200, whatIf: WHAT_IF }));
  const tasks = job.tasks.filter(({ variant }) => variant >= 0 && job.variants[variant].axis !== undefined);
  return { job, tasks, run: pullRunner(job), ledger: pullLedger(job) };
}

function answerOf(worker) {
  return new Promise((resolve, reject) => worker.once('message', resolve).once('error', reject));
}

async function onTwoCores() {
  const { tasks, ledger } = points();
  const workers = [0, 1].map((half) => new Worker(new URL(import.meta.url), { workerData: { half } }));
  try {
    await Promise.all(workers.map(answerOf));
    let least = Infinity;
    for (let turn = 0; turn < 3; turn++) {
      const start = performance.now();
      const halves = await Promise.all(workers.map((worker) => {
        const answer = answerOf(worker);
        worker.postMessage('run', []);
        return answer;
      }));
      for (const half of halves) for (const [i, tally] of half) ledger.enter(tasks[i], tally);
      least = Math.min(least, performance.now() - start);
    }
    return least;
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

function best(times, work) {
  let least = Infinity;
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

if (!isMainThread && workerData?.half !== undefined) {
  const { tasks, run } = points();
  parentPort.on('message', () => parentPort.postMessage(tasks.flatMap((task, i) => (i % 2 === workerData.half ? [[i, run(task)]] : [])), []));
  parentPort.postMessage('ready', []);
}
