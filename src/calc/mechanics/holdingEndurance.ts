import { calculator } from '../calculator.ts';
import { inputs, nonNegative, share } from '../inputs.ts';

export interface HoldingEndurance {
  enduranceMin: number;
  use: number;
}

/** Below this share a hold was taken to last indefinitely; later studies found tiredness there too. */
const NOT_LIMITED_BELOW = 0.15;

/** A caution, not a limit: no published figure exists for how long a camera may be held. Pain is a reason to stop. */
export const holdingEndurance = calculator(
  {
    name: 'mechanics.holdingEndurance',
    sentence: 'How long a share of one\'s strength can be held without rest, by a published curve.',
    inputs: inputs({
      forceShare: share('force held, as a share of the strongest one can give in that posture'),
      holdMin: nonNegative('min', 'time it is to be held'),
    }),
    results: {
      enduranceMin: 'min until one must let go; null: below 15 %, where the curve sets no end (later studies do)',
      use: 'time asked over that; 0 where the curve sets no end',
    },
    formula: 'minutes = −1.5 + 2.1/f − 0.6/f² + 0.1/f³, from f = 0.15 on',
    source: 'Rohmert 1960. A caution, not a limit: for a shoulder or handheld rig no published limit exists',
    examples: [
      { given: { forceShare: 0.3, holdMin: 1 }, gives: { enduranceMin: '2.54' }, source: 'Rohmert, read' },
      { given: { forceShare: 0.5, holdMin: 1.1 }, gives: { enduranceMin: '1.1', use: '1.00' }, source: 'Rohmert, read' },
      { given: { forceShare: 0.1, holdMin: 60 }, gives: { enduranceMin: null, use: '0' }, source: 'Rohmert: below 15 % indefinite' },
    ],
  },
  ({ forceShare: f, holdMin }): HoldingEndurance => {
    const enduranceMin = f < NOT_LIMITED_BELOW ? Infinity : -1.5 + 2.1 / f - 0.6 / f ** 2 + 0.1 / f ** 3;
    return { enduranceMin, use: holdMin / enduranceMin };
  },
);
