import { Argument, Command } from 'commander';
import { jsonSchemaOf } from '../../shoot/jsonSchema.ts';
import type { World } from '../World.ts';

export const summary = 'Prints the JSON Schema of a shoot or kit file';

export function command(world: World): Command {
  return new Command('schema')
    .description(`${summary} (draft 2020-12), for editors and other programs.`)
    .addArgument(new Argument('[format]', 'which file').choices(['shoot', 'kit']).default('shoot'))
    .action((format: 'shoot' | 'kit') => world.out(`${JSON.stringify(jsonSchemaOf(format), null, 1)}\n`));
}
