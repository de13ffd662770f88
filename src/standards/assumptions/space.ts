import { assumptions } from '../Assumption.ts';

export const space = assumptions('space', {
  loopMisfitMm: { value: 0.5, low: 0.3, high: 1, unit: 'mm', says: 'misfit that a hand closes without strain', source: 'common practice' },
  meshSlackMm: { value: 0.35, low: 0.2, high: 0.5, unit: 'mm', says: 'distance by which gears may stand apart and still mesh without felt play', source: 'derived: 2·Δa·tan 20° of play at the pitch circle, under a quarter of a millimetre; common practice' },
  meshTightMm: { value: 0.1, low: 0.05, high: 0.15, unit: 'mm', says: 'distance by which gears may be pressed together before they bind', source: 'estimate: less than the bottom clearance of a quarter module (ISO 53)' },
  faceShare: { value: 0.5, low: 0.4, high: 0.7, unit: 'share', says: 'share of the narrower gear that must stay in mesh over the focus travel', source: 'common practice' },
  fingerRoomMm: { value: 22, low: 18, high: 26, unit: 'mm', says: 'room a gloved finger wants beside a knob or screw', source: 'from memory: the breadth of a large forefinger, with a glove' },
  cableSlack: { value: 0.15, low: 0.1, high: 0.3, unit: 'share', says: 'slack of a cable over its way along the rig', source: 'common practice' },
  plugRoomMm: { value: 35, low: 25, high: 50, unit: 'mm', says: 'length a plug and its bend take at each end', source: 'common practice' },
  boxGapMm: { value: 15, low: 8, high: 25, unit: 'mm', says: 'gap between the front of the lens and the back of the matte box that still keeps light out', source: 'common practice' },
  boxOffAxisMm: { value: 3, low: 1, high: 5, unit: 'mm', says: 'distance by which the middle of a matte box may lie beside the axis', source: 'estimate: small against the room its openings leave' },
});
