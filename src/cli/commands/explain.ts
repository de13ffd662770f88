import { Command } from 'commander';
import { questions } from '../../check/questions/index.generated.ts';
import { DISCIPLINES } from '../../check/answer.ts';
import { disciplineOf } from '../../check/question.ts';
import { chosen } from '../chosen.ts';
import { wrap } from '../wrap.ts';
import type { World } from '../World.ts';

export const summary = 'Explains a question: why it is asked, how it is worked out, what it leaves out';

export function command(world: World): Command {
  return new Command('explain')
    .description(summary)
    .argument('[question]', `for example picture.coverage; or one of ${DISCIPLINES.join(', ')}, whose questions are listed; without it, all are`)
    .action((wanted?: string) => world.out(wanted === undefined || isDiscipline(wanted) ? listText(wanted) : explanation(wanted, Math.min(world.columns, 100))));
}

const isDiscipline = (wanted: string): boolean => (DISCIPLINES as readonly string[]).includes(wanted);

function listText(discipline?: string): string {
  const listed = questions.filter(({ id }) => discipline === undefined || disciplineOf(id) === discipline);
  const widest = Math.max(...listed.map(({ id }) => id.length));
  return `${listed.map(({ id, asks, kind }) => `${id.padEnd(widest)}  ${asks}${kind === 'studied' ? ' (studied)' : ''}`).join('\n')}\n`;
}

function explanation(wanted: string, columns: number): string {
  const id = chosen(Object.fromEntries(questions.map((one) => [one.id, { name: one.asks }])), wanted, 'question');
  const question = questions.find((one) => one.id === id);
  if (question === undefined) return '';
  const kind = question.kind === 'immediate' ? 'answered with every check' : 'studied: run with check --studied';
  return `${question.asks}\n${question.id} · ${disciplineOf(question.id)} · ${kind}\n\n${wrap(question.explains, columns)}\n\nsource: ${question.sources.join('; ')}\n`;
}
