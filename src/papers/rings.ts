import { opticalPath } from '../assembly/opticalPath.ts';
import { type PaperFile, type MakingOfSetup, paper } from './paper.ts';
import { ringFiles } from './ring/ringFiles.ts';
import { type RingWanted, ringFault } from './ring/ringSolid.ts';

const WIDTH_MM = 12; // the usual depth of a clamp's grip; common practice
const SLIT_MM = 2;
const CLEARANCE_MM = 0.2; // what a common printer is out by

/** Spacers between the fronts of a setup and the clamp of its matte box, where they differ. */
export const rings = paper({
  id: 'rings',
  says: 'Rings to print',
  per: 'setup',
  make: (making) => {
    const { solids, fonts } = making.press;
    if (solids === undefined) return [];
    return ringsWanted(making).flatMap((wanted): PaperFile[] => ringFiles(solids, wanted, `${making.setup}/rings/spacer-${wanted.innerMm}-${wanted.outerMm}`, fonts).files);
  },
});

/** A ring for each front that is narrower than the clamp meant for it, unless a ring of the kit is on it already. */
export function ringsWanted({ ledger, setup, glasses }: MakingOfSetup): RingWanted[] {
  const found = new Map<string, RingWanted>();
  for (const glass of glasses) {
    const { matteBox, stack } = opticalPath(ledger, setup, glass);
    const clamp = matteBox?.part.figure('matteBox/clampMm');
    const front = stack.filter(({ part }) => part.has('front')).at(-1)?.part.figure('front/diameterMm');
    if (clamp === undefined || front === undefined) continue;
    const wanted: RingWanted = { kind: 'spacer', innerMm: front.value, outerMm: clamp.value, widthMm: WIDTH_MM, slitMm: SLIT_MM, clearanceMm: CLEARANCE_MM };
    if (ringFault(wanted) === undefined) found.set(`${front.value} ${clamp.value}`, wanted);
  }
  return [...found.values()];
}
