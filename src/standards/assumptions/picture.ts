import { assumptions } from '../Assumption.ts';

export const picture = assumptions('picture', {
  linesInCircle: {
    value: 2, low: 1.5, high: 3, unit: 'ratio', divides: true, says: 'lines of the delivery that a blur may cover and still count as sharp',
    source: 'common practice; with 1716 lines on an 18 mm frame it gives 0.021 mm, beside the 0.025 mm that handbooks use for 35 mm cine',
  },
  cornerShare: {
    value: 0.5, low: 0.35, high: 0.7, unit: 'share', says: 'light that front glass must leave for a corner of the frame',
    source: 'common practice: a corner one stop down passes as falloff, more reads as a vignette',
  },
  stretchSeen: {
    value: 0.05, low: 0.03, high: 0.08, unit: 'share', says: 'stretch across against up and down at which faces look broad or thin',
    source: 'estimate; common practice: a twentieth is seen in a face one knows',
  },
  breathingRack: {
    value: 0.1, low: 0.06, high: 0.16, unit: 'share', says: 'change of the field that disturbs in a rack, where nothing else moves; half of it is seen',
    source: 'estimate; common practice',
  },
  breathingFollow: {
    value: 0.2, low: 0.12, high: 0.3, unit: 'share', says: 'change of the field that disturbs while focus follows somebody who moves; half of it is seen',
    source: 'estimate; common practice: the move hides about half of it',
  },
  verticalLeanDeg: {
    value: 0.5, low: 0.3, high: 1, unit: 'deg', says: 'lean of verticals that would be seen, where the needs state none',
    source: 'common practice: the frame edge beside a door post shows half a degree',
  },
  stopTolerance: {
    value: 1 / 6, low: 0.1, high: 1 / 3, unit: 'ratio', says: 'stops by which the widest stop may fall short before anybody minds',
    source: 'common practice: half a third of a stop, the finest step that is set',
  },
  faceDepthMm: {
    value: 45, low: 25, high: 70, unit: 'mm', says: 'depth that holds both eyes of a face turned by half a right angle',
    source: 'adult interpupillary distance 63 mm on average (Dodgson 2004, from memory) times sin 45°',
  },
  flangeToleranceMm: {
    value: 0.1, low: 0.05, high: 0.2, unit: 'mm', says: 'difference of stated flange distances that is a wrong adapter rather than a shim',
    source: 'estimate; common practice: shims come in hundredths of a millimetre',
  },
  axisSlipMargin: {
    value: 2, low: 1.5, high: 3, unit: 'ratio', says: 'times the torque of the ring that the seat of the squeeze axis must hold',
    source: 'estimate; common practice: knocks and cables come on top of the ring',
  },
  reflectionBack: {
    value: 0.1, low: 0.05, high: 0.2, unit: 'share', says: 'share of a killed reflection that may come back during a shot',
    source: 'estimate: a tenth is three stops below the reflection',
  },
  gearFaceShare: {
    value: 0.5, low: 0.4, high: 0.7, unit: 'share', says: 'share of the narrower gear face that must stay in mesh',
    source: 'common practice: half the face carries the load, less lets the gears ride out',
  },
});
