import { existsSync, mkdtempSync, renameSync, rmSync, rmdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Command, Option } from 'commander';
import { bundle, Papers, paperKinds } from '../../papers/bundle.ts';
import { PAPERS, type PaperSize } from '../../papers/sheet/look.ts';
import type { PaperFile } from '../../papers/paper.ts';
import { textFile } from '../../papers/paper.ts';
import { writeShoot } from '../../shoot/write.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { chosen } from '../chosen.ts';
import { loadShoot, makeFolders, mustBeNamed, systemFault, writeWhole } from '../files.ts';
import { pressFor } from '../press.ts';
import { Refusal } from '../Refusal.ts';
import { EXIT, type World } from '../World.ts';

export const summary = 'Prints what a set needs on paper, as PDF, CSV and pictures, and all of it as one zip';

interface Options {
  readonly out: string;
  readonly setup?: string;
  readonly only?: string;
  readonly paper: PaperSize;
  readonly imperial?: boolean;
  readonly quiet?: boolean;
}

export function command(world: World): Command {
  return new Command('papers')
    .description(`${summary}. Every setup where none is named. Kinds: ${paperKinds.map(({ id }) => id).join(', ')}.`)
    .argument('<file>', 'a *.shoot.json file')
    .requiredOption('--out <folder>', 'where to write; made where it is not there')
    .option('--setup <name>', 'only this setup')
    .option('--only <kind>', 'only this kind of paper')
    .addOption(new Option('--paper <size>', 'paper size').choices(Object.keys(PAPERS)).default('A4'))
    .option('--imperial', 'inches, feet and pounds')
    .option('--quiet', 'no progress on the error stream')
    .action((file: string, options: Options) => printPapers(world, file, options));
}

async function printPapers(world: World, file: string, options: Options): Promise<void> {
  const shoot = loadShoot(world, file);
  tryFolder(options.out);
  const press = await pressFor(world, { paper: options.paper, system: options.imperial === true ? 'imperial' : 'metric' });
  const papers = new Papers(shoot, press, {
    ...(options.setup === undefined ? {} : { setups: [chosen(shoot.setups, options.setup, 'setup')] }),
    ...(options.only === undefined ? {} : { kinds: [chosen(Object.fromEntries(paperKinds.map(({ id, says }) => [id, { name: says }])), options.only, 'kind of paper')] }),
  });
  const made = await makeAll(world, papers, options.quiet === true ? () => undefined : world.err);
  if (made === undefined) return;
  if (made.length === 0) throw new Refusal(file, [{ path: '', message: 'Nothing of this kind arises here; nothing was written.' }]);
  writeAll(options.out, options.only === undefined ? [...made, { path: bundleName(shoot), bytes: bundle([...made, textFile('shoot.shoot.json', writeShoot(shoot))]) }] : made);
  if (press.fonts.missing.size > 0) world.err(`The fonts have no letters for ${[...press.fonts.missing].slice(0, 20).join(' ')}: they are printed as boxes.\n`);
  world.out(`${made.length} ${made.length === 1 ? 'paper' : 'papers'} written to ${options.out}\n`);
}

/** Makes everything in memory first: what is stopped or goes wrong has written nothing. */
async function makeAll(world: World, papers: Papers, progress: World['err']): Promise<PaperFile[] | undefined> {
  const made: PaperFile[] = [];
  for (const [at, step] of papers.steps.entries()) {
    // Gives ctrl-C a chance to be heard.
    await new Promise((resume) => { setImmediate(resume); });
    if (world.stop.aborted) {
      world.err('Stopped. Nothing was written.\n');
      world.exitCode = EXIT.stopped;
      return undefined;
    }
    progress(`${String(at + 1).padStart(3)} of ${papers.steps.length}  ${step.says}\n`);
    made.push(...(await papers.make(step)));
  }
  return made;
}

const bundleName = ({ title }: Shoot): string => `${title.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '').slice(0, 60) || 'papers'}.zip`;

/** All of it beside where it goes first, then into place: a full disk leaves what was there as it was. */
function writeAll(out: string, files: readonly PaperFile[]): void {
  makeFolder(out);
  const beside = asUser(out, () => mkdtempSync(join(out, '.papers-')));
  try {
    files.forEach(({ bytes }, at) => writeWhole(join(beside, String(at)), bytes));
    for (const folder of new Set(files.map(({ path }) => dirname(join(out, path))))) makeFolder(folder);
    files.forEach(({ path }, at) => asUser(join(out, path), () => renameSync(join(beside, String(at)), join(out, path))));
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
}

function makeFolder(folder: string): void {
  refuseFile(folder);
  asUser(folder, () => makeFolders(folder));
}

/** Whether anything can be written there, before the work of a minute; nothing is left of the trial. */
function tryFolder(folder: string): void {
  mustBeNamed(folder);
  refuseFile(folder);
  asUser(folder, () => {
    const made = makeFolders(folder);
    try {
      rmdirSync(mkdtempSync(join(folder, '.papers-')));
    } finally {
      for (const one of made.toReversed()) rmdirSync(one);
    }
  });
}

function refuseFile(folder: string): void {
  if (asUser(folder, () => existsSync(folder) && !statSync(folder).isDirectory())) throw new Refusal(folder, [{ path: '', message: 'There is a file of this name; a folder is needed.' }]);
}

/** What the system refuses is told as the user's fault it is. */
function asUser<T>(place: string, work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    throw new Refusal(place, [systemFault(thrown)]);
  }
}
