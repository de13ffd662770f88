import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { Asking } from '../Asking.ts';
import { glassesOf } from '../subjects.ts';

interface Window {
  readonly glass: string;
  /** Along the rod, mm. */
  readonly low: number;
  readonly high: number;
}

export interface MotorPlaces {
  readonly all: readonly Window[];
  readonly best: { readonly atMm: number; readonly serves: readonly string[] };
  /** Glasses whose ring it meets nowhere along its rod. */
  readonly nowhere: readonly string[];
}

/** Where the driver of each glass may stand along its rod, and the place that serves most; `undefined` where no slide is found lens by lens. */
export function motorPlaces(asking: Asking, setup: string): MotorPlaces | undefined {
  return asking.ledger.cell(`motor places|${setup}`, () => {
    const all = glassesOf(asking.ledger, setup).flatMap((glass): Window[] => {
      const { settings, meshes } = placeSetup(asking.ledger, setup, glass);
      const mesh = meshes[0];
      const drives = mesh === undefined ? [] : settings.filter(({ key, joint }) => key === 'slideMm' && [joint.a.point.kind, joint.b.point.kind].includes('rod clamp') && !isSupport(joint.b.piece.part.kind));
      const slide = drives[0];
      if (mesh === undefined || slide === undefined || !mesh.meets) return [];
      const slack = Math.max(0.5, mesh.pair?.offsetAllowedMm ?? 0);
      // Where it stands now may itself lie off the middle of its window; the offset is of end b seen from end a.
      const off = mesh.joint.a.piece.part.has('focus') ? mesh.midOffsetMm : -mesh.midOffsetMm;
      return [{ glass, low: slide.value - slack - off, high: slide.value + slack - off }];
    });
    if (all.length < 2) return undefined;
    // The place covered by most windows is at the beginning of one of them.
    const served = (atMm: number) => all.filter(({ low, high }) => low - 1e-6 <= atMm && atMm <= high + 1e-6);
    const start = all.map(({ low }) => low).reduce((best, low) => (served(low).length > served(best).length ? low : best));
    const shared = served(start);
    const end = Math.min(...shared.map(({ high }) => high));
    const nowhere = glassesOf(asking.ledger, setup).filter((glass) => !all.some((one) => one.glass === glass));
    return { all, nowhere, best: { atMm: (start + end) / 2, serves: shared.map(({ glass }) => glass) } };
  });
}

const isSupport = (kind: string): boolean => kind === 'support';
