import { calculator } from '../calculator.ts';
import { finite, inputs } from '../inputs.ts';

export interface PolariserTurn {
  keptShare: number;
  leakShare: number;
}

/** What a lens front that turns with focus does to a polariser screwed onto it. */
export const polariserTurn = calculator(
  {
    name: 'optics.polariserTurn',
    sentence: 'What a polariser passes of light that it was set to pass, or to kill, once it has turned by an angle.',
    inputs: inputs({ turnDeg: finite('deg', 'how far the polariser has turned since it was set') }),
    results: {
      keptShare: 'of polarised light that it was set to pass, the share it still passes',
      leakShare: 'of a reflection that it was set to kill, the share that is back',
    },
    formula: 'kept = cos²θ;  leak = sin²θ',
    source: 'Malus’s law, as in Hecht, Optics. Ideal polariser; real reflections are only partly polarised',
    examples: [
      { given: { turnDeg: 60 }, gives: { keptShare: '0.250', leakShare: '0.750' }, source: 'Malus: cos²60° = 1/4' },
      { given: { turnDeg: 180 }, gives: { keptShare: '1.000', leakShare: '0.000' }, source: 'a polariser is the same after half a turn' },
    ],
  },
  ({ turnDeg }): PolariserTurn => {
    const angle = (turnDeg * Math.PI) / 180;
    return { keptShare: Math.cos(angle) ** 2, leakShare: Math.sin(angle) ** 2 };
  },
);
