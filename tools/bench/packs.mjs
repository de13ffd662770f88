/** A day of packs against bare sums of as many square roots as a run down one curve takes. */
import { dayOfPacks } from '../../src/calc/power/dayOfPacks.ts';
import { median, timed } from './timed.mjs';

const CELL = [[0, 3], [0.05, 3.42], [0.1, 3.54], [0.2, 3.62], [0.4, 3.7], [0.6, 3.82], [0.8, 3.98], [1, 4.2]];
const PACK = { count: 4, openCircuitV: CELL.map(([soc, volts]) => [soc, 4 * volts]), internalOhm: 0.12, cutoffV: 12, charge: 1, chargeHours: 4 };
const pause = { hours: 0.2, loadW: 55, take: false, chargerOn: true };
const take = { hours: 0.07, loadW: 70, take: true, chargerOn: true };

/** Ten hours, 36 takes; packs and loads invented. */
const DAY = {
  packs: [{ ...PACK, name: 'plate', capacityAh: 6.8 }, { ...PACK, name: 'large', capacityAh: 13 }],
  segments: Array.from({ length: 36 }, () => [pause, take]).flat(), darkPerChangeS: 45, reserveMin: 2, chargerBays: 2,
};

export async function bench() {
  const runs = 20;
  const ms = median(9, () => timed(() => Array.from({ length: runs }, () => dayOfPacks(DAY)))) / runs;
  const floorMs = median(9, () => timed(() => Array.from({ length: runs }, bareRoots))) / runs;
  return [{ name: 'power: a day of eight packs, 36 takes, charger', ms, aimMs: 2, floorName: 'bare square roots', floorMs, limitRatio: 100 }];
}

/** Every segment at least looks down every stretch of the curve once. */
function bareRoots() {
  let sum = 0;
  for (let i = 0; i < DAY.segments.length * CELL.length * 2; i++) sum += Math.sqrt(200 + i) + Math.log(200 + i);
  return sum;
}
