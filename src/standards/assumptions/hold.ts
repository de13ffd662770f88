import { assumptions } from '../Assumption.ts';

export const hold = assumptions('hold', {
  knobShare: { value: 0.5, low: 0.3, high: 0.7, unit: 'share', says: 'torque of a screw turned by its knob, against one turned with a key', source: 'common practice' },
  clampScrewMm: { value: 5, low: 4, high: 6, unit: 'mm', divides: true, says: 'diameter of the screw that closes a rod clamp', source: 'common practice: M5' },
  collarScrewMm: { value: 4, low: 3, high: 5, unit: 'mm', divides: true, says: 'diameter of the screw that closes a collar', source: 'common practice: M4' },
  collarScrewNm: { value: 1.5, low: 0.8, high: 3, unit: 'N·m', says: 'torque that the screw of a collar is tightened with', source: 'common practice: a short key' },
  armSlipNm: { value: 5, low: 2, high: 9, unit: 'N·m', says: 'moment at which a locked arm gives at its elbow, where none is stated', source: 'estimate: a two-joint arm holds a kilogram at its length' },
  shoeSlipNm: { value: 0.5, low: 0.2, high: 1.2, unit: 'N·m', says: 'moment at which a foot turns in an accessory shoe', source: 'estimate' },
  seatPlayMm: { value: 0.003, low: 0, high: 0.02, unit: 'mm', says: 'sideways play of a lens in its mount, where none is stated', source: 'estimate: none in a clamped mount, some hundredths in a worn bayonet' },
  screwStressMPa: {
    value: 210, low: 170, high: 450, unit: 'MPa', says: 'stress that the core of a screw bears without giving',
    source: 'ISO 3506-1, from memory: 210 MPa the softest stainless screw, 450 the usual',
  },
  socketShearMPa: {
    value: 95, low: 60, high: 150, unit: 'MPa', says: 'shear that the thread of a socket in aluminium bears',
    source: 'from memory: 0.58 of the 165 MPa at which cast alloys give; wrought ones bear more',
  },
  sagMm: { value: 2, low: 1, high: 4, unit: 'mm', says: 'sag of a piece that is seen, and that opens gears or shifts a matte box', source: 'estimate, common practice' },
  sagDeg: { value: 1, low: 0.5, high: 2, unit: 'deg', says: 'nod of a piece that is seen', source: 'estimate, common practice' },
  shutterDeg: { value: 180, low: 90, high: 270, unit: 'deg', says: 'opening of the shutter', source: 'common practice' },
  reversalMs: { value: 20, low: 5, high: 60, unit: 'ms', says: 'time in which a drive that reverses brings its push to the other side', source: 'estimate: play crossed at the speed of a rack, friction turned over at once' },
  stiffness: { value: 1, low: 1 / 3, high: 3, unit: 'ratio', says: 'stiffness of all joints whose own is not entered, against the table of joint types', source: 'estimate: nothing is published; a weight on an arm measures one' },
  wobbleHz: { value: 8, low: 6, high: 12, unit: 'Hz', says: 'frequency above which steps, hands and switches no longer set a rig swinging', source: 'estimate: walking shakes at 2 Hz and its multiples, hands tremble at 8 to 12 Hz' },
});
