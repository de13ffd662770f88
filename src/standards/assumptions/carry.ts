import { assumptions } from '../Assumption.ts';

const PEOPLE = 'from memory: British adults, women of the smallest twentieth to men of the tallest, in shoes';
const BAGGAGE = 'common practice; airlines differ: ask yours';

export const carry = assumptions('carry', {
  startsAtMm: { value: 0, low: 0, high: 900, unit: 'mm', says: 'height a built camera is lifted from', source: 'common practice: set down on the floor between setups; a cart is 700 to 900 mm' },
  cartMm: { value: 750, low: 600, high: 900, unit: 'mm', says: 'height of a cart, or of two cases on each other', source: 'common practice' },
  legsMm: { value: 1450, low: 1000, high: 1700, unit: 'mm', says: 'height of the legs under a head, where none is stated', source: 'common practice: a standing lens height' },
  headMm: { value: 150, low: 120, high: 200, unit: 'mm', says: 'height of a head on its legs, where its shape is not entered', source: 'common practice' },
  loweredMm: { value: 1000, low: 800, high: 1150, unit: 'mm', says: 'height of the head when the legs are lowered to set the camera on', source: 'common practice: hip height' },
  shoulderMm: { value: 1380, low: 1240, high: 1560, unit: 'mm', says: 'height of a shoulder', source: PEOPLE },
  chestMm: { value: 1200, low: 1050, high: 1350, unit: 'mm', says: 'height a handheld camera is lifted to', source: `${PEOPLE}; between elbow and shoulder` },
  acrossMm: { value: 250, low: 150, high: 400, unit: 'mm', says: 'depth of a rig from the side it is lifted from, where it is not placed', source: 'common practice' },
  handleMm: { value: 250, low: 150, high: 350, unit: 'mm', says: 'height of a handle above the underside of a rig, where it is not placed', source: 'common practice: a top handle' },
  twistDeg: { value: 0, low: 0, high: 45, unit: 'deg', says: 'angle by which the trunk is twisted while lifting', source: 'common practice: feet turn, not the back' },
  cabinG: { value: 8000, low: 7000, high: 10_000, unit: 'g', says: 'weight one person may carry into the cabin', source: BAGGAGE },
  cabinBagG: { value: 1200, low: 700, high: 2500, unit: 'g', says: 'weight of a padded bag for the cabin', source: 'common practice' },
  caseG: { value: 23_000, low: 20_000, high: 32_000, unit: 'g', says: 'weight of one case in the hold, full', source: 'recommendations of IATA, second-hand: 23 kg; some tickets 20 or 32' },
  caseTareG: { value: 5000, low: 3000, high: 8000, unit: 'g', says: 'weight of an empty case for the hold, foam included', source: 'common practice' },
  casesEach: { value: 1, low: 0, high: 2, unit: 'count', says: 'cases in the hold that come with one ticket', source: BAGGAGE },
  bootMm: { value: 700, low: 600, high: 900, unit: 'mm', says: 'height of the sill that a case is lifted over into a car', source: 'common practice' },
  caseHandleMm: { value: 300, low: 200, high: 450, unit: 'mm', says: 'height of the handles of a case above its underside', source: 'common practice' },
  caseAcrossMm: { value: 350, low: 250, high: 450, unit: 'mm', says: 'depth of a case from the side it is lifted from', source: 'common practice' },
});
