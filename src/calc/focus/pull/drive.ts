/**
 * From the hand to the glass, step by step: the correction integrates, reaches the motor after the link, is rounded to the
 * steps of the hand unit; the motor follows with a lag, within its speed and its acceleration, and drags the ring through the play.
 */
export interface Drive {
  readonly stepS: number;
  /** Speed wanted per degree off, 1/s. Written so (implicit Euler) that a lag of zero follows within one step and none rings. */
  readonly pull: number;
  readonly maxDegPerS: number;
  readonly maxChangeDegPerS: number;
  /** Further off than this the motor has to mind its braking distance. */
  readonly brakeFromDeg: number;
  readonly twiceAccel: number;
  readonly halfPlayDeg: number;
  readonly handStepDeg: number;
  readonly lowDeg: number;
  readonly highDeg: number;
  readonly linkSteps: number;
}

export interface DriveGiven {
  readonly motorRpm: number;
  readonly gearRatio: number;
  readonly spinUpMs: number;
  readonly motorLagMs: number;
  readonly linkDelayMs: number;
  readonly playDeg: number;
  readonly handStepDeg: number;
}

export function driveOf(given: DriveGiven, stepS: number, lowDeg: number, highDeg: number): Drive {
  const maxDegPerS = ringSpeedDegPerS(given);
  const accel = given.spinUpMs === 0 || maxDegPerS === Infinity ? Infinity : maxDegPerS / (given.spinUpMs / 1000);
  const pull = 1 / (given.motorLagMs / 1000 + stepS);
  return {
    stepS,
    pull,
    maxDegPerS,
    maxChangeDegPerS: accel * stepS,
    brakeFromDeg: (2 * accel) / (pull * pull),
    twiceAccel: 2 * accel,
    halfPlayDeg: given.playDeg / 2,
    handStepDeg: given.handStepDeg,
    lowDeg,
    highDeg,
    linkSteps: Math.round(given.linkDelayMs / 1000 / stepS),
  };
}

/** Degrees a second at the ring: 360/60 for each turn a minute. */
export const ringSpeedDegPerS = ({ motorRpm, gearRatio }: Pick<DriveGiven, 'motorRpm' | 'gearRatio'>): number => (6 * motorRpm) / gearRatio;

/** Places in the state of a drive. */
export const MOTOR = 0;
export const SPEED = 1;
export const RING = 2;
export const CORRECTION = 3;
export const STATE_LENGTH = 4;

/**
 * Runs steps [from, to). `handDeg` is the hand's own path by the time it reaches the motor; `corrections` carries what the
 * picture adds, `linkSteps` late; `rateDegPerS` is how fast that grows now.
 */
export function runDrive(
  drive: Drive, state: Float64Array, handDeg: Float64Array, corrections: Float64Array, from: number, to: number, rateDegPerS: number,
): void {
  const { stepS, pull, maxDegPerS, maxChangeDegPerS, brakeFromDeg, twiceAccel, halfPlayDeg, handStepDeg, lowDeg, highDeg, linkSteps } = drive;
  const growth = rateDegPerS * stepS;
  const stepped = handStepDeg > 0;
  let motor = state[MOTOR]!;
  let speed = state[SPEED]!;
  let ring = state[RING]!;
  let correction = state[CORRECTION]!;
  for (let n = from; n < to; n++) {
    const hand = handDeg[n]!;
    // The hand unit ends where the scale ends: no correction piles up beyond.
    correction = within(correction + growth, lowDeg - hand, highDeg - hand);
    corrections[n + linkSteps] = correction;
    let command = hand + corrections[n]!;
    if (stepped) command = Math.round(command / handStepDeg) * handStepDeg;
    const off = within(command, lowDeg, highDeg) - motor;
    const distance = Math.abs(off);
    let wanted = off * pull;
    if (distance > brakeFromDeg) wanted = off > 0 ? Math.sqrt(twiceAccel * distance) : -Math.sqrt(twiceAccel * distance);
    speed += within(within(wanted, -maxDegPerS, maxDegPerS) - speed, -maxChangeDegPerS, maxChangeDegPerS);
    motor += speed * stepS;
    ring = within(ring, motor - halfPlayDeg, motor + halfPlayDeg);
  }
  state[MOTOR] = motor;
  state[SPEED] = speed;
  state[RING] = ring;
  state[CORRECTION] = correction;
}

function within(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}
