import { moveWay } from '../../assembly/placing/moveWay.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type PlaceOnRod, placeOnRod } from '../../assembly/space/placeOnRod.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import { glassesOf } from '../subjects.ts';

interface Window {
  readonly glass: string;
  /** mm, from where `from` says. */
  readonly low: number;
  readonly high: number;
}

export interface MotorPlaces {
  /** Where the millimetres begin, to follow them: "behind the front end of 15 mm rod"; by the settings of the file where that end is not known. */
  readonly from: string;
  readonly all: readonly Window[];
  readonly best: { readonly atMm: number; readonly serves: readonly string[] };
  /** Glasses whose ring it meets nowhere along its rod. */
  readonly nowhere: readonly string[];
}

/** Where the driver of each glass may stand along its rod, and the place that serves most; `undefined` where no slide is found lens by lens. */
export function motorPlaces(asking: Asking, setup: string): MotorPlaces | undefined {
  return asking.ledger.cell(`motor places|${setup}`, () => {
    const found = glassesOf(asking.ledger, setup).flatMap((glass): Found[] => {
      const placement = placeSetup(asking.ledger, setup, glass);
      const { settings, meshes } = placement;
      const mesh = meshes[0];
      const drives = mesh === undefined ? [] : settings.filter(({ key, joint }) => key === 'slideMm' && [joint.a.point.kind, joint.b.point.kind].includes('rod clamp') && !isSupport(joint.b.piece.part.kind));
      const slide = drives[0];
      if (mesh === undefined || slide === undefined || !mesh.meets) return [];
      const slack = Math.max(0.5, mesh.pair?.offsetAllowedMm ?? 0);
      // Where it stands now may itself lie off the middle of its window; the offset is of end b seen from end a, and forward.
      const ahead = mesh.joint.a.piece.part.has('focus') ? mesh.midOffsetMm : -mesh.midOffsetMm;
      const off = moveWay(placement, slide, 1).way === 'back' ? -ahead : ahead;
      return [{ glass, slideMm: slide.value, low: slide.value - slack - off, high: slide.value + slack - off, onRod: placeOnRod(asking.ledger, placement, slide.joint) }];
    });
    if (found.length < 2) return undefined;
    const { from, all } = asSeen(found);
    // The place covered by most windows is at the beginning of one of them.
    const served = (atMm: number) => all.filter(({ low, high }) => low - 1e-6 <= atMm && atMm <= high + 1e-6);
    const start = all.map(({ low }) => low).reduce((best, low) => (served(low).length > served(best).length ? low : best));
    const shared = served(start);
    const end = Math.min(...shared.map(({ high }) => high));
    const nowhere = glassesOf(asking.ledger, setup).filter((glass) => !all.some((one) => one.glass === glass));
    return { from, all, nowhere, best: { atMm: (start + end) / 2, serves: shared.map(({ glass }) => glass) } };
  });
}

interface Found extends Window {
  readonly slideMm: number;
  readonly onRod: PlaceOnRod | undefined;
}

/** Windows measured from the end of the rod, where all of them can be. */
function asSeen(found: readonly Found[]): Pick<MotorPlaces, 'from' | 'all'> {
  const onRod = found[0]?.onRod;
  if (onRod === undefined || found.some((one) => one.onRod?.rod.ref !== onRod.rod.ref || one.onRod.end !== onRod.end)) return { from: 'along its rod, by the settings of the file', all: found };
  const all = found.map(({ glass, slideMm, low, high, onRod: own = onRod }) => {
    const [one, other] = [low, high].map((at) => own.fromEndMm + own.perSlideMm * (at - slideMm)) as [number, number];
    return { glass, low: Math.min(one, other), high: Math.max(one, other) };
  });
  return { from: `${onRod.way} the ${onRod.end} of ${named(onRod.rod.name)}`, all };
}

const isSupport = (kind: string): boolean => kind === 'support';
