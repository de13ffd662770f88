import { COUPLING_MULTIPLIERS, FREQUENCY_MULTIPLIERS, HIGH_LIFT_MM, LIFTS_PER_MIN } from '../../standards/liftingTables.ts';
import { calculator } from '../calculator.ts';
import { between, inputs, nonNegative, oneOf, positive } from '../inputs.ts';

export interface LiftingLimit {
  limitG: number;
  index: number;
  horizontalMultiplier: number;
  verticalMultiplier: number;
  distanceMultiplier: number;
  asymmetryMultiplier: number;
  couplingMultiplier: number;
  frequencyMultiplier: number;
}

const LOAD_CONSTANT_G = 23_000;

/** One person lifting with both hands: out of the case, on to the legs. Not holding, not carrying, not a rig on a shoulder. */
export const liftingLimit = calculator(
  {
    name: 'mechanics.liftingLimit',
    sentence: 'The weight most people can lift without undue strain, by the revised NIOSH equation.',
    inputs: inputs({
      massG: positive('g', 'mass to be lifted'),
      horizontalMm: positive('mm', 'hands ahead of the ankles'),
      verticalMm: nonNegative('mm', 'height of the hands at the start'),
      travelMm: nonNegative('mm', 'how far it is lifted'),
      asymmetryDeg: between(0, 180, 'deg', 'twist of the trunk'),
      coupling: oneOf(['good', 'fair', 'poor'], 'grip: handles; fingers under a box; nothing to hold'),
      liftsPerMin: nonNegative('count', 'lifts a minute'),
      durationH: between(0, 8, 'h', 'hours of lifting without as long a rest'),
    }),
    results: {
      limitG: 'g, recommended weight limit; 0: not to be lifted so',
      index: 'mass over that limit (lifting index): above 1 strain grows; null: not to be lifted so',
      horizontalMultiplier: 'for reach', verticalMultiplier: 'for height', distanceMultiplier: 'for travel', asymmetryMultiplier: 'for twist',
      couplingMultiplier: 'for grip', frequencyMultiplier: 'for how often and how long',
    },
    formula:
      '23 kg · 25/H · (1 − 0.003·|V − 75|) · (0.82 + 4.5/D) · (1 − 0.0032·A) · CM · FM, cm and degrees; ' +
      'H and D at least 25; 0 for H over 63, V or D over 175, A over 135; FM between rows in proportion',
    source:
      'NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation. ' +
      'It covers lifting, not holding: no published limit exists for a shoulder rig',
    examples: [
      {
        given: {
          massG: 10_000, horizontalMm: 400, verticalMm: 200, travelMm: 1200, asymmetryDeg: 30, coupling: 'fair', liftsPerMin: 0.2, durationH: 1,
        },
        gives: { limitG: '8839', couplingMultiplier: '0.95', frequencyMultiplier: '1.00', index: '1.13' },
        source: 'derived from the equation of NIOSH 94-110',
      },
      {
        given: { massG: 23_000, horizontalMm: 250, verticalMm: 750, travelMm: 250, asymmetryDeg: 0, coupling: 'good', liftsPerMin: 0, durationH: 1 },
        gives: { limitG: '23000', index: '1.00' },
        source: 'NIOSH 94-110: the best of all postures',
      },
    ],
  },
  (given): LiftingLimit => {
    const [h, v, d, a] = [given.horizontalMm / 10, given.verticalMm / 10, given.travelMm / 10, given.asymmetryDeg];
    const multipliers = {
      horizontalMultiplier: h > 63 ? 0 : 25 / Math.max(25, h),
      verticalMultiplier: v > 175 ? 0 : 1 - 0.003 * Math.abs(v - 75),
      distanceMultiplier: d > 175 ? 0 : 0.82 + 4.5 / Math.max(25, d),
      asymmetryMultiplier: a > 135 ? 0 : 1 - 0.0032 * a,
      couplingMultiplier: COUPLING_MULTIPLIERS[given.coupling][given.verticalMm < HIGH_LIFT_MM ? 'low' : 'high'],
      frequencyMultiplier: frequencyMultiplier(given),
    };
    const limitG = Object.values(multipliers).reduce((product, one) => product * one, LOAD_CONSTANT_G);
    return { limitG, index: given.massG / limitG, ...multipliers };
  },
);

function frequencyMultiplier({ liftsPerMin, durationH, verticalMm }: { liftsPerMin: number; durationH: number; verticalMm: number }): number {
  const { multipliers, lowLiftsUpTo } = FREQUENCY_MULTIPLIERS.find(({ upToH }) => durationH <= upToH)!;
  const most = verticalMm < HIGH_LIFT_MM ? lowLiftsUpTo : LIFTS_PER_MIN.at(-1)!;
  if (liftsPerMin > most) return 0;
  const above = LIFTS_PER_MIN.findIndex((row) => liftsPerMin <= row);
  if (above === 0) return multipliers[0]!;
  const [low, high] = [LIFTS_PER_MIN[above - 1]!, LIFTS_PER_MIN[above]!];
  const share = (liftsPerMin - low) / (high - low);
  return multipliers[above - 1]! * (1 - share) + multipliers[above]! * share;
}
