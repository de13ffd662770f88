import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface RollingShutterWobble {
  bendPx: number;
  smearPx: number;
  jumpPx: number;
}

/** What a steady wobble looks like once a sensor that reads line by line has recorded it. */
export const rollingShutterWobble = calculator(
  {
    name: 'mechanics.rollingShutterWobble',
    sentence: 'How far a wobbling picture bends, smears and jumps when the sensor is read line by line.',
    inputs: inputs({
      amplitudePx: nonNegative('px', 'swing of the picture to either side'),
      frequencyHz: positive('Hz', 'frequency of the wobble'),
      readoutMs: nonNegative('ms', 'from the first line read to the last; 0: all at once'),
      exposureMs: nonNegative('ms', 'time each line is exposed'),
      frameRateHz: positive('Hz', 'frames a second'),
    }),
    results: {
      bendPx: 'px, most that two lines of one frame can be shifted against each other',
      smearPx: 'px, most that one line moves while it is exposed',
      jumpPx: 'px, most that one line moves from a frame to the next',
    },
    formula:
      'over a time T the picture moves by at most 2A·sin(π·f·T), and by 2A where f·T ≥ ½; ' +
      'from frame to frame 2A·|sin(π·f/rate)|, which is 0 where they keep step',
    source: 'Derived: x = A·sin(2πft), greatest difference over all phases. Slow wobble leans by speed × time, 2π·f·A·T',
    examples: [
      {
        given: { amplitudePx: 5, frequencyHz: 12, readoutMs: 0, exposureMs: 0, frameRateHz: 24 },
        gives: { bendPx: '0', smearPx: '0', jumpPx: '10.0' },
        source: 'derived: at half the frame rate every frame lands on the other side',
      },
      {
        given: { amplitudePx: 5, frequencyHz: 25, readoutMs: 20, exposureMs: 10, frameRateHz: 25 },
        gives: { bendPx: '10.0', smearPx: '7.07', jumpPx: '0.0' },
        source: 'derived: half a swing in 20 ms; a quarter in 10 ms, 2·5·sin 45°; in step with the frames',
      },
    ],
  },
  ({ amplitudePx, frequencyHz, readoutMs, exposureMs, frameRateHz }): RollingShutterWobble => {
    const most = (seconds: number) => 2 * amplitudePx * (frequencyHz * seconds >= 0.5 ? 1 : Math.sin(Math.PI * frequencyHz * seconds));
    // Whole swings between frames change nothing; taken off first, so that fast wobble keeps its digits.
    const swings = (frequencyHz / frameRateHz) % 1;
    return { bendPx: most(readoutMs * 1e-3), smearPx: most(exposureMs * 1e-3), jumpPx: 2 * amplitudePx * Math.sin(Math.PI * swings) };
  },
);
