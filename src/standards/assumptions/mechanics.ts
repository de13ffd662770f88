import { assumptions } from '../Assumption.ts';

export const mechanics = assumptions('mechanics', {
  handlingFactor: {
    value: 2, low: 1.5, high: 3, unit: 'ratio', says: 'jolts of handling, as a multiple of the weight',
    source: 'common practice: a load put down or picked up briskly counts twice',
  },
  vehicleFactor: {
    value: 3, low: 2, high: 5, unit: 'ratio', says: 'jolts on a vehicle, as a multiple of the weight', source: 'estimate; a qualified rigger decides',
  },
  nutFactor: {
    value: 0.2, low: 0.15, high: 0.3, unit: 'ratio', divides: true, says: 'torque of a screw over its force and diameter',
    source: 'Shigley: 0.2 where not known; band: Bickford',
  },
  faceFriction: {
    value: 0.15, low: 0.1, high: 0.25, unit: 'ratio', says: 'friction between faces that a screw draws together',
    source: 'common practice: no dependable value is published for aluminium',
  },
  rodFriction: { value: 0.15, low: 0.08, high: 0.25, unit: 'ratio', says: 'friction of a clamp on its rod', source: 'estimate' },
  smallScrewNm: {
    value: 2, low: 1, high: 4, unit: 'N·m', says: 'torque that a 1/4-20 is tightened with',
    source: 'common practice: a coin or a short key; by a knob half of it',
  },
  largeScrewNm: { value: 5, low: 2.5, high: 10, unit: 'N·m', says: 'torque that a 3/8-16 is tightened with', source: 'common practice' },
  clampScrewNm: {
    value: 1, low: 0.5, high: 2.5, unit: 'N·m', says: 'torque that the knob of a clamp is turned with',
    source: 'common practice: finger and thumb on a small knob',
  },
  contactInnerMm: {
    value: 4, low: 3.2, high: 6, unit: 'mm', says: 'inner radius of the ring where faces round a screw touch', source: 'estimate: the hole',
  },
  contactOuterMm: {
    value: 12, low: 8, high: 18, unit: 'mm', says: 'outer radius of the ring where faces round a screw touch',
    source: 'estimate: a plate touches near its screw',
  },
  gustFactor: {
    value: 1.6, low: 1.3, high: 2, unit: 'ratio', says: 'speed of gusts over the mean wind', source: 'common practice: 1.5 to 2 near the ground',
  },
  dragCoefficient: {
    value: 1.05, low: 0.8, high: 1.4, unit: 'ratio', says: 'drag coefficient of a rig, taken as a box', source: 'handbooks: a cube 1.05',
  },
  airDensity: { value: 1.225, low: 1, high: 1.35, unit: 'kg/m³', says: 'density of the air', source: 'ISO 2533, sea level, 15 °C' },
  tugN: { value: 30, low: 15, high: 80, unit: 'N', says: 'tug of a cable that somebody walks into', source: 'estimate' },
  knobForceN: { value: 10, low: 4, high: 20, unit: 'N', says: 'push of a hand on a knob or a focus wheel', source: 'estimate' },
  stableTiltDeg: {
    value: 10, low: 5, high: 10, unit: 'deg', says: 'slope on which a stand should still stand',
    source: 'borrowed: IEC 62368-1 tips equipment by 10°',
  },
  visibleJumpPx: { value: 2, low: 1, high: 4, unit: 'px', says: 'jump of the picture that is seen on a rack', source: 'estimate' },
  visibleWobblePx: { value: 2, low: 1, high: 4, unit: 'px', says: 'bend of the picture that is seen', source: 'estimate' },
  handStrengthN: {
    value: 300, low: 180, high: 450, unit: 'N', divides: true, says: 'strongest lift of both hands in front of the chest',
    source: 'estimate; people differ more than rigs do',
  },
  oneManLiftG: {
    value: 23_000, low: 10_000, high: 25_000, unit: 'g', says: 'most that one person lifts at best', source: 'NIOSH 94-110: load constant',
  },
});
