import { wiring } from '../assembly/lines/wiring.ts';
import { buildsOf, glassesOf } from '../check/subjects.ts';
import { type FlightLot, type FlightPlan, flightPlan, lotWords } from '../check/quantities/flightPlan.ts';
import { type PartInUse, partsInUse } from '../check/quantities/partsInUse.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import { BAGGAGE_CAUTIONS } from '../standards/baggageRules.ts';
import { CARRIAGE_EDITION, CARRIAGE_OPEN, carriageClass } from '../standards/carriageLimits.ts';
import { printAmount } from '../units/print.ts';
import { writeCsv } from './csv.ts';
import { type Making, paper, textFile } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { SIZE } from './sheet/look.ts';
import type { Sheet } from './sheet/Sheet.ts';
import { type Row, table } from './sheet/table.ts';

/** One line of the list. */
export interface PackRow {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly serial: string;
  readonly owner: 'owned' | 'rented' | 'borrowed' | '';
  readonly from: string;
  readonly used: number;
  readonly have: number;
  readonly eachG: number | undefined;
  readonly wattHours: number | undefined;
  readonly flies: string;
  /** How many are wanted beyond what is there. */
  readonly short: number;
}

export const packList = paper({
  id: 'pack-list',
  says: 'Pack list',
  per: 'shoot',
  make: (making) => {
    const rows = packRows(making.ledger);
    const sheet = sheetFor(making, 'Pack list', 'everything that goes in the van');
    gaps(sheet, gapsOf(making.ledger, rows));
    kitTable(sheet, rows, making);
    sandbags(sheet, making);
    packsTable(sheet, rows);
    flight(sheet, making);
    rentals(sheet, rows);
    return [pdfFile(making, 'pack-list.pdf', 'Pack list', sheet.pages()), textFile('pack-list.csv', packCsv(rows, byAir(making.ledger)))];
  },
});

/** What the kit holds and the day wants. Copies take the place of the part they are; a part that is all copies is not listed twice. */
export function packRows(ledger: Ledger): PackRow[] {
  return partsInUse(ledger)
    .filter(({ part, used, have }) => used > 0 || have > 0 || part.copyPath !== undefined)
    .map((one) => rowOf(one, ledger));
}

function rowOf({ part, used, have }: PartInUse, ledger: Ledger): PackRow {
  const own = <T>(key: string): T | undefined => (part.copyPath === undefined ? undefined : (ledger.at(`${part.copyPath}/${key}`) as T | undefined));
  const [volts, ampHours] = [part.figure('pack/nominalV'), part.figure('pack/capacityAh')];
  const wattHours = volts === undefined || ampHours === undefined ? undefined : volts.value * ampHours.value;
  const flies = wattHours === undefined ? '' : carriageClass(wattHours).says;
  return {
    id: part.id, name: part.name, kind: part.kind, serial: own<string>('serial') ?? '', owner: own<PackRow['owner']>('own') ?? '', from: own<string>('from') ?? '', used, have,
    eachG: part.figure('massG')?.value, wattHours, flies: part.read('pack/outlets') === true ? `${flies} ${CARRIAGE_OPEN.powerBanks.says}` : flies, short: Math.max(0, used - have),
  };
}

interface Gap {
  readonly says: string;
  readonly wanted: number;
  readonly have: number;
}

