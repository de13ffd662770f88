import type { Answer } from '../check/answer.ts';
import { DISCIPLINES } from '../check/answer.ts';
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
  const setups = narrowing.build === undefined ? undefined : setupsWith(shoot, chosen(shoot.builds, narrowing.build, 'build'));
  const build = narrowing.build === undefined ? undefined : chosen(shoot.builds, narrowing.build, 'build');
  const setup = narrowing.setup === undefined ? undefined : chosen(shoot.setups, narrowing.setup, 'setup');
  const glass = narrowing.glass === undefined ? undefined : chosen(shoot.glasses, narrowing.glass, 'glass');
  const glasses = narrowing.lens === undefined ? undefined : glassesWith(shoot, chosen({ ...shoot.kit.parts, ...shoot.kit.copies }, narrowing.lens, 'lens'));
  const shot = narrowing.shot === undefined ? undefined : chosen(shoot.shots ?? {}, narrowing.shot, 'shot');
  const question = narrowing.question === undefined ? undefined : chosenQuestion(narrowing.question);
  return answers.filter(
    ({ subject, question: id }) =>
      (build === undefined || subject.build === build || (subject.setup !== undefined && setups?.includes(subject.setup) === true)) &&
      (setup === undefined || subject.setup === setup) &&
      (glass === undefined || subject.glass === glass) &&
      (glasses === undefined || (subject.glass !== undefined && glasses.includes(subject.glass))) &&
      (shot === undefined || subject.shot === shot) &&
      (question === undefined || id === question || id.startsWith(`${question}.`)),
  );
}

const setupsWith = (shoot: Shoot, build: string): string[] =>
  Object.entries(shoot.setups).filter(([, setup]) => setup.camera === build || setup.stations?.includes(build) === true).map(([id]) => id);

const glassesWith = (shoot: Shoot, lens: string): string[] =>
  Object.entries(shoot.glasses).filter(([, glass]) => Object.values(glass.pieces).some(({ of }) => of === lens || shoot.kit.copies?.[of]?.of === lens)).map(([id]) => id);

function chosenQuestion(wanted: string): string {
  const known = Object.fromEntries([...questions.map(({ id }) => id), ...DISCIPLINES].map((id) => [id, {}]));
  return chosen(known, wanted, 'question or discipline');
}
