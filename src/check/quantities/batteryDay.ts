import type { Supply } from '../../assembly/lines/powerTrace.ts';
import { powerTrace } from '../../assembly/lines/powerTrace.ts';
import { dayOfPacks } from '../../calc/power/dayOfPacks.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { batteryRun } from './batteryRun.ts';
import { changeDark } from './changeDark.ts';
import { type DayStretch, dayPlan, shotsOfDay } from './dayPlan.ts';
import { countOf } from './kitCables.ts';
import { type KitPack, chargersFor, kitPacks } from './kitPacks.ts';
import { supplyOf } from './supplies.ts';
import { wiredAs } from './wired.ts';

/** A change or a darkness in the day of one place where packs go. */
export interface BatteryEvent {
  readonly atHours: number;
  readonly kind: 'change' | 'died in a take' | 'no pack left';
  /** The supply it happens at. */
  readonly at: string;
  readonly shot: string;
  readonly offHoursLeft: number;
  readonly darkMin: number;
}

/** The day of one kind of pack, over all the places it is used in. */
export interface BatteryDay {
  readonly pack: KitPack;
  readonly count: number;
  /** Places that want a pack of this kind at once. */
  readonly places: number;
  readonly hoursWanted: number;
  /** Hours without power that was wanted, changes not counted. */
  readonly hoursDark: number;
  /** Hours that all places together could go on for; none where one of them goes dark, as what another has left does not help it. */
  readonly hoursLeft: number;
  readonly changes: number;
  readonly takesLost: number;
  readonly chargerTurns: number;
  readonly events: readonly BatteryEvent[];
  readonly wattHours: number;
}

/** Kinds of pack that some setup of a day runs on. */
export function packsOfDay(ledger: Ledger, day: string): readonly KitPack[] {
  return ledger.cell(`packs of day|${day}`, () => {
    const used = new Set(setupsOfDay(ledger, day).flatMap((whole) => supplies(ledger, whole).flatMap(({ packs }) => packs.map(({ path }) => path))));
    return kitPacks(ledger).filter(({ part }) => used.has(part.path));
  });
}

const supplies = (ledger: Ledger, { setup, glass }: SetupGlass): readonly Supply[] => powerTrace(ledger, setup, glass).supplies.filter(({ nodes, packs }) => nodes.length > 0 && packs.length > 0);

function setupsOfDay(ledger: Ledger, day: string): SetupGlass[] {
  const found = shotsOfDay(ledger, day).map((shot) => wiredAs(ledger, ledger.at(`shots/${shot}/setup`) as string, ledger.at(`shots/${shot}/glass`) as string));
  return [...new Map(found.map((one) => [`${one.setup}|${one.glass}`, one])).values()];
}

/** With the chargers of the kit where `charging`, and without them otherwise; with so many packs `more` than there are. */
export function batteryDay(asking: Asking, day: string, path: string, charging: boolean, more = 0): BatteryDay | undefined {
  return asking.ledger.cell(`battery day|${day}|${path}|${charging}|${more}`, () => {
    const pack = kitPacks(asking.ledger).find(({ part }) => part.path === path);
    if (pack === undefined) return undefined;
    const places = placesOf(asking, day, path);
    const wants = places.map(({ stretches }) => stretches.reduce((sum, one) => sum + one.hours * one.loadW, 0));
    const count = countOf(pack.part) + more;
    const stock = allotted(count, wants);
    const { bays, hours } = chargersFor(asking.ledger, pack);
    const chargers = charging ? allotted(bays, wants) : wants.map(() => 0);
    const days = handedOn(stock, (at, packs) => dayOf(asking, places[at] as Place, { count: packs, bays: chargers[at] ?? 0, chargeHours: hours ?? asking.assume(assumed.chargeHours).value }));
    const sum = (of: (one: OneDay) => number) => days.reduce((total, one) => total + of(one), 0);
    return {
      pack, count, places: places.length,
      hoursWanted: sum((one) => one.hoursWanted), hoursDark: sum((one) => one.hoursDark), hoursLeft: days.some(({ hoursDark }) => hoursDark > 0) ? 0 : sum((one) => one.hoursLeft),
      changes: sum((one) => one.changes), takesLost: sum((one) => one.takesLost), chargerTurns: sum((one) => one.chargerTurns),
      events: days.flatMap(({ events }) => events).toSorted((a, b) => a.atHours - b.atHours), wattHours: wants.reduce((total, one) => total + one, 0),
    };
  });
}

interface Stretch extends DayStretch {
  readonly loadW: number;
  readonly at: string;
}

/** A place where a pack of the kind is wanted through the day: setups follow each other, so their first places are one, their second ones another. */
interface Place {
  readonly stretches: readonly Stretch[];
  readonly cutoffV: number;
  readonly darkS: number;
  readonly pack: ReturnType<typeof batteryRun>['pack'];
}