/** What is wanted at once beyond what there is; cables still to find; pieces a build wishes for. */
function gapsOf(ledger: Ledger, rows: readonly PackRow[]): Gap[] {
  const short = rows.filter((row) => row.short > 0).map(({ name, used, have }) => ({ says: name, wanted: used, have }));
  const cables = new Map<string, number>();
  for (const setup of ledger.keys('setups')) {
    const bare = glassesOf(ledger, setup).map((glass) => wiring(ledger, setup, glass).lines.filter(({ cable, shared }) => cable === undefined && !shared));
    const own = new Map<string, number>();
    for (const { from, to } of bare.toSorted((a, b) => b.length - a.length)[0] ?? []) {
      const says = `Cable to find, ${from.port.connector} to ${to.port.connector}: ${from.piece.name} to ${to.piece.name}`;
      own.set(says, (own.get(says) ?? 0) + 1);
    }
    for (const [says, count] of own) cables.set(says, Math.max(cables.get(says) ?? 0, count));
  }
  const wishes = ledger.keys('builds').flatMap((build) =>
    ((ledger.at(`builds/${build}/missing`) ?? []) as readonly { kind: string; for?: string }[]).map((one) => ({ says: `${capital(one.kind)}${one.for === undefined ? '' : ` for ${one.for}`}, in ${(ledger.at(`builds/${build}/name`) as string | undefined) ?? build}`, wanted: 1, have: 0 })),
  );
  return [...short, ...[...cables].map(([says, wanted]) => ({ says, wanted, have: 0 })), ...wishes];
}

function gaps(sheet: Sheet, found: readonly Gap[]): void {
  if (found.length === 0) return;
  sheet.text(`Short of ${found.reduce((sum, { wanted, have }) => sum + wanted - have, 0)}: to hire, buy or plan around`, { face: 'strong', sizePt: SIZE.heading, afterMm: 1.4 });
  table(sheet, [{ says: 'item', share: 5 }, { says: 'wanted at once', mm: 26, align: 'end' }, { says: 'there are', mm: 18, align: 'end' }, { says: 'short', mm: 14, align: 'end' }],
    found.map(({ says, wanted, have }) => ({ cells: [{ text: says, verdict: 'fails' }, String(wanted), String(have), { text: String(wanted - have), face: 'strong' }] })));
  sheet.space(3);
}

function kitTable(sheet: Sheet, rows: readonly PackRow[], { press, ledger }: Making): void {
  const plan = planOf(ledger);
  const goes = plan === undefined ? undefined : marksByPart(plan);
  const mass = (grams: number | undefined, count: number) => (grams === undefined ? '' : printAmount({ value: grams * count, unit: 'g' }, press.system));
  const byKind = [...new Set(rows.map(({ kind }) => kind))].map((kind) => [kind, rows.filter((row) => row.kind === kind)] as const);
  const listed = byKind.flatMap(([kind, some]): Row[] => [
    { cells: [], group: capital(kind) },
    ...some.map(({ id, name, serial, owner, from, used, have, eachG }): Row => ({
      cells: [
        { text: name, box: true }, [serial, owner === 'owned' || owner === '' ? '' : `${owner}${from === '' ? '' : ` from ${from}`}`].filter((word) => word !== '').join('\n'),
        String(have), used === 0 ? { text: 'spare', quiet: true } : String(used), mass(eachG, 1), mass(eachG, have), ...(goes === undefined ? [] : [goes.get(id) ?? '']), { text: '', box: true },
      ],
    })),
  ]);
  table(sheet, [
    { says: 'out  item', share: goes === undefined ? 7 : 8 }, { says: 'serial, owner', share: 4 }, { says: 'have', mm: 11, align: 'end' }, { says: 'used at once', mm: 13, align: 'end' },
    { says: 'each', mm: 16, align: 'end' }, { says: 'all', mm: 17, align: 'end' }, ...(goes === undefined ? [] : [{ says: 'bag, case', mm: 16 }]), { says: 'back', mm: 8 },
  ], listed);
  if (goes !== undefined) sheet.text('Letters are bags for the cabin, numbers cases for the hold, as listed under “By air”; what is open is not weighed, and to find room for.', { sizePt: SIZE.small });
  const known = rows.filter(({ eachG }) => eachG !== undefined);
  const total = known.reduce((sum, { eachG = 0, have }) => sum + eachG * have, 0);
  const open = rows.length - known.length;
  sheet.text(`Together ${printAmount({ value: total, unit: 'g' }, press.system)} without cases${open === 0 ? '' : `; the mass of ${open} ${open === 1 ? 'item is' : 'items is'} not entered`}.`, { face: 'strong' });
}

