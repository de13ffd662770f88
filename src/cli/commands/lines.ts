import { Command } from 'commander';
import { PLUG_CAUTION } from '../../check/quantities/lineWords.ts';
import { RADIO_CAUTION } from '../../check/quantities/radios.ts';
import { glassesOf } from '../../check/subjects.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { chosen, chosenSetups } from '../chosen.ts';
import { loadShoot } from '../files.ts';
import { linesText } from '../linesText.ts';
import { paintFor } from '../paint.ts';
import { Refusal } from '../Refusal.ts';
import { wrap } from '../wrap.ts';
import type { World } from '../World.ts';

export const summary = 'Prints each picture path, control link and power tree of a setup';

interface Options {
  readonly setup?: string;
  readonly glass?: string;
}

export function command(world: World): Command {
  return new Command('lines')
    .description(`${summary}: stage, format and delay so far; outlet, cable, volts, amps, hours.`)
    .argument('<file>', 'a *.shoot.json file')
    .option('--setup <name>', 'only this setup')
    .option('--glass <name>', 'with this glass; the first of the setup where not stated')
    .action((file: string, options: Options) => lines(world, file, options));
}

function lines(world: World, file: string, { setup, glass }: Options): void {
  const shoot = loadShoot(world, file);
  const ledger = new Ledger(shoot);
  const setups = chosenSetups(shoot, setup, file);
  const wanted = glass === undefined ? undefined : chosen(shoot.glasses, glass, 'glass');
  const paint = paintFor(world);
  const columns = Math.max(60, Math.min(world.columns, 120));
  const texts = setups.flatMap((id) => {
    const glasses = glassesOf(ledger, id);
    const one = wanted ?? glasses[0] ?? '';
    return glasses.length === 0 || glasses.includes(one) ? linesText(ledger, { setup: id, glass: one }, { paint, columns }) : [];
  });
  if (texts.length === 0) throw new Refusal('--glass', [{ path: '', message: `${shoot.glasses[wanted ?? '']?.name ?? 'This glass'} is not used in ${setup === undefined ? 'any setup' : (shoot.setups[setups[0] ?? '']?.name ?? 'this setup')}.`, cure: 'Name one of its glasses.' }]);
  world.out(`${texts.join('\n')}\n${paint.dim(wrap(`${PLUG_CAUTION} Right voltage and polarity before the first plug. ${RADIO_CAUTION}`, columns))}\n`);
}
