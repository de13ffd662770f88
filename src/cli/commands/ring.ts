import { dirname } from 'node:path';
import { Command, InvalidArgumentError, Option } from 'commander';
import { readLength } from '../../units/length.ts';
import { ringFiles, RING_CAUTION } from '../../papers/ring/ringFiles.ts';
import { type RingWanted, ringFault } from '../../papers/ring/ringSolid.ts';
import { makeFolders, systemFault, writeWhole } from '../files.ts';
import { openFonts, solidsMaker } from '../press.ts';
import { Refusal } from '../Refusal.ts';
import type { World } from '../World.ts';

export const summary = 'Makes a spacer ring or split clamp to print, as STL and 3MF';

interface Options {
  readonly inner: number;
  readonly outer: number;
  readonly width: number;
  readonly kind: RingWanted['kind'];
  readonly slit: number;
  readonly clearance: number;
  readonly out: string;
}

export function command(world: World): Command {
  return new Command('ring')
    .description(`${summary}. ${RING_CAUTION}`)
    .requiredOption('--inner <length>', 'outside of the barrel, as in 95mm or 3.74in', lengthMm)
    .requiredOption('--outer <length>', 'what the clamp or collar takes', lengthMm)
    .option('--width <length>', 'along the axis', lengthMm, 12)
    .addOption(new Option('--kind <kind>', 'a spacer inside another clamp, or a clamp with a screw of its own').choices(['spacer', 'clamp']).default('spacer'))
    .option('--slit <length>', 'slit, so that it closes', lengthMm, 2)
    .option('--clearance <length>', 'free on the diameter, inside and outside', lengthMm, 0.2)
    .requiredOption('--out <name>', 'name of the files, without an ending')
    .action((options: Options) => makeRing(world, options));
}

function lengthMm(text: string): number {
  const read = readLength(text);
  if (read.ok && Number.isFinite(read.value)) return read.value;
  throw new InvalidArgumentError(read.ok ? 'It must end somewhere.' : (read.faults[0]?.cure ?? 'Write it as in 95mm.'));
}

async function makeRing(world: World, { inner, outer, width, kind, slit, clearance, out }: Options): Promise<void> {
  const wanted: RingWanted = { kind, innerMm: inner, outerMm: outer, widthMm: width, slitMm: slit, clearanceMm: clearance };
  const fault = ringFault(wanted);
  if (fault !== undefined) throw new Refusal('', [{ path: '', message: fault }]);
  const { files, says } = ringFiles(await solidsMaker(), wanted, out, openFonts());
  for (const { path, bytes } of files) {
    try {
      makeFolders(dirname(path));
    } catch (thrown) {
      throw new Refusal(path, [systemFault(thrown)]);
    }
    writeWhole(path, bytes);
  }
  world.out(`${says}\n${RING_CAUTION}\nWritten: ${files.map(({ path }) => path).join(', ')}\n`);
}
