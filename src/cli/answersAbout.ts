import type { Answer } from '../check/answer.ts';
import { DISCIPLINES } from '../check/answer.ts';
import { concernsSetup, glassOf } from '../check/concerns.ts';
import { questions } from '../check/questions/index.generated.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { chosen } from './chosen.ts';

/** What a command was asked to look at only. Names or ids. */
export interface Narrowing {
  readonly build?: string;
  readonly setup?: string;
  readonly glass?: string;
  readonly lens?: string;
  readonly shot?: string;
  readonly question?: string;
}

/** The answers that concern what was asked for; what does not exist is refused with the nearest name. */
export function answersAbout(shoot: Shoot, answers: readonly Answer[], narrowing: Narrowing): Answer[] {
  const wanted = narrowedTo(shoot, narrowing);
  return answers.filter((answer) => wanted.every(({ concerns }) => concerns(answer)));
}

/** Why no answer is left: the filter without which there are some, or what the question does not arise for. */
export function whyNone(shoot: Shoot, answers: readonly Answer[], narrowing: Narrowing): string {
  const wanted = narrowedTo(shoot, narrowing);
  if (answers.length === 0 || wanted.length === 0) return 'Nothing was asked: questions follow from a camera build, a glass and a setup. Enter them in the file.';
  const lonely = wanted.find(({ concerns }) => !answers.some(concerns));
  if (lonely !== undefined) return `Nothing was asked: no answer is about ${lonely.option} ${lonely.value}.${lonely.option === '--question' ? ' setworthy explain tells what a question arises for.' : ''}`;
  const spared = wanted.filter((one) => answers.some((answer) => wanted.every((other) => other === one || other.concerns(answer))));
  const ways = (spared.length === 0 ? wanted : spared).map(({ option }) => option);
  return `Nothing was asked: no answer is about ${wanted.map(({ option, value }) => `${option} ${value}`).join(' and ')} together. Leave out ${ways.join(' or ')}${spared.length === 0 ? ' and others' : ''}.`;
}

interface Wanted {
  readonly option: string;
  readonly value: string;
  readonly concerns: (answer: Answer) => boolean;
}

function narrowedTo(shoot: Shoot, { build, setup, glass, lens, shot, question }: Narrowing): Wanted[] {
  const wanted: Wanted[] = [];
  if (build !== undefined) {
    const id = chosen(shoot.builds, build, 'build');
    const setups = setupsWith(shoot, id);
    wanted.push({ option: '--build', value: build, concerns: ({ subject }) => subject.build === id || (subject.build === undefined && setups.includes(subject.setup ?? '')) });
  }
  if (setup !== undefined) {
    const id = chosen(shoot.setups, setup, 'setup');
    wanted.push({ option: '--setup', value: setup, concerns: ({ subject }) => concernsSetup(shoot, subject, id) });
  }
  if (glass !== undefined) {
    const id = chosen(shoot.glasses, glass, 'glass');
    wanted.push({ option: '--glass', value: glass, concerns: ({ subject }) => glassOf(subject) === id });
  }
  if (lens !== undefined) {
    const glasses = glassesWith(shoot, chosen(inGlasses(shoot), lens, 'lens, block or focuser in a glass'));
    wanted.push({ option: '--lens', value: lens, concerns: ({ subject }) => glasses.includes(glassOf(subject) ?? '') });
  }
  if (shot !== undefined) {
    const id = chosen(shoot.shots ?? {}, shot, 'shot');
    wanted.push({ option: '--shot', value: shot, concerns: ({ subject }) => subject.shot === id });
  }
  if (question !== undefined) {
    const id = chosenQuestion(question);
    wanted.push({ option: '--question', value: question, concerns: (answer) => answer.question === id || answer.question.startsWith(`${id}.`) });
  }
  return wanted;
}

const setupsWith = (shoot: Shoot, build: string): string[] =>
  Object.entries(shoot.setups).filter(([, setup]) => setup.camera === build || setup.stations?.includes(build) === true).map(([id]) => id);

const glassesWith = (shoot: Shoot, lens: string): string[] =>
  Object.entries(shoot.glasses).filter(([, glass]) => Object.values(glass.pieces).some(({ of }) => of === lens || shoot.kit.copies?.[of]?.of === lens)).map(([id]) => id);

/** Parts and copies that stand in some glass: what `--lens` may name. */
function inGlasses(shoot: Shoot): Record<string, { readonly name?: string | undefined }> {
  const { parts, copies = {} } = shoot.kit;
  const used = Object.values(shoot.glasses).flatMap(({ pieces }) => Object.values(pieces).map(({ of }) => of));
  const ids = new Set(used.flatMap((of) => (copies[of] === undefined ? [of] : [of, copies[of].of])));
  return Object.fromEntries([...ids].map((id) => [id, { name: copies[id]?.name ?? parts[id]?.name ?? parts[copies[id]?.of ?? '']?.name }]));
}

function chosenQuestion(wanted: string): string {
  const known = Object.fromEntries([...questions.map(({ id }) => id), ...DISCIPLINES].map((id) => [id, {}]));
  return chosen(known, wanted, 'question or discipline');
}
