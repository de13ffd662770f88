import { typicalParts } from '../shoot/typical/typicalParts.ts';
import { chosen } from './chosen.ts';

/** The typical classes by kind, or those of one kind: what may stand under `typical`, and what `replace` takes. */
export function classesText(wanted?: string): string {
  const kinds = [...new Set(Object.values(typicalParts).map(({ kind }) => kind))];
  const shown = wanted === undefined ? kinds : [chosen(Object.fromEntries(kinds.map((kind) => [kind, {}])), wanted, 'kind of typical class')];
  const classes = Object.entries(typicalParts);
  const widest = Math.max(...classes.map(([id]) => id.length));
  const block = (kind: string) => [kind, ...classes.filter(([, part]) => part.kind === kind).map(([id, { name }]) => `  ${id.padEnd(widest)}  ${name}`)].join('\n');
  const hint = 'Their figures are estimates. Name one under "typical" of a table, add it on the page, or: setworthy replace day.shoot.json old-part class.';
  return `${shown.map(block).join('\n')}\n\n${hint}\n`;
}
