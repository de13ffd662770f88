import * as z from 'zod';
import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface CoaxReach {
  reachM: number;
  lossDbPer100m: number;
}

interface LossPoint {
  readonly atMHz: number;
  readonly dbPer100m: number;
}

/** How far an SDI signal runs on a coaxial cable before its receiver's loss budget is spent. */
export const coaxReach = calculator(
  {
    name: 'video.coaxReach',
    sentence: 'Length of coaxial cable after which the loss at half the bit rate has spent the budget of the receiver.',
    inputs: inputs({
      rateGbps: positive('Gb/s', 'bit rate on the cable'),
      loss: z
        .array(z.strictObject({ atMHz: positive('MHz', 'frequency of the figure'), dbPer100m: positive('dB/100 m', 'loss there') }))
        .min(1)
        .readonly()
        .meta({ unit: 'dB/100 m', description: 'loss of the cable at one frequency or more, from its data' }),
      budgetDb: positive('dB', 'loss the receiver can make good at half the bit rate'),
    }),
    results: { reachM: 'm', lossDbPer100m: 'dB/100 m, at half the bit rate' },
    formula: 'one point: k1 = loss/√f; more: plain least squares for loss = k1·√f + k2·f. At f = rate/2: reach = 100 · budget/loss',
    source: 'Skin effect goes with √f, loss in the dielectric with f. Budgets are typical, not limits: HD 20, 3G 20 to 30, 6G and 12G 40 dB',
    examples: [
      {
        given: { rateGbps: 5.94, loss: [{ atMHz: 742.5, dbPer100m: 17.7 }, { atMHz: 1485, dbPer100m: 25.64 }], budgetDb: 40 },
        gives: { reachM: '106.7' },
        source: 'published cable figures; the published reach is 106 m',
      },
    ],
  },
  ({ rateGbps, loss, budgetDb }): CoaxReach => {
    const atMHz = (rateGbps * 1000) / 2;
    const [k1, k2] = fit(loss);
    const lossDbPer100m = k1 * Math.sqrt(atMHz) + k2 * atMHz;
    if (lossDbPer100m > 0) return { reachM: (100 * budgetDb) / lossDbPer100m, lossDbPer100m };
    if (!Number.isFinite(lossDbPer100m)) throw new NoAnswer('loss', 'These losses are too extreme to fit a curve through; check their units.');
    const found = `Found losses whose fit falls to ${lossDbPer100m.toPrecision(3)} dB/100 m at ${atMHz} MHz`;
    throw new NoAnswer('loss', `${found}; points nearer that frequency, rising with it, are needed.`);
  },
);

/** The factors of √f and f that come nearest to the points, by normal equations. */
function fit(points: readonly LossPoint[]): readonly [number, number] {
  const [first] = points;
  if (first === undefined) throw new NoAnswer('loss', 'Found no point; at least one is needed.');
  if (points.length === 1) return [first.dbPer100m / Math.sqrt(first.atMHz), 0];
  if (points.every(({ atMHz }) => atMHz === first.atMHz)) {
    throw new NoAnswer('loss', `Found several points, all at ${first.atMHz} MHz; give one of them, or points at different frequencies.`);
  }
  // In units of the highest frequency, so that the sums stay near 1 whatever the figures.
  const top = Math.max(...points.map(({ atMHz }) => atMHz));
  let [rootRoot, rootLine, lineLine, rootLoss, lineLoss] = [0, 0, 0, 0, 0];
  for (const { atMHz, dbPer100m } of points) {
    const line = atMHz / top;
    const root = Math.sqrt(line);
    rootRoot += line;
    rootLine += root * line;
    lineLine += line * line;
    rootLoss += root * dbPer100m;
    lineLoss += line * dbPer100m;
  }
  const determinant = rootRoot * lineLine - rootLine * rootLine;
  const k1 = (rootLoss * lineLine - lineLoss * rootLine) / determinant;
  const k2 = (lineLoss * rootRoot - rootLoss * rootLine) / determinant;
  return [k1 / Math.sqrt(top), k2 / top];
}