/** The most that stand on feet at once, in one setup. */
function sandbags(sheet: Sheet, { ledger, press }: Making): void {
  const bagsOf = (build: string): number => ledger.keys(`builds/${build}/pieces`).reduce((sum, piece) => sum + ((ledger.at(`builds/${build}/pieces/${piece}/ballastG`) as number | undefined) ?? 0), 0);
  const most = Math.max(0, ...ledger.keys('setups').map((setup) => buildsOf(ledger, setup).reduce((sum, build) => sum + bagsOf(build), 0)));
  if (most > 0) sheet.text(`Sandbags beside: ${printAmount({ value: most, unit: 'g' }, press.system)} at once.`, { face: 'strong' });
}

function packsTable(sheet: Sheet, rows: readonly PackRow[]): void {
  const packs = rows.filter(({ wattHours }) => wattHours !== undefined);
  if (packs.length === 0) return;
  sheet.heading('Batteries, and how they fly');
  table(sheet, [{ says: 'pack', share: 3 }, { says: 'have', mm: 11, align: 'end' }, { says: 'Wh each', mm: 18, align: 'end' }, { says: 'Wh all', mm: 18, align: 'end' }, { says: 'with a passenger', share: 6 }],
    packs.map(({ name, have, wattHours = 0, flies }) => ({ cells: [name, String(have), watts(wattHours), watts(wattHours * have), flies] })));
  sheet.text(`By ${CARRIAGE_EDITION}. Airlines may be stricter; ask before the day. Damaged, swollen or recalled packs do not travel. Tape over terminals; never charge unattended, or below 0 °C.`, { sizePt: SIZE.small });
}

const planOf = (ledger: Ledger): FlightPlan | undefined => (ledger.keys('days').some((day) => ledger.at(`days/${day}/flies`) === true) ? flightPlan(ledger) : undefined);

/** What a bag or case is called in the list: letters in the cabin, numbers in the hold. */
const bagMark = (at: number): string => (at < 26 ? String.fromCharCode(65 + at) : `bag ${at + 1}`);
const caseMark = (at: number): string => String(at + 1);

/** The bag or case of each part, by its id; with how many where they are shared out: "A: 2, B: 1". */
function marksByPart({ bags, cases, unweighed }: FlightPlan): ReadonlyMap<string, string> {
  const found = new Map<string, { mark: string; count: number }[]>();
  const places = [...bags.map(({ lots }, at) => ({ mark: bagMark(at), lots })), ...cases.map(({ lots }, at) => ({ mark: caseMark(at), lots }))];
  for (const { mark, lots } of places) for (const { of, count } of lots) found.set(of.part.id, [...(found.get(of.part.id) ?? []), { mark, count }]);
  for (const { part } of unweighed) if (!found.has(part.id)) found.set(part.id, [{ mark: 'open', count: 0 }]);
  return new Map([...found].map(([id, all]) => [id, all.length === 1 ? (all[0]?.mark ?? '') : all.map(({ mark, count }) => `${mark}: ${count}`).join(', ')]));
}

/** Where each part goes by air, by its id: "cabin, director: 1; case 2: 3". */
function byAir(ledger: Ledger): ReadonlyMap<string, string> {
  const plan = planOf(ledger);
  const places = [...(plan?.bags ?? []).map(({ person, lots }) => ({ where: `cabin, ${person}`, lots })), ...(plan?.cases ?? []).map(({ lots }, at) => ({ where: `case ${at + 1}`, lots }))];
  const found = new Map<string, string[]>();
  for (const { where, lots } of places) for (const { of, count } of lots) found.set(of.part.id, [...(found.get(of.part.id) ?? []), `${where}: ${count}`]);
  return new Map([...found].map(([id, words]) => [id, words.join('; ')]));
}

