import { assume } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { carry } from '../../standards/assumptions/carry.ts';
import { HOLD_PIECE } from '../../standards/baggageRules.ts';
import { type Lot, type Packing, fewestCases, lightestCases, packCases } from './casePacking.ts';
import { type CabinBag, fillCabin } from './cabinBags.ts';
import { type FlightItem, flightKit } from './flightKit.ts';
import { type OneLift, oneLift } from './oneLift.ts';

export type FlightLot = Lot<FlightItem>;

/** A case in the hold. */
export interface HoldCase {
  readonly lots: readonly FlightLot[];
  /** Full, the case itself included. */
  readonly massG: number;
  /** Over what a ticket allows for one case: one thing that cannot be shared out. */
  readonly heavy: boolean;
}

/** Who carries what on a day that flies. By mass; edges only where shapes are entered. */
export interface FlightPlan {
  readonly people: number;
  /** Nobody is entered in the crew: counted as one. */
  readonly nobodyEntered: boolean;
  readonly bags: readonly CabinBag[];
  readonly cases: readonly HoldCase[];
  /** No way of packing takes fewer. */
  readonly atLeast: number;
  /** So many do where nobody minds their weight. */
  readonly fewest: number;
  /** So many it takes for one person to lift each, apart from what is too heavy for that by itself. */
  readonly forOnePerson: number;
  /** Cases that come with the tickets. */
  readonly included: number;
  /** Optics and bodies that found no room in the cabin: they are in the cases. */
  readonly inHold: readonly FlightLot[];
  /** Too heavy for one piece of baggage. */
  readonly tooHeavy: readonly FlightItem[];
  readonly oversize: readonly FlightItem[];
  /** Packs that may not go with these people: the packs' own question says so. */
  readonly packsLeft: readonly FlightLot[];
  readonly unweighed: readonly FlightItem[];
  /** So much that it is not baggage any more; nothing is shared out then. */
  readonly freight: boolean;
  readonly totalG: number;
}

/** More cases than this are sent, not checked in: a small crew cannot bring them to a counter. Common practice. */
const MOST_CASES = 60;

export interface FlightWish {
  readonly items: readonly FlightItem[];
  readonly caseG: number;
  readonly people: number;
}

/** How the kit flies. `undefined` where there is nothing in the kit. */
export function flightPlan(ledger: Ledger): FlightPlan | undefined {
  return ledger.cell('flight plan', () => {
    const items = flightKit(ledger);
    return items.length === 0 ? undefined : planFlight(ledger, { items, caseG: assume(ledger, carry.caseG).value, people: Math.max(1, ledger.keys('crew').length) });
  });
}

/** The same for another kit, other cases or more people: what a change would do. */
export function planFlight(ledger: Ledger, { items, caseG, people }: FlightWish): FlightPlan {
  const tareG = assume(ledger, carry.caseTareG).value;
  // A case that weighs all it may when empty holds nothing: then at least what fits the heaviest piece of baggage.
  const netG = Math.max(1, Math.min(caseG, HOLD_PIECE.mostG) - tareG);
  const mostG = Math.max(netG, HOLD_PIECE.mostG - tareG);
  // A pack without a mass is still carried by somebody.
  const weighed = items.flatMap((item) => (item.massG === undefined && item.goes !== 'pack' ? [] : { of: item, eachG: item.massG ?? 0, count: item.count }));
  const cabin = fillCabin(ledger, people, weighed.filter(({ of }) => of.goes !== 'hold'));
  const forHold = [...weighed.filter(({ of }) => of.goes === 'hold'), ...cabin.noRoom];
  const tooHeavy = forHold.filter(({ eachG }) => eachG > mostG);
  const heavy = forHold.filter(({ eachG }) => eachG > netG && eachG <= mostG);
  const light = forHold.filter(({ eachG }) => eachG <= netG);
  const heavyCount = heavy.reduce((sum, { count }) => sum + count, 0);
  const freight = fewestCases(light, netG) + heavyCount > MOST_CASES;
  const included = Math.floor(people * assume(ledger, carry.casesEach).value);
  const packing = freight ? { cases: [], atLeast: fewestCases(light, netG), fewest: 0, forOnePerson: 0 } : packForOne(light, { netG, liftG: caseLift(ledger).limitG - tareG, free: included - heavyCount });
  const alone = freight ? [] : heavy.flatMap((lot) => Array.from({ length: lot.count }, () => [{ ...lot, count: 1 }]));
  return {
    people, nobodyEntered: ledger.keys('crew').length === 0, bags: cabin.bags, inHold: cabin.noRoom, packsLeft: cabin.packsLeft, freight,
    cases: [...alone.map((lots) => caseOf(lots, tareG, true)), ...packing.cases.map((lots) => caseOf(lots, tareG, false))],
    atLeast: packing.atLeast + heavyCount, fewest: packing.fewest + heavyCount, forOnePerson: packing.forOnePerson + heavyCount, included,
    tooHeavy: tooHeavy.map(({ of }) => of), oversize: forHold.filter(({ of }) => of.oversize).map(({ of }) => of),
    unweighed: items.filter(({ massG }) => massG === undefined), totalG: massOf(weighed),
  };
}

/** What one person should lift of a case, handles and all, from the floor into a car. */
export function caseLift(ledger: Ledger, massG = 1): OneLift {
  const value = (of: (typeof carry)[keyof typeof carry]) => assume(ledger, of).value;
  const handlesMm = value(carry.caseHandleMm);
  return oneLift({ massG, fromMm: handlesMm, toMm: value(carry.bootMm) + handlesMm, acrossMm: value(carry.caseAcrossMm), grip: 'good' });
}

type ForOne = Packing<FlightItem> & Pick<FlightPlan, 'fewest' | 'forOnePerson'>;

/**
 * As few cases as one person can lift each, as long as no more come free; else as light as the free ones can be, and never more
 * than the fewest where those are over the free ones already.
 */
function packForOne(lots: readonly FlightLot[], { netG, liftG, free }: { readonly netG: number; readonly liftG: number; readonly free: number }): ForOne {
  const { cases, atLeast } = packCases(lots, netG);
  const fewest = cases.length;
  const [large, small] = [lots.filter(({ eachG }) => eachG > liftG), lots.filter(({ eachG }) => eachG <= liftG)];
  // What one person cannot lift by itself shares its case with nothing.
  const alone = large.flatMap((lot) => Array.from({ length: Math.min(lot.count, MOST_CASES) }, () => [{ ...lot, count: 1 }]));
  const shared = liftG <= 0 || cases.every((one) => massOf(one) <= liftG) ? undefined : packCases(small, liftG).cases;
  if (shared === undefined) return { cases, atLeast, fewest, forOnePerson: fewest };
  const forOnePerson = alone.length + shared.length;
  const most = Math.max(fewest, free);
  return { cases: forOnePerson <= most ? [...alone, ...shared] : lightestCases(lots, netG, most), atLeast, fewest, forOnePerson };
}

export const massOf = (lots: readonly FlightLot[]): number => lots.reduce((sum, { eachG, count }) => sum + eachG * count, 0);

const caseOf = (lots: readonly FlightLot[], tareG: number, heavy: boolean): HoldCase => ({ lots, massG: tareG + massOf(lots), heavy });

/** What is in a bag or a case, in words: "2 × rod, head". */
export const lotWords = ({ of, count }: FlightLot): string => (count === 1 ? of.name : `${count} × ${of.name}`);
