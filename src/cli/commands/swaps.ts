import { Command } from 'commander';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { chosenSetups } from '../chosen.ts';
import { loadShoot } from '../files.ts';
import { paintFor } from '../paint.ts';
import { swapsText } from '../swapsText.ts';
import { wrap } from '../wrap.ts';
import type { World } from '../World.ts';

export const summary = 'Says for each lens change what moves, which joints open, the tool and the minutes';

interface Options {
  readonly setup?: string;
  readonly imperial?: boolean;
}

const MODEL = 'Minutes are a plain sum of so much for each joint, piece and clamp (assumptions “swap.…”): time a change of your own and state it. Fingers, hair and cables clear when the motor calibrates.';

export function command(world: World): Command {
  return new Command('swaps')
    .description(`${summary}; and the order of the day's shots with least work.`)
    .argument('<file>', 'a *.shoot.json file')
    .option('--setup <name>', 'only this setup')
    .option('--imperial', 'inches')
    .action((file: string, options: Options) => {
      const shoot = loadShoot(world, file);
      const [ledger, paint, columns] = [new Ledger(shoot), paintFor(world), Math.max(60, Math.min(world.columns, 110))];
      const texts = chosenSetups(shoot, options.setup, file).map((setup) => swapsText(ledger, setup, { paint, columns, system: options.imperial === true ? 'imperial' : 'metric' }));
      world.out(`${texts.join('\n')}\n${paint.dim(wrap(MODEL, columns))}\n`);
    });
}
