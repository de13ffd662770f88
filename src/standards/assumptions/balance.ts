import { assumptions } from '../Assumption.ts';

export const balance = assumptions('balance', {
  handsAheadMm: { value: 300, low: 200, high: 450, unit: 'mm', says: 'hands ahead of the pad where no grip is placed', source: 'estimate: forearms bent, elbows at the side' },
  restForceN: { value: 15, low: 8, high: 25, unit: 'N', says: 'lift that both hands give without being noticed', source: 'estimate: a twentieth of what they give at most, for minutes' },
  tiltAxisBelowMm: { value: 60, low: 40, high: 90, unit: 'mm', says: 'tilt axis of a head below its plate', source: 'common practice' },
});
