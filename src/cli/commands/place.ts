import { Command } from 'commander';
import { placeSetup, type Placement } from '../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import { rigGltf } from '../../papers/gltf/rigGltf.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { settingWords } from '../../check/settingWords.ts';
import { type System, printAmount } from '../../units/print.ts';
import { chosen } from '../chosen.ts';
import { loadShoot, writeWhole } from '../files.ts';
import { type Paint, paintFor } from '../paint.ts';
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
    .option('--setup <name>', 'which setup, where there are several')
    .option('--glass <name>', 'only with this glass')
    .option('--gltf <file>', 'write the rig with the first of these glasses as binary glTF, for any viewer')
    .option('--imperial', 'inches')
    .option('--json', 'places, turns and settings as JSON')
    .action((file: string, options: Options) => place(world, file, options));
}

async function place(world: World, file: string, options: Options): Promise<void> {
  const shoot = loadShoot(world, file);
  const ledger = new Ledger(shoot);
  const setup = chosen(shoot.setups, options.setup, 'setup');
  const all = shoot.setups[setup]?.glasses ?? [];
  const glasses = options.glass === undefined ? all : [chosen(Object.fromEntries(all.map((id) => [id, shoot.glasses[id] ?? {}])), options.glass, 'glass of this setup')];
  const placements = glasses.map((glass) => placeSetup(ledger, setup, glass));
  if (options.gltf !== undefined) writeWhole(options.gltf, await rigGltf(ledger, setup, glasses[0] ?? ''));
  if (options.json === true) world.out(`${JSON.stringify(placements.map(plain), null, 1)}\n`);
  else world.out(placementText(shoot, ledger, placements, paintFor(world), options.imperial === true ? 'imperial' : 'metric'));
  if (options.gltf !== undefined) world.err(`Written: ${options.gltf}\n`);
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

function placementText(shoot: Shoot, ledger: Ledger, placements: readonly Placement[], paint: Paint, system: System): string {
  const blocks = placements.map((placement, at) => oneText(shoot, ledger, placement, placements[at - 1], paint, system));
  return `${blocks.join('\n\n')}\n`;
}

function oneText(shoot: Shoot, ledger: Ledger, placement: Placement, before: Placement | undefined, paint: Paint, system: System): string {
  const { setup, glass, places, unplaced, settings, loops } = placement;
  const pieces = setupPieces(ledger, setup, glass);
  const camera = shoot.setups[setup]?.camera;
  // A station stands by itself: its places run from its own root.
  const stationOf = (ref: string) => (pieces.get(ref)?.build === camera ? '' : (shoot.builds[pieces.get(ref)?.build ?? '']?.name ?? ''));
  const name = (ref: string) => [stationOf(ref), pieces.get(ref)?.name ?? ref].filter((word) => word !== '').join(': ');
  const widest = Math.max(0, ...[...places.keys()].map((ref) => name(ref).length));
  const mm = (value: number) => printAmount({ value: Math.round(value * 10) / 10, unit: 'mm' }, system);
  const rows = [...places].map(([ref, { t }]) => `  ${name(ref).padEnd(widest)}  ${t.map((value) => mm(value).padStart(10)).join('')}`);
  const found = settings.map((setting) => {
    const was = before?.settings.find(({ joint, key }) => joint.path === setting.joint.path && key === setting.key);
    const value = printAmount({ value: setting.value, unit: setting.key.endsWith('Deg') ? 'deg' : 'mm' }, system);
    const moved = was === undefined || Math.abs(was.value - setting.value) < 0.05 ? '' : `  ${setting.value > was.value ? '+' : '−'}${printAmount({ value: Math.abs(setting.value - was.value), unit: setting.key.endsWith('Deg') ? 'deg' : 'mm' }, system)} from the lens before`;
    return `  ${settingWords(setting)}: ${value}${setting.scope === 'shared' ? ' for the whole set' : ''}${setting.atLimit === undefined ? '' : `, at the ${setting.atLimit === 'low' ? 'lower' : 'upper'} end of its range`}${moved}`;
  });
  const open = loops.filter(({ closes }) => !closes).map(({ joint, misfitMm }) => `  ${joint.b.piece.name} misses ${joint.a.piece.name} by ${mm(misfitMm)}`);
  const loose = unplaced.map(({ ref, why }) => `  ${name(ref)} ${why}`);
  const section = (title: string, lines: readonly string[]) => (lines.length === 0 ? [] : ['', paint.dim(title), ...lines]);
  const title = `${shoot.setups[setup]?.name ?? setup} · ${shoot.glasses[glass]?.name ?? glass}`;
  return [paint.strong(title), paint.dim(`  ${'piece'.padEnd(widest)}  ${['to the left', 'up', 'forward'].map((one) => one.padStart(10)).join('')}`), ...rows, ...section('found', found), ...section('does not close', open), ...section('waits for a place', loose)].join('\n');
}
