import { Command } from 'commander';
import { placeSetup, type Placement } from '../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import { rigGltf } from '../../papers/gltf/rigGltf.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { settingWords, unitOf } from '../../check/settingWords.ts';
import { type System, printAmount } from '../../units/print.ts';
import { chosen, chosenSetups } from '../chosen.ts';
import { loadShoot, writeWhole } from '../files.ts';
import { type Paint, paintFor } from '../paint.ts';
import { Refusal } from '../Refusal.ts';
import { hanging, wrap } from '../wrap.ts';
import type { World } from '../World.ts';

export const summary = 'Says where every piece stands for each lens, and what moves between lenses';

interface Options {
  readonly setup?: string;
  readonly glass?: string;
  readonly gltf?: string;
  readonly imperial?: boolean;
  readonly json?: boolean;
}

export function command(world: World): Command {
  return new Command('place')
    .description(summary)
    .argument('<file>', 'a *.shoot.json file')
    .option('--setup <name>', 'only this setup')
    .option('--glass <name>', 'only with this glass')
    .option('--gltf <file>', 'write the rig with the first of these glasses as binary glTF, for any viewer')
    .option('--imperial', 'inches')
    .option('--json', 'places, turns and settings as JSON')
    .action((file: string, options: Options) => place(world, file, options));
}

async function place(world: World, file: string, options: Options): Promise<void> {
  const shoot = loadShoot(world, file);
  const ledger = new Ledger(shoot);
  const setups = chosenSetups(shoot, options.setup, file);
  const wanted = options.glass === undefined ? undefined : chosen(glassesIn(shoot, setups), options.glass, options.setup === undefined ? 'glass of any setup' : 'glass of this setup');
  const each = setups.map((setup) => (shoot.setups[setup]?.glasses ?? []).filter((glass) => wanted === undefined || glass === wanted).map((glass) => placeSetup(ledger, setup, glass)));
  const placements = each.flat();
  if (options.gltf !== undefined) writeWhole(options.gltf, await gltfOf(ledger, placements));
  const shown: Shown = { shoot, ledger, paint: paintFor(world), system: options.imperial === true ? 'imperial' : 'metric', columns: Math.max(60, Math.min(world.columns, 120)) };
  if (options.json === true) world.out(`${JSON.stringify(placements.map(plain), null, 1)}\n`);
  else world.out(`${each.flatMap((own) => own.map((placement, at) => oneText(placement, own[at - 1], shown))).join('\n\n')}\n`);
  if (options.gltf !== undefined) world.err(`Written: ${options.gltf}\n`);
}

const glassesIn = ({ setups, glasses }: Shoot, among: readonly string[]) => Object.fromEntries(among.flatMap((setup) => (setups[setup]?.glasses ?? []).map((id) => [id, glasses[id] ?? {}] as const)));

/** One model holds one rig. */
async function gltfOf(ledger: Ledger, placements: readonly Placement[]): Promise<Uint8Array> {
  const [first] = placements;
  const setups = new Set(placements.map(({ setup }) => setup));
  if (first === undefined || setups.size > 1) throw new Refusal('--gltf', [{ path: '', message: 'A model holds one setup.', cure: `Say which with --setup: ${[...setups].join(', ')}.` }]);
  return rigGltf(ledger, first.setup, first.glass);
}

function plain({ setup, glass, places, unplaced, settings, loops, meshes }: Placement): object {
  return {
    setup,
    glass,
    pieces: Object.fromEntries([...places].map(([ref, { t, r }]) => [ref, { atMm: t, rotation: r }])),
    unplaced,
    settings: settings.map(({ joint, key, scope, value, low, high, atLimit }) => ({ joint: joint.path, key, scope, value, low, high, ...(atLimit === undefined ? {} : { atLimit }) })),
    loops: loops.map(({ joint, misfitMm, misfitDeg, closes }) => ({ joint: joint.path, misfitMm, misfitDeg, closes })),
    meshes: meshes.map(({ joint, gapMm, offsetMm }) => ({ joint: joint.path, gapMm, offsetMm })),
  };
}

interface Shown {
  readonly shoot: Shoot;
  readonly ledger: Ledger;
  readonly paint: Paint;
  readonly system: System;
  readonly columns: number;
}

const NUMBER_WIDTH = 11;

function oneText(placement: Placement, before: Placement | undefined, shown: Shown): string {
  const { shoot, ledger, paint, system, columns } = shown;
  const { setup, glass, places, unplaced, settings, loops } = placement;
  const pieces = setupPieces(ledger, setup, glass);
  const camera = shoot.setups[setup]?.camera;
  // A station stands by itself: its places run from its own root.
  const stationOf = (ref: string) => (pieces.get(ref)?.build === camera ? '' : (shoot.builds[pieces.get(ref)?.build ?? '']?.name ?? ''));
  const name = (ref: string) => [stationOf(ref), pieces.get(ref)?.name ?? ref].filter((word) => word !== '').join(': ');
  const mm = (value: number) => printAmount({ value: Math.round(value * 10) / 10, unit: 'mm' }, system);
  const widest = Math.min(Math.max(0, ...[...places.keys()].map((ref) => name(ref).length)), columns - 2 - 3 * NUMBER_WIDTH);
  const rows = [...places].map(([ref, { t }]) => placeRow(name(ref), t.map(mm), widest));
  const found = settings.map((setting) => foundText(setting, before, system));
  const open = loops.filter(({ closes }) => !closes).map(({ joint, misfitMm }) => `${joint.b.piece.name} misses ${joint.a.piece.name} by ${mm(misfitMm)}`);
  const loose = unplaced.map(({ ref, why }) => `${name(ref)} ${why}`);
  const section = (title: string, lines: readonly string[]) => (lines.length === 0 ? [] : ['', paint.dim(title), ...lines.map((line) => hanging('  ', line, columns, '    '))]);
  const title = wrap(`${shoot.setups[setup]?.name ?? setup} · ${shoot.glasses[glass]?.name ?? glass}`, columns);
  return [paint.strong(title), paint.dim(placeRow('piece', ['to the left', 'up', 'forward'], widest)), ...rows, ...section('found', found), ...section('does not close', open), ...section('waits for a place', loose)].join('\n');
}

/** A name and three numbers; of a long name the numbers stand beside its last line. */
function placeRow(name: string, numbers: readonly string[], widest: number): string {
  const lines = wrap(name, widest).split('\n');
  const last = lines.pop() ?? '';
  return [...lines.map((line) => `  ${line}`), `  ${last.padEnd(widest)}${numbers.map((one) => one.padStart(NUMBER_WIDTH)).join('')}`].join('\n');
}

function foundText(setting: Placement['settings'][number], before: Placement | undefined, system: System): string {
  const was = before?.settings.find(({ joint, key }) => joint.path === setting.joint.path && key === setting.key);
  const print = (value: number) => printAmount({ value, unit: unitOf(setting.key) }, system);
  const moved = was === undefined || Math.abs(was.value - setting.value) < 0.05 ? '' : `  ${setting.value > was.value ? '+' : '−'}${print(Math.abs(setting.value - was.value))} from the lens before`;
  return `${settingWords(setting)}: ${print(setting.value)}${setting.scope === 'shared' ? ' for the whole set' : ''}${setting.atLimit === undefined ? '' : `, at the ${setting.atLimit === 'low' ? 'lower' : 'upper'} end of its range`}${moved}`;
}
