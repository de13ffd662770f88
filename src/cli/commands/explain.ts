import { Command } from 'commander';
import { questions } from '../../check/questions/index.generated.ts';
import { DISCIPLINES } from '../../check/answer.ts';
import { disciplineOf } from '../../check/question.ts';
import { type Topic, topics } from '../../check/topics.ts';
import { chosen } from '../chosen.ts';
import { wrap } from '../wrap.ts';
import type { World } from '../World.ts';

export const summary = 'Explains a question: why it is asked, how it is worked out, what it leaves out; and how pieces are placed';

export function command(world: World): Command {
  return new Command('explain')
    .description(summary)
    .argument('[question]', `for example picture.coverage; or one of ${DISCIPLINES.join(', ')}, whose questions are listed; or one of ${topics.map(({ id }) => id).join(', ')}, on placing a rig; without it, all are listed`)
    .action((wanted?: string) => world.out(wanted === undefined || isDiscipline(wanted) ? listText(wanted, world.columns) : explanation(wanted, Math.min(world.columns, 100))));
}

const isDiscipline = (wanted: string): boolean => (DISCIPLINES as readonly string[]).includes(wanted);

function listText(discipline: string | undefined, columns: number): string {
  const listed = questions.filter(({ id }) => discipline === undefined || disciplineOf(id) === discipline).map(({ id, asks, kind }) => [id, `${asks}${kind === 'studied' ? ' (studied)' : ''}`] as const);
  const named = discipline === undefined ? topics.map(({ id, says }) => [id, says] as const) : [];
  const widest = Math.max(...[...listed, ...named].map(([id]) => id.length));
  const row = ([id, says]: readonly [string, string]) => hanging(id, says, widest, columns);
  return `${listed.map(row).join('\n')}\n${named.length === 0 ? '' : `\nPlacing a rig:\n${named.map(row).join('\n')}\n`}`;
}

/** A word in a column of its own, and what is said of it beside it. */
function hanging(word: string, says: string, widest: number, columns: number): string {
  const indent = ' '.repeat(widest + 2);
  return `${word.padEnd(widest)}  ${wrap(says, columns, indent).slice(indent.length)}`;
}

function topicText({ says, paragraphs, keys }: Topic, columns: number): string {
  const widest = Math.max(...keys.map(({ key }) => key.length));
  return `${[says, ...paragraphs.map((one) => wrap(one, columns)), keys.map((one) => hanging(one.key, one.says, widest, columns)).join('\n')].join('\n\n')}\n`;
}

function explanation(wanted: string, columns: number): string {
  const known = [...questions.map((one) => [one.id, { name: one.asks }] as const), ...topics.map((one) => [one.id, { name: one.says }] as const)];
  const id = chosen(Object.fromEntries(known), wanted, 'question');
  const topic = topics.find((one) => one.id === id);
  if (topic !== undefined) return topicText(topic, columns);
  const question = questions.find((one) => one.id === id);
  if (question === undefined) return '';
  const kind = question.kind === 'immediate' ? 'answered with every check' : 'studied: run with check --studied';
  return `${question.asks}\n${question.id} · ${disciplineOf(question.id)} · ${kind}\n\n${wrap(question.explains, columns)}\n\nsource: ${question.sources.join('; ')}\n`;
}
