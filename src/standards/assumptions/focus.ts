import { assumptions } from '../Assumption.ts';

const WOODS = 'Woods et al. 2015: simple visual reaction 231 ms on average, n 1469';
const MCRUER = 'tracking by trained operators: McRuer & Jex 1967 (form read, values from memory); no study concerns focus pulling itself';

export const focus = assumptions('focus', {
  meshEfficiency: { value: 0.9, low: 0.8, high: 0.96, unit: 'share', says: 'share of the torque that one mesh of gears passes on', source: 'common practice: dry plastic on aluminium, hand-set centres' },
  torqueMargin: { value: 1.5, low: 1.25, high: 2, unit: 'ratio', says: 'torque of the motor over that of the ring, so that it starts at once and keeps its speed', source: 'common practice, estimate' },
  warmAtC: { value: 20, low: 15, high: 25, unit: '°C', says: 'temperature at which the warm torque of a ring was measured', source: 'common practice: a workshop' },
  coldRise: { value: 1.25, low: 1.05, high: 1.7, unit: 'ratio', says: 'growth of a ring’s torque for ten degrees of cold, until it is measured', source: 'estimate; nothing published' },
  calibrationMargin: { value: 1.2, low: 1.1, high: 1.4, unit: 'ratio', says: 'torque limit over the torque of the ring, so that calibration does not stop half way', source: 'common practice, estimate' },
  backlashDeg: { value: 0.5, low: 0, high: 1.5, unit: 'deg', says: 'play at the gear of a motor or follow focus that states none', source: 'common practice: a tooth of a 40-tooth gear is 9°, its play a twentieth of that' },
  ringPlayDeg: { value: 0.3, low: 0, high: 1, unit: 'deg', says: 'free play of a focus ring that states none', source: 'estimate: new barrels none, old ones a degree' },
  seatPlayDeg: { value: 0.03, low: 0, high: 0.2, unit: 'deg', says: 'twist that one seat of the glass leaves free, where none is stated', source: 'estimate: a hundredth of a millimetre on a lug at 25 mm' },
  handTurnDeg: { value: 130, low: 100, high: 160, unit: 'deg', says: 'turn of a wheel in one grip of the hand', source: 'common practice, estimate: forearm and fingers together' },
  wheelDiameterMm: { value: 55, low: 40, high: 75, unit: 'mm', says: 'diameter of the marked edge of a hand wheel that states none', source: 'common practice' },
  landOnMarkMm: { value: 0.4, low: 0.2, high: 0.8, unit: 'mm', says: 'rms by which a hand misses a mark on the edge of the wheel', source: 'estimate: half the width of a pen stroke' },
  stopErrorMm: { value: 0.2, low: 0.1, high: 0.5, unit: 'mm', says: 'rms by which a hard stop is set beside its place, on the edge of the wheel', source: 'estimate' },
  tapeErrorMm: { value: 10, low: 5, high: 25, unit: 'mm', says: 'rms error of a taped or ranged distance', source: 'common practice: the tape to the eyes, not to the chair' },
  subjectMissMm: { value: 25, low: 10, high: 70, unit: 'mm', says: 'rms by which people miss their place along the lens axis, unseen by who pulls beside the lens', source: 'estimate: a head leans so much over feet that stand on the mark' },
  timingSpreadMs: {
    value: 80, low: 40, high: 160, unit: 'ms', says: 'rms error of when the hand begins and ends a rehearsed move',
    source: 'estimate; meeting a predictable moment: 30 to 80 ms in laboratory tasks (from memory), and people are less punctual than lamps',
  },
  reactionMs: { value: 231, low: 190, high: 300, unit: 'ms', says: 'time from seeing to the hand moving', source: WOODS },
  reactionSpreadMs: { value: 40, low: 20, high: 70, unit: 'ms', says: 'spread of that time from take to take', source: 'estimate, beside Woods et al. 2015' },
  phaseMarginDeg: { value: 45, low: 30, high: 60, unit: 'deg', says: 'phase margin that somebody who follows by eye keeps', source: MCRUER },
  crossover: { value: 5, low: 3, high: 7, unit: 'rad/s', divides: true, says: 'fastest crossover of a hand that follows by eye', source: MCRUER },
  remnant: { value: 0.4, low: 0.2, high: 0.6, unit: 'share', says: 'noise of the hand as a share of the error it corrects', source: 'Levison, Baron & Kleinman 1969 (from memory)' },
  swayHandheldMm: { value: 20, low: 10, high: 40, unit: 'mm', says: 'sway of a camera in the hands towards the subject, either way', source: 'estimate; common practice' },
  swayShoulderMm: { value: 14, low: 7, high: 30, unit: 'mm', says: 'sway of a camera on the shoulder towards the subject, either way', source: 'estimate; common practice' },
  swayHz: { value: 0.7, low: 0.3, high: 1.2, unit: 'Hz', says: 'how often a standing operator sways', source: 'estimate: a person as an upright pendulum sways below 1 Hz' },
  handDelayMs: { value: 5, low: 1, high: 15, unit: 'ms', says: 'delay of a hand unit that states none', source: 'estimate' },
  motorDelayMs: { value: 8, low: 2, high: 20, unit: 'ms', says: 'delay of a motor that states none', source: 'estimate' },
  motorLagMs: { value: 20, low: 10, high: 50, unit: 'ms', says: 'time constant of a motor that states none', source: 'estimate' },
  spinUpMs: { value: 60, low: 30, high: 150, unit: 'ms', says: 'time of a motor from rest to full speed', source: 'estimate' },
  shareSharp: { value: 0.9, low: 0.8, high: 0.97, unit: 'share', says: 'share of a shot that should be sharp in a usual take', source: 'a choice of the shoot' },
});