/** Who carries what on a day that flies: the same sharing out as the question of the flight. */
function flight(sheet: Sheet, { ledger, press }: Making): void {
  const plan = planOf(ledger);
  if (plan === undefined) return;
  const grams = (value: number) => printAmount({ value, unit: 'g' }, press.system);
  const words = (lots: readonly FlightLot[]) => lots.map((lot) => `${lotWords(lot)}${lot.eachG > 0 ? `, ${grams(lot.eachG * lot.count)}` : ''}`).join('\n');
  const row = (where: string, lots: readonly FlightLot[], massG: number): Row => {
    const half = Math.ceil(lots.length / 2);
    return { cells: [{ text: where, box: true }, words(lots.slice(0, half)), words(lots.slice(half)), { text: grams(massG), face: 'strong' }] };
  };
  sheet.heading('By air: who carries what');
  table(sheet, [{ says: 'bag or case', share: 2 }, { says: 'what is in it', share: 3 }, { says: '', share: 3 }, { says: 'full', mm: 16, align: 'end' }], [
    ...plan.bags.map(({ person, lots, massG }, at) => row(`${bagMark(at)}  Cabin, ${person}`, lots, massG)),
    ...plan.cases.map(({ lots, massG, heavy }, at) => row(`${caseMark(at)}  Hold, case ${at + 1}${heavy ? ', heavy' : ''}`, lots, massG)),
  ]);
  sheet.text(flightTotals(plan, grams), { face: 'strong' });
  const open = plan.unweighed.filter(({ goes }) => goes !== 'pack');
  if (open.length > 0) sheet.text(`Not weighed, and to find room for: ${open.map(({ name, count }) => (count === 1 ? name : `${count} × ${name}`)).join(', ')}.`, { sizePt: SIZE.small });
  sheet.text(`Shared out by mass, not by volume. ${BAGGAGE_CAUTIONS.equipment.says} ${BAGGAGE_CAUTIONS.tools.says} ${BAGGAGE_CAUTIONS.radios.says} ${BAGGAGE_CAUTIONS.fluids.says} ${BAGGAGE_CAUTIONS.airline.says}`, { sizePt: SIZE.small });
}

function flightTotals({ bags, cases, included, tooHeavy, packsLeft, freight, atLeast }: FlightPlan, grams: (value: number) => string): string {
  const all = (some: readonly { readonly massG: number }[]) => grams(some.reduce((sum, { massG }) => sum + massG, 0));
  const hold = freight ? `${atLeast} cases at least, which is freight` : `${cases.length} in the hold, ${all(cases)}, ${included} included in the tickets`;
  const stays = [...tooHeavy.map(({ name }) => name), ...packsLeft.map(lotWords)];
  return `${bags.length} in the cabin, ${all(bags)}; ${hold}; together ${all([...bags, ...cases])}.${stays.length === 0 ? '' : ` Not as baggage: ${stays.join(', ')}.`}`;
}

function rentals(sheet: Sheet, rows: readonly PackRow[]): void {
  const rented = rows.filter(({ owner }) => owner === 'rented' || owner === 'borrowed');
  if (rented.length === 0) return;
  sheet.heading('Rented and borrowed: check out, return');
  table(sheet, [{ says: 'item', share: 4 }, { says: 'serial', share: 3 }, { says: 'from', share: 3 }, { says: 'out: date, state', share: 4 }, { says: 'return: date, state', share: 4 }],
    rented.map(({ name, serial, from }) => ({ cells: [name, serial, from, { text: '', box: true }, { text: '', box: true }], leastMm: 10 })));
}

const watts = (value: number): string => printAmount({ value, unit: 'Wh' }).replace(/\D*Wh$/, '');
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function packCsv(rows: readonly PackRow[], air: ReadonlyMap<string, string>): string {
  return writeCsv(['id', 'item', 'kind', 'serial', 'owner', 'from', 'have', 'used at once', 'short', 'each g', 'all g', 'Wh each', 'flies', 'by air'],
    rows.map((row) => [row.id, row.name, row.kind, row.serial, row.owner, row.from, row.have, row.used, row.short, row.eachG, row.eachG === undefined ? undefined : row.eachG * row.have, row.wattHours, row.flies, air.get(row.id)]));
}
