import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { Point, Solid } from '../../shoot/schema/mechanics.ts';
import { KINDS } from '../../shoot/schema/part.ts';
import { CABIN_BAG, HOLD_PIECE } from '../../standards/baggageRules.ts';
import { type CARRIAGE_LIMITS, carriageClass } from '../../standards/carriageLimits.ts';
import { partsInUse } from './partsInUse.ts';

/** One kind of thing in the kit, as it flies. */
export interface FlightItem {
  readonly part: PartView;
  readonly name: string;
  readonly count: number;
  /** Used at once by some setup; the rest are spares. */
  readonly used: number;
  readonly massG: number | undefined;
  /** Packs must go in the cabin; optics, bodies and cards had better. */
  readonly goes: 'pack' | 'cabin' | 'hold';
  /** What goes into the cabin first when room is short. */
  readonly rank: number;
  /** Class of a pack; `undefined` where its energy is not entered. */
  readonly carriage: (typeof CARRIAGE_LIMITS)[number] | undefined;
  /** Its shape is entered, and no bag for the cabin holds it. */
  readonly tooLargeForCabin: boolean;
  /** Its shape is entered, and its edges add up to more than a piece of baggage may have. */
  readonly oversize: boolean;
}

/** Everything there is in the kit, like beside like. Copies stand on their own; what is only wished for does not fly. */
export function flightKit(ledger: Ledger): readonly FlightItem[] {
  return ledger.cell('flight kit', () =>
    partsInUse(ledger)
      .filter(({ have }) => have > 0)
      .map(({ part, used, have }) => itemOf(part, used, have))
      .toSorted((a, b) => KINDS.indexOf(a.part.kind) - KINDS.indexOf(b.part.kind)));
}

function itemOf(part: PartView, used: number, count: number): FlightItem {
  const [volts, ampHours] = [part.figure('pack/nominalV'), part.figure('pack/capacityAh')];
  const isPack = part.has('pack') || part.kind === 'battery';
  const rank = rankOf(part);
  const edges = edgesOf(part);
  return {
    part, name: part.name, count, used, massG: part.figure('massG')?.value, goes: isPack ? 'pack' : rank === undefined ? 'hold' : 'cabin', rank: rank ?? RANKS.length,
    carriage: volts === undefined || ampHours === undefined ? undefined : carriageClass(volts.value * ampHours.value),
    tooLargeForCabin: edges !== undefined && edges.some((edge, at) => edge > (CABIN_BAG.edgesMm[at] as number)),
    oversize: edges !== undefined && edges.reduce((sum, edge) => sum + edge, 0) > HOLD_PIECE.mostSidesMm,
  };
}

/** What is broken, or lost, at the greatest cost comes first: recordings, bodies, glass. Common practice. */
const RANKS: readonly ((part: PartView) => boolean)[] = [
  (part) => part.kind === 'media',
  (part) => part.has('body'),
  (part) => part.has('lens') || part.has('block') || part.has('focuser'),
  (part) => part.has('closeUp') || part.has('filter') || part.has('mountAdapter'),
];

function rankOf(part: PartView): number | undefined {
  const rank = RANKS.findIndex((is) => is(part));
  return rank === -1 ? undefined : rank;
}

/** Edges of the box round the entered shape of a part, longest first. Guessed shapes do not count. */
function edgesOf(part: PartView): number[] | undefined {
  const solids = (part.read('solids') ?? []) as readonly Solid[];
  if (solids.length === 0) return undefined;
  return [0, 1, 2]
    .map((axis) => {
      const ends = solids.flatMap((solid) => {
        const middle = solid.atMm?.[axis] ?? 0;
        const half = extentOf(solid, axis) / 2;
        return [middle - half, middle + half];
      });
      return Math.max(...ends) - Math.min(...ends);
    })
    .toSorted((a, b) => b - a);
}

const extentOf = (solid: Solid, axis: number): number => {
  if (solid.shape === 'box') return solid.sizeMm[axis] as number;
  return 'xyz'[axis] === solid.along ? solid.lengthMm : solid.diameterMm;
};

/** Keys and drivers that the kit's own screws ask for. */
export function flightTools(ledger: Ledger): readonly string[] {
  return ledger.cell('flight tools', () => {
    const points = partsInUse(ledger).flatMap(({ part, have }) => have === 0 ? [] : Object.values((part.read('points') ?? {}) as Readonly<Record<string, Point>>));
    return [...new Set(points.flatMap(({ tool }) => (tool === undefined || tool === 'hand' ? [] : tool)))].toSorted((a, b) => a.localeCompare(b, 'en'));
  });
}
