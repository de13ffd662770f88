import type { Judgement } from '../answer.ts';
import { printAmount } from '../../units/print.ts';
import type { WholeMass } from './wholeMass.ts';

/**
 * Share of a weight that may be without a place while the rest is judged as if it were all. A monitor or a pack on a rig of ten kilograms is more; a cable
 * or a clamp is less. Somewhere at the rim of a rig, a twentieth of its weight brings the centre some ten millimetres out. Common practice, 0.02 to 0.1.
 */
const LOOSE_SHARE = 0.05;

/** What was judged of a balance, unless it passed while much of what hangs on the rig has no place: wherever that goes, the centre goes along. */
export function allPlaced(judgement: Judgement, wholes: readonly Pick<WholeMass, 'massG' | 'unplacedG'>[]): Judgement {
  const loosest = wholes.reduce<Pick<WholeMass, 'massG' | 'unplacedG'>>((most, one) => (one.unplacedG > most.unplacedG ? one : most), { massG: 0, unplacedG: 0 });
  const allG = loosest.massG + loosest.unplacedG;
  const passed = judgement.verdict === 'good' || judgement.verdict === 'tight';
  if (!passed || loosest.unplacedG <= LOOSE_SHARE * allG) return judgement;
  const { use: _, mends: __, ...rest } = judgement;
  const [loose, all] = [loosest.unplacedG, allG].map((value) => printAmount({ value, unit: 'g' }));
  return { ...rest, verdict: 'unknown', says: `${loose} of ${all} have no place in the rig yet: too little to judge its balance by.` };
}
