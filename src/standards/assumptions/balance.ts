import { assumptions } from '../Assumption.ts';

export const balance = assumptions('balance', {
  handsAheadMm: { value: 300, low: 200, high: 450, unit: 'mm', says: 'hands ahead of the pad where no grip is placed', source: 'estimate: forearms bent, elbows at the side' },
  restForceN: {
    value: 24, low: 14, high: 45, unit: 'N', says: 'force that both hands hold all along and still operate with',
    source: 'Björkstén and Jonsson 1977: 7.9 % of the strongest pull is held for an hour without a rest, here of 300 N; low: the same of weak hands (180 N), high: the 15 % of Rohmert 1960, which later studies find too much',
  },
  tiltAxisBelowMm: { value: 60, low: 40, high: 90, unit: 'mm', says: 'tilt axis of a head below its plate', source: 'common practice' },
  feet: { value: 3, low: 3, high: 3, unit: 'count', says: 'feet of legs or a stand, where none are entered', source: 'common practice; of more feet it tips less easily' },
  legsCentreShare: {
    value: 0.5, low: 0.35, high: 0.6, unit: 'ratio', says: 'centre of legs or a stand over their height, where their own place of mass is not entered',
    source: 'estimate: thin feet splayed below, castings or a column above',
  },
  cableHangsMm: {
    value: 1200, low: 500, high: 1800, unit: 'mm', says: 'length of a cable to another build that hangs on its plug',
    source: 'common practice: down to the floor, or to where somebody holds it',
  },
  windMps: { value: 8, low: 4, high: 14, unit: 'm/s', says: 'wind outdoors on a day that states none', source: 'Beaufort 5, a fresh breeze, begins at 8 m/s: small trees sway' },
  windOffCentre: {
    value: 0.25, low: 0, high: 0.25, unit: 'ratio', says: 'how far the push of the wind lies beside the middle of a surface, over its width',
    source: 'EN 1991-1-4, 7.4.3: signboards',
  },
});