function placesOf(asking: Asking, day: string, path: string): Place[] {
  const plan = dayPlan(asking, day).stretches.map((one) => ({ ...one, ...wiredAs(asking.ledger, one.setup, one.glass) }));
  const bySetup = new Map(setupsOfDay(asking.ledger, day).map((whole) => [`${whole.setup}|${whole.glass}`, usersIn(asking, whole, path)]));
  const most = Math.max(0, ...[...bySetup.values()].map(({ length }) => length));
  return Array.from({ length: most }, (_, place) => {
    const users = [...bySetup.values()].flatMap((all) => all[place] ?? []);
    const stretches = plan.map((one) => {
      const user = bySetup.get(`${one.setup}|${one.glass}`)?.[place];
      return { ...one, loadW: user?.loadW ?? 0, at: user?.name ?? '' };
    });
    const coldest = users.toSorted((a, b) => a.pack.temperatureC - b.pack.temperatureC)[0];
    return { stretches, cutoffV: Math.max(...users.map(({ endV }) => endV)), darkS: Math.max(...users.map(({ darkS }) => darkS)), pack: (coldest as User).pack };
  });
}

interface User {
  readonly name: string;
  readonly loadW: number;
  readonly endV: number;
  readonly darkS: number;
  readonly pack: Place['pack'];
}

function usersIn(asking: Asking, whole: SetupGlass, path: string): User[] {
  return supplies(asking.ledger, whole).flatMap((traced) => {
    if (traced.packs[0]?.path !== path) return [];
    const supply = supplyOf(asking, whole, traced.piece.ref) ?? traced;
    const run = batteryRun(asking, whole, supply);
    return { name: supply.piece.name, loadW: run.loadW, endV: run.endV, darkS: changeDark(asking, whole, supply).seconds, pack: run.pack };
  });
}

/** Shares whole things by what each wants, at least one each as far as they go. */
function allotted(count: number, wants: readonly number[]): number[] {
  const shares: number[] = wants.map((_, at) => (at < count ? 1 : 0));
  for (let left = count - shares.reduce((sum, one) => sum + one, 0); left > 0 && wants.length > 0; left -= 1) {
    const neediest = wants.reduce((best, want, at) => (want / ((shares[at] ?? 0) + 1) > (wants[best] ?? 0) / ((shares[best] ?? 0) + 1) ? at : best), 0);
    shares[neediest] = (shares[neediest] ?? 0) + 1;
  }
  return shares;
}

interface OneDay extends Pick<BatteryDay, 'hoursWanted' | 'hoursDark' | 'hoursLeft' | 'changes' | 'takesLost' | 'chargerTurns' | 'events'> {}

function dayOf(asking: Asking, place: Place, { count, bays, chargeHours }: { count: number; bays: number; chargeHours: number }): OneDay {
  const { pack, stretches, cutoffV, darkS } = place;
  const hoursWanted = stretches.reduce((sum, one) => (one.loadW > 0 ? sum + one.hours : sum), 0);
  if (count === 0) return { hoursWanted, hoursDark: hoursWanted, hoursLeft: 0, changes: 0, takesLost: stretches.filter(({ take, loadW }) => take && loadW > 0).length, chargerTurns: 0, events: [] };
  const day = dayOfPacks({
    packs: [{ name: pack.part.name, count, openCircuitV: pack.openCircuitV.map(([soc, volts]): [number, number] => [soc, volts]), capacityAh: pack.capacityAh, internalOhm: pack.internalOhm, cutoffV, charge: 1, chargeHours }],
    segments: stretches.map(({ hours, loadW, take }) => ({ hours, loadW, take, chargerOn: bays > 0 })),
    darkPerChangeS: darkS, reserveMin: asking.assume(assumed.reserveMin).value, chargerBays: bays,
  });
  const dead = day.events.filter(({ kind }) => kind !== 'change').reduce((sum, { darkMin }) => sum + darkMin / 60, 0);
  return {
    hoursWanted, hoursDark: dead, hoursLeft: day.hoursLeftAtWrap, changes: day.changes, takesLost: day.takesLost, chargerTurns: day.chargerTurns,
    events: day.events.map(({ atHours, kind, offHoursLeft, darkMin }) => ({ atHours, kind, offHoursLeft, darkMin, ...whereAt(stretches, atHours) })),
  };
}

/** Hands a pack from a place that can spare it to the one that is dark for longest, as long as there are such. */
function handedOn(stock: readonly number[], dayWith: (place: number, count: number) => OneDay): OneDay[] {
  const counts = [...stock];
  const days = counts.map((count, place) => dayWith(place, count));
  for (;;) {
    const needy = days.reduce((worst, one, place) => (one.hoursDark > (days[worst]?.hoursDark ?? 0) ? place : worst), -1);
    if (needy < 0) return days;
    const spare = counts.findIndex((count, place) => place !== needy && count > 1 && days[place]?.hoursDark === 0 && dayWith(place, count - 1).hoursDark === 0);
    if (spare < 0) return days;
    for (const [place, more] of [[spare, -1], [needy, 1]] as const) {
      counts[place] = (counts[place] ?? 0) + more;
      days[place] = dayWith(place, counts[place]);
    }
  }
}

function whereAt(stretches: readonly Stretch[], atHours: number): { at: string; shot: string } {
  let clock = 0;
  for (const one of stretches) {
    clock += one.hours;
    if (clock > atHours + 1e-9) return { at: one.at, shot: one.shot };
  }
  const last = stretches.at(-1);
  return { at: last?.at ?? '', shot: last?.shot ?? '' };
}
