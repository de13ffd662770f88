import { Command, CommanderError } from 'commander';
import { nearestName } from '../faults/nearestName.ts';
import { commands } from './commands/index.generated.ts';
import { Refusal, Stopped } from './Refusal.ts';
import { version } from './version.generated.ts';
import { EXIT, type World } from './World.ts';

/** Runs one command line and returns the exit code. Only the named command is loaded. */
export async function run(argv: readonly string[], world: World): Promise<number> {
  const program = new Command('setworthy')
    .description('Checks a camera build before the day, question by question, and prints what the crew needs.')
    .version(version, '--version', 'which version this is')
    .exitOverride()
    .configureOutput({ writeOut: world.out, writeErr: world.err });
  try {
    const wanted = (argv[0] === 'help' ? argv[1] : argv[0]) ?? '';
    for (const [name, { summary, load }] of Object.entries(commands)) {
      const loaded = name === wanted ? await afterZod(load) : undefined;
      program.addCommand(loaded === undefined ? new Command(name).description(summary) : inherit(loaded.command(world), program));
    }
    if (wanted !== '' && !wanted.startsWith('-') && !Object.hasOwn(commands, wanted)) return unknownCommand(wanted, world);
    await program.parseAsync([...argv], { from: 'user' });
    return world.exitCode;
  } catch (thrown) {
    return exitCodeOf(thrown, world);
  }
}

async function afterZod<T>(load: () => Promise<T>): Promise<T> {
  await import('./schemasWithoutEval.ts');
  return load();
}

function inherit(command: Command, program: Command): Command {
  return command.copyInheritedSettings(program);
}

function unknownCommand(wanted: string, world: World): number {
  const near = nearestName(wanted, Object.keys(commands));
  world.err(`There is no command "${wanted}".${near === undefined ? '' : ` Did you mean "${near}"?`} setworthy --help lists them.\n`);
  return EXIT.badInput;
}

function exitCodeOf(thrown: unknown, world: World): number {
  if (thrown instanceof CommanderError) return thrown.exitCode === 0 || thrown.code === 'commander.help' ? EXIT.fine : EXIT.badInput;
  if (thrown instanceof Stopped) {
    world.err('\nStopped. Nothing was written.\n');
    return EXIT.stopped;
  }
  if (thrown instanceof Refusal) {
    world.err(`${thrown.message}\n`);
    return EXIT.badInput;
  }
  if ((thrown as NodeJS.ErrnoException).code === 'EPIPE') return world.exitCode;
  world.err(`Setworthy itself went wrong here: ${thrown instanceof Error ? thrown.message : String(thrown)}\nNothing you did should lead to this. Please report it, with the command and the file.\n`);
  if (world.traces) world.err(`${thrown instanceof Error ? (thrown.stack ?? '') : ''}\n`);
  return EXIT.ourFault;
}
