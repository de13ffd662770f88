import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive, share } from '../inputs.ts';

export interface Drive {
  motorTorqueNm: number;
  torqueUse: number;
  ringRpm: number;
  fullThrowS: number;
  speedUse: number;
}

/** A motor on a focus ring. Starting from rest asks for more than this, and cold grease for far more: give the torque as measured cold. */
export const drive = calculator(
  {
    name: 'focus.drive',
    sentence: 'Whether a motor turns a focus ring through a gear pair, and whether it does so in time.',
    inputs: inputs({
      stallTorqueNm: positive('N·m', 'torque at which the motor stands still, at its output gear'),
      noLoadRpm: positive('rpm', 'speed of the output gear without load'),
      gearRatio: positive('ratio', 'teeth of the lens gear over teeth of the motor gear'),
      efficiency: share('share of the work that the mesh passes on'),
      ringTorqueNm: nonNegative('N·m', 'torque that turns the ring'),
      throwDeg: positive('deg', 'turn of the ring from end to end'),
      moveDeg: nonNegative('deg', 'turn of the ring in the move asked'),
      moveTimeS: positive('s', 'time the move may take'),
    }),
    results: {
      motorTorqueNm: 'N·m, torque the motor must give',
      torqueUse: 'that torque over the stall torque; from 1 on it does not turn',
      ringRpm: 'rpm of the ring under this load; 0: stalled',
      fullThrowS: 's, from end to end; null: never, stalled',
      speedUse: 'speed asked over speed there is; null: stalled',
    },
    formula: 'motor = ring/(ratio·η);  rpm = noLoad·(1 − motor/stall)/ratio;  fullThrow = throw/(6·rpm);  speedUse = (move/time)/(6·rpm)',
    source: 'Torque-speed line of a permanent-magnet motor, T = Ts·(1 − ω/ω0), as in textbooks; acceleration is left out',
    examples: [
      {
        given: { stallTorqueNm: 0.3, noLoadRpm: 300, gearRatio: 1, efficiency: 1, ringTorqueNm: 0.1, throwDeg: 300, moveDeg: 300, moveTimeS: 0.5 },
        gives: { motorTorqueNm: '0.1', ringRpm: '200.0', fullThrowS: '0.250', speedUse: '0.500' },
        source: 'textbook motor 0.30 N·m, 300 rpm → 200 rpm at 0.10 N·m; times derived, 200 rpm = 1200 deg/s',
      },
      {
        given: { stallTorqueNm: 0.3, noLoadRpm: 300, gearRatio: 3, efficiency: 0.9, ringTorqueNm: 0.81, throwDeg: 270, moveDeg: 90, moveTimeS: 1 },
        gives: { motorTorqueNm: '0.30', torqueUse: '1.00' },
        source: 'derived: at the stall torque it only just stands',
      },
    ],
  },
  (given): Drive => {
    const motorTorqueNm = given.ringTorqueNm / (given.gearRatio * given.efficiency);
    const torqueUse = motorTorqueNm / given.stallTorqueNm;
    const ringRpm = (given.noLoadRpm * Math.max(0, 1 - torqueUse)) / given.gearRatio;
    const degPerS = 6 * ringRpm;
    return {
      motorTorqueNm,
      torqueUse,
      ringRpm,
      fullThrowS: given.throwDeg / degPerS,
      speedUse: given.moveDeg === 0 ? 0 : given.moveDeg / given.moveTimeS / degPerS,
    };
  },
);
