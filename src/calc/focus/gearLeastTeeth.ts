import { calculator } from '../calculator.ts';
import { between, inputs, orInfinity, whole } from '../inputs.ts';

export interface GearLeastTeeth {
  leastTeeth: number;
  undercutFreeTeeth: number;
}

/** A small motor gear with fewer binds at its roots, or was cut away there and runs rough. */
export const gearLeastTeeth = calculator(
  {
    name: 'focus.gearLeastTeeth',
    sentence: 'Fewest teeth a small spur gear may have to run with a larger one without its roots being fouled.',
    inputs: inputs({
      drivenTeeth: orInfinity(whole(3, 'teeth', 'teeth of the larger gear; null: a straight rack')),
      pressureAngleDeg: between(1, 45, 'deg', 'pressure angle; 20 in the standard rack'),
    }),
    results: {
      leastTeeth: 'teeth, fewest that run with this gear; more than drivenTeeth: too few teeth on both',
      undercutFreeTeeth: 'teeth, fewest that a rack-shaped cutter leaves whole',
    },
    formula:
      'the large tip may reach to where the line of action leaves the small base circle: ' +
      '(z2/2 + 1)² ≤ ((z2/2)·cosα)² + ((z1 + z2)/2)²·sin²α;  rack: z1 ≥ 2/sin²α',
    source: 'Shigley, Mechanical Engineering Design, interference of full-depth teeth; ISO 53 addendum 1 m',
    examples: [
      {
        given: { drivenTeeth: null, pressureAngleDeg: 20 },
        gives: { leastTeeth: '18', undercutFreeTeeth: '18' },
        source: 'Shigley: 17.1, so 18 for a rack (from memory)',
      },
      {
        given: { drivenTeeth: 64, pressureAngleDeg: 20 },
        gives: { leastTeeth: '16' },
        source: 'Shigley: 16 teeth run with up to 101, 15 with up to 45 (from memory)',
      },
    ],
  },
  ({ drivenTeeth, pressureAngleDeg }): GearLeastTeeth => {
    const sine = Math.sin((pressureAngleDeg * Math.PI) / 180);
    const undercutFreeTeeth = Math.ceil(2 / sine ** 2);
    if (drivenTeeth === Infinity) return { leastTeeth: undercutFreeTeeth, undercutFreeTeeth };
    // (z2/2 + 1)² − (z2/2)²·cos²α, written so that large gears keep their digits.
    const reach = Math.sqrt(1 + drivenTeeth + ((drivenTeeth / 2) * sine) ** 2);
    const least = (2 * reach) / sine - drivenTeeth;
    return { leastTeeth: Math.min(undercutFreeTeeth, Math.ceil(least - 1e-9)), undercutFreeTeeth };
  },
);
