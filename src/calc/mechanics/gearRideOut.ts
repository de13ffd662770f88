import { calculator } from '../calculator.ts';
import { between, inputs, nonNegative, positive, whole } from '../inputs.ts';

export interface GearRideOut {
  contactRatio: number;
  backlashMm: number;
  ridesOutAtMm: number;
  use: number;
}

interface Pair {
  readonly moduleMm: number;
  readonly driverTeeth: number;
  readonly drivenTeeth: number;
  readonly pressureAngleDeg: number;
}

/** Whether gears that load pushes apart still hand over from tooth to tooth. How far they part is `mechanics.network`'s answer. */
export const gearRideOut = calculator(
  {
    name: 'mechanics.gearRideOut',
    sentence: 'How well two spur gears still mesh when load has pushed them apart, and where they ride out.',
    inputs: inputs({
      moduleMm: positive('module mm', 'module: pitch diameter over teeth'),
      driverTeeth: whole(6, 'teeth', 'teeth of the gear on the motor'),
      drivenTeeth: whole(6, 'teeth', 'teeth of the gear on the lens'),
      pressureAngleDeg: between(10, 35, 'deg', 'pressure angle; 20 in the standard rack'),
      separationMm: nonNegative('mm', 'how much further apart than the proper distance, along the line of centres'),
    }),
    results: {
      contactRatio: 'pairs of teeth in contact on average; below 1 there are moments without any; 0: the teeth pass each other',
      backlashMm: 'mm, play along the working pitch circle that the opening adds',
      ridesOutAtMm: 'mm, opening at which the ratio falls to 1; 0: it is never above 1',
      use: 'opening over that one; null: it never meshes smoothly',
    },
    formula:
      'cosα′ = a·cosα/(a + Δa);  contact = (√(ra1² − rb1²) + √(ra2² − rb2²) − a′·sinα′)/(π·m·cosα); ' +
      ' backlash = 2a′·(inv α′ − inv α), inv α = tanα − α',
    source: 'ISO 21771; ISO 53 rack (addendum 1 m); involute gears keep their ratio at any distance',
    examples: [
      {
        given: { moduleMm: 0.8, driverTeeth: 40, drivenTeeth: 120, pressureAngleDeg: 20, separationMm: 0 },
        gives: { contactRatio: '1.79245', backlashMm: '0', use: '0' },
        source: 'derived',
      },
      {
        given: { moduleMm: 0.8, driverTeeth: 40, drivenTeeth: 120, pressureAngleDeg: 20, separationMm: 0.1 },
        gives: { backlashMm: '0.073' },
        source: 'published first order: 2·Δa·tanα, 0.1 → 0.0728 mm; the exact form is 0.4 % above it here',
      },
    ],
  },
  ({ separationMm, ...pair }): GearRideOut => {
    const ridesOutAtMm = ridesOutAt(pair);
    return {
      contactRatio: contactRatio(pair, separationMm),
      backlashMm: backlash(pair, separationMm),
      ridesOutAtMm,
      use: separationMm === 0 && ridesOutAtMm > 0 ? 0 : separationMm / ridesOutAtMm,
    };
  },
);

/** Sizes in modules. */
function sizes({ driverTeeth, drivenTeeth, pressureAngleDeg }: Pair) {
  const angle = (pressureAngleDeg * Math.PI) / 180;
  return { centres: (driverTeeth + drivenTeeth) / 2, cosine: Math.cos(angle), angle };
}

function contactRatio(pair: Pair, separationMm: number): number {
  const { centres, cosine } = sizes(pair);
  const apart = centres + separationMm / pair.moduleMm;
  const reach = (teeth: number) => Math.sqrt((teeth / 2 + 1) ** 2 - ((teeth / 2) * cosine) ** 2);
  const line = Math.sqrt(apart * apart - (centres * cosine) ** 2);
  return Math.max(0, (reach(pair.driverTeeth) + reach(pair.drivenTeeth) - line) / (Math.PI * cosine));
}

function backlash(pair: Pair, separationMm: number): number {
  const { centres, cosine, angle } = sizes(pair);
  const apart = centres + separationMm / pair.moduleMm;
  const opened = Math.acos(Math.min(1, (centres * cosine) / apart));
  return separationMm === 0 ? 0 : 2 * apart * pair.moduleMm * (Math.tan(opened) - opened - (Math.tan(angle) - angle));
}

/** The contact ratio falls steadily with the opening, and is 0 once the tips pass: found by halving. */
function ridesOutAt(pair: Pair): number {
  let [low, high] = [0, 2 * pair.moduleMm];
  if (contactRatio(pair, 0) <= 1) return 0;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (contactRatio(pair, middle) > 1) low = middle;
    else high = middle;
  }
  return low;
}
