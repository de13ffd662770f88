import { Command } from 'commander';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { NoAnswer } from '../../calc/calculator.ts';
import { Asking } from '../../check/Asking.ts';
import { NotEntered } from '../../check/NotEntered.ts';
import { nameAt } from '../../check/nameAt.ts';
import { type RingScale, focusScaleOf, scaleOfPart } from '../../check/quantities/focusScaleOf.ts';
import { type HandWheel, handWheel } from '../../check/quantities/handWheel.ts';
import { scaleMarks, usualDistances } from '../../check/quantities/scaleMarks.ts';
import { type SetupGlass, eachGlass } from '../../check/subjects.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { readLength } from '../../units/length.ts';
import { chosen } from '../chosen.ts';
import { loadShoot } from '../files.ts';
import { paintFor } from '../paint.ts';
import { Refusal, valueOrRefuse } from '../Refusal.ts';
import { type ScaleTable, scaleCsv, scaleJson, scaleText } from '../scaleText.ts';
import { EXIT, type World } from '../World.ts';

export const summary = 'Prints the focus marks of a lens or focuser: distance, ring angle, angle of the hand wheel';

interface Options {
  readonly lens?: string;
  readonly at?: readonly string[];
  readonly imperial?: boolean;
  readonly json?: boolean;
  readonly csv?: boolean;
}

export function command(world: World): Command {
  return new Command('scale')
    .description(`${summary}. Distances run from the sensor plane.`)
    .argument('<file>', 'a *.shoot.json file')
    .option('--lens <name>', 'the lens, block or focuser whose ring it is, where there are several')
    .option('--at <distance...>', `only at these distances, as in --at "5'6\\"" "1.68 m" infinity`)
    .option('--imperial', 'feet and inches')
    .option('--json', 'the tables as JSON')
    .option('--csv', 'the tables as CSV, millimetres and degrees')
    .action((file: string, options: Options) => scale(world, file, options));
}

function scale(world: World, file: string, options: Options): void {
  const shoot = loadShoot(world, file);
  const id = chosen(withRing(shoot), options.lens, 'lens or focuser with a focus ring');
  const asking = new Asking(new Ledger(shoot));
  const system = options.imperial === true ? 'imperial' : 'metric';
  const distances = options.at === undefined ? usualDistances(system) : options.at.map((text) => valueOrRefuse(readLength(text), '--at'));
  const tables = tablesOf(asking, id, file).map(({ scale: ring, ...table }): ScaleTable => ({ ...table, scale: ring, marks: scaleMarks(ring, system, distances) }));
  const outside = options.at === undefined ? [] : distances.filter((mm) => tables.every(({ marks }) => marks.every(({ distanceMm }) => distanceMm !== mm)));
  if (options.json === true) world.out(scaleJson(tables));
  else if (options.csv === true) world.out(scaleCsv(tables));
  else world.out(scaleText(tables, { paint: paintFor(world), system, columns: Math.max(60, Math.min(world.columns, 110)), outside }));
  if (outside.length > 0) world.exitCode = EXIT.fails;
}

/** Parts and copies that have a focus ring; a misspelt name is measured against these. */
function withRing({ kit }: Shoot): Record<string, { readonly name?: string | undefined }> {
  const parts = Object.entries(kit.parts).filter(([, { focus }]) => focus !== undefined);
  const copies = Object.entries(kit.copies ?? {}).filter(([, { of }]) => kit.parts[of]?.focus !== undefined);
  return Object.fromEntries([...parts, ...copies.map(([id, copy]) => [id, { name: copy.name ?? kit.parts[copy.of]?.name }] as const)]);
}

type Found = Omit<ScaleTable, 'marks'>;

/** One table for each scale there is of the ring: marks counted from the front lie elsewhere behind every taking lens. */
function tablesOf(asking: Asking, id: string, file: string): Found[] {
  const used = eachGlass(asking.ledger).filter((subject) => isRing(asking, subject, id));
  try {
    return used.length === 0 ? [unused(asking, id)] : gathered(asking, used);
  } catch (thrown) {
    if (thrown instanceof NotEntered) throw new Refusal(file, thrown.missing.map(({ path, says, measure }) => ({ path, message: `Not entered yet: ${says}.`, ...(measure === undefined ? {} : { cure: measure }) })));
    if (thrown instanceof NoAnswer) throw new Refusal(file, [{ path: thrown.path, message: thrown.message }]);
    throw thrown;
  }
}

function isRing({ ledger }: Asking, { setup, glass }: SetupGlass, id: string): boolean {
  const ring = opticalPath(ledger, setup, glass).focusedBy?.part;
  return ring?.id === id || ring?.path === `kit/parts/${id}`;
}

function gathered(asking: Asking, used: readonly SetupGlass[]): Found[] {
  const tables = new Map<string, { name: string; scale: RingScale; glasses: Set<string>; wheels: Map<string, HandWheel> }>();
  for (const subject of used) {
    const ring = focusScaleOf(asking, subject);
    const name = opticalPath(asking.ledger, subject.setup, subject.glass).focusedBy?.name ?? '';
    const key = `${name} ${JSON.stringify(ring.marks)}`;
    const table = tables.get(key) ?? { name, scale: ring, glasses: new Set(), wheels: new Map() };
    tables.set(key, table);
    table.glasses.add(nameAt(asking.ledger, 'glasses', subject.glass));
    const wheel = wheelOf(asking, subject);
    if (wheel !== undefined) table.wheels.set(`${wheel.piece.name} ${wheel.ringDegPerDeg}`, wheel);
  }
  return [...tables.values()].map(({ glasses, wheels, ...table }) => ({ ...table, glasses: [...glasses], wheels: [...wheels.values()] }));
}

/** The wheel that turns it there, where that can be told. */
function wheelOf(asking: Asking, subject: SetupGlass): HandWheel | undefined {
  try {
    return handWheel(asking, subject);
  } catch (thrown) {
    if (thrown instanceof NotEntered) return undefined;
    throw thrown;
  }
}

/** A ring that no glass is focused by: where it would stand is not known. */
function unused(asking: Asking, id: string): Found {
  const part = new PartView(asking.ledger, id);
  const unknown = (): never => {
    throw new NotEntered([{ path: 'glasses', says: `a glass that ${part.name} focuses, so that its distances have a place to run from` }]);
  };
  const powerAtMm = part.has('lens') ? undefined : () => part.figure('focuser/toSensorMm')?.value ?? unknown();
  return { name: part.name, scale: scaleOfPart(asking, part, { frontToSensorMm: unknown, powerAtMm }), glasses: [], wheels: [] };
}
