import { Command } from 'commander';
import type { AnyCalculator } from '../../calc/calculator.ts';
import { catalogue } from '../../calc/catalogue.generated.ts';
import type { Fault, Outcome } from '../../faults/Fault.ts';
import { nearestName } from '../../faults/nearestName.ts';
import { readJson } from '../../shoot/readJson.ts';
import { aboutCalculator } from '../aboutCalculator.ts';
import { Refusal } from '../Refusal.ts';
import { hanging } from '../wrap.ts';
import { EXIT, type World } from '../World.ts';

export const summary = 'Works out one formula: lists them, explains one, answers one case or a line for each line of input';

export function command(world: World): Command {
  return new Command('calc')
    .description(summary)
    .argument('[name]', 'the calculator, for example optics.depthOfField')
    .argument('[json]', 'its inputs as JSON; without them, one case a line is read from standard input')
    .option('--about', 'what it takes, what it gives, formula, source and an example')
    .action((name?: string, json?: string, options?: { about?: boolean }) => calc(world, name, json, options?.about ?? false));
}

async function calc(world: World, name: string | undefined, json: string | undefined, about: boolean): Promise<void> {
  if (name === undefined) return list(world);
  const load = Object.hasOwn(catalogue, name) ? catalogue[name] : undefined;
  if (load === undefined) {
    const near = nearestCalculator(name);
    throw new Refusal('', [{ path: '', message: `There is no calculator "${name}".`, cure: near === undefined ? 'setworthy calc lists them.' : `Did you mean "${near}"?` }]);
  }
  const calculator = await load();
  if (about) return world.out(aboutCalculator(calculator.contract, world.columns));
  if (json !== undefined) return answerLine(world, calculator, json);
  for await (const line of world.lines()) if (line.trim() !== '') answerLine(world, calculator, line);
}

/** By the whole name, or by its last part where the room was left out. */
function nearestCalculator(name: string): string | undefined {
  const names = Object.keys(catalogue);
  const last = (whole: string): string => whole.split('.').at(-1) ?? whole;
  const near = nearestName(last(name), names.map(last));
  return nearestName(name, names) ?? names.find((whole) => last(whole) === near);
}

async function list(world: World): Promise<void> {
  const names = Object.keys(catalogue);
  const widest = Math.max(...names.map((name) => name.length));
  for (const [name, load] of Object.entries(catalogue)) world.out(`${hanging(`${name.padEnd(widest)}  `, (await load()).contract.sentence, world.columns, ' '.repeat(widest + 2))}\n`);
}

/** One compact line of JSON for one case; a bad case gets its fault in place, and the others go on. */
function answerLine(world: World, calculator: AnyCalculator, line: string): void {
  const read = /^\s*\p{L}/u.test(line) ? notAnObject(calculator) : readJson(line, 'line');
  const outcome = read.ok ? calculator.answer(read.value) : read;
  if (outcome.ok) {
    world.out(`${JSON.stringify(outcome.value)}\n`);
    return;
  }
  world.exitCode = EXIT.badInput;
  world.out(`${JSON.stringify({ error: errorOf(outcome.faults) })}\n`);
}

const notAnObject = ({ contract }: AnyCalculator): Outcome<never> => ({
  ok: false, faults: [{ path: '', message: 'This is not JSON in braces.', cure: `As in setworthy calc ${contract.name} '${JSON.stringify(contract.examples[0]?.given ?? {})}'` }],
});

function errorOf(faults: readonly Fault[]): object {
  const [first, ...more] = faults.map(({ path, message, cure, column }) => ({
    path, message: [column === undefined ? '' : `Column ${column}:`, message, cure ?? ''].filter((part) => part !== '').join(' '),
  }));
  return more.length === 0 ? { ...first } : { ...first, more };
}
