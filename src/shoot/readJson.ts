import { type ParseError, parseTree, printParseErrorCode, visit } from 'jsonc-parser';
import type { Fault, Outcome } from '../faults/Fault.ts';

/** Larger files are refused before they are parsed: a big shoot is well under a megabyte. */
export const MOST_CHARACTERS = 32 * 1024 * 1024;

/** Deeper nesting than any file of ours has: refused before the parsers, which call themselves at each level. */
const MOST_LEVELS = 200;

const STRICT = { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false };

const SAID: Partial<Record<string, string>> = {
  CommaExpected: 'A comma is missing here.', CloseBraceExpected: 'A closing brace } is missing.', CloseBracketExpected: 'A closing bracket ] is missing.', ColonExpected: 'A colon is missing here.',
  PropertyNameExpected: 'A key in double quotes is expected here.', ValueExpected: 'A value is expected here.', EndOfFileExpected: 'There is more text after the end of the JSON.',
  InvalidCommentToken: 'Comments are not allowed in JSON.', UnexpectedEndOfString: 'A text is not closed with a double quote.', InvalidSymbol: 'This is not JSON.',
};

/**
 * Parses JSON; says line and column of each fault, and refuses a key that stands twice in one object. `of` is what the text is:
 * a whole file, or one line of many.
 */
export function readJson(text: string, of: 'file' | 'line' = 'file'): Outcome<unknown> {
  if (text.length > MOST_CHARACTERS) {
    const cure = of === 'file' ? { cure: 'Is it a shoot file?' } : {};
    return refuse({ path: '', message: `The ${of} has ${Math.round(text.length / 1e6)} million characters; at most 33 million are read.`, ...cure });
  }
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.trim() === '') return refuse({ path: '', message: `The ${of} is empty.` });
  if (clean.includes('\0') || /^(PK|%PDF|.PNG)/.test(clean)) return refuse({ path: '', message: 'This is not a text file.', cure: 'A shoot is JSON text, *.shoot.json.' });
  const { deepAt, keys } = outline(clean);
  if (deepAt !== undefined) return refuse({ path: '', ...placeOf(clean, deepAt), message: `Objects and lists stand more than ${MOST_LEVELS} deep in each other here.`, cure: 'Is a bracket left open, again and again?' });
  try {
    const value: unknown = JSON.parse(clean);
    // Where every key of the text is in the value, none stands twice; the slower look is for saying where.
    const wrong = keys === keysIn(value) ? [] : wrongKeys(clean);
    return wrong.length > 0 ? { ok: false, faults: wrong } : { ok: true, value, warnings: [] };
  } catch {
    return { ok: false, faults: syntaxFaults(clean) };
  }
}

const refuse = (fault: Fault): Outcome<never> => ({ ok: false, faults: [fault] });

function syntaxFaults(text: string): Fault[] {
  const errors: ParseError[] = [];
  parseTree(text, errors, STRICT);
  const first = errors[0];
  if (first === undefined) return [{ path: '', message: 'This is not JSON.' }];
  const cure = CURES.find(([found]) => found.test(text.slice(first.offset, first.offset + 20)))?.[1];
  return [{ path: '', ...placeOf(text, first.offset), message: SAID[printParseErrorCode(first.error)] ?? 'This is not JSON.', ...(cure === undefined ? {} : { cure }) }];
}

/** What people write who know another notation, and what JSON wants in its place. */
const CURES: readonly (readonly [RegExp, string])[] = [
  [/^[-+]?(?:NaN|Infinity|None|undefined)\b/, 'Leave a figure out that is not known; a distance without end is "infinity".'], [/^(?:True|False)\b/, 'Write true or false.'],
  [/^['‘’“”`]/, 'Names and texts stand in straight double quotes.'], [/^(?:\/\/|\/\*|#)/, 'Put it under a key "note".'], [/^[+.]\d/, 'Write a digit first, as in 0.5.'], [/^\d+,\d/, 'Write a decimal point.'],
  [/^[}\]]/, 'Is there a comma before it that has nothing after it?'], [/^[A-Za-z_]\w*\s*:/, 'Keys stand in straight double quotes.'],
];

/** Where the text goes too deep, if it does, and how many keys it has; what stands inside texts does not count. */
function outline(text: string): { deepAt: number | undefined; keys: number } {
  let level = 0;
  let keys = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x22) quoted = !quoted;
    else if (quoted) at += code === 0x5c ? 1 : 0;
    else if (code === 0x3a) keys++;
    else if (code === 0x7b || code === 0x5b) level++;
    else if (code === 0x7d || code === 0x5d) level--;
    if (level > MOST_LEVELS) return { deepAt: at, keys };
  }
  return { deepAt: undefined, keys };
}

/** How many keys a value has, all the way down; no number where one of them is forbidden. */
function keysIn(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (Array.isArray(value)) return value.reduce<number>((sum, one) => sum + keysIn(one), 0);
  let keys = 0;
  for (const [key, one] of Object.entries(value)) keys += key === '__proto__' ? NaN : 1 + keysIn(one);
  return keys;
}

function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - lineStart + 1 };
}

/** Keys that stand twice in one object, and the one that reaches behind it. */
function wrongKeys(text: string): Fault[] {
  const faults: Fault[] = [];
  const open: Set<string>[] = [];
  visit(text, {
    onObjectBegin: () => void open.push(new Set()),
    onObjectEnd: () => void open.pop(),
    onObjectProperty: (key, _offset, _length, line, column, pathSupplier) => {
      if (open.at(-1)?.has(key) === true) {
        const path = [...pathSupplier().slice(0, -1), key].join('/');
        faults.push({ path, line: line + 1, column: column + 1, message: `The key "${key}" stands twice in one object (${path}).`, cure: 'Take one of them away, or rename it.' });
      }
      if (key === '__proto__') faults.push({ path: [...pathSupplier(), key].join('/'), line: line + 1, column: column + 1, message: 'The key "__proto__" cannot be used.', cure: 'Give it another name.' });
      open.at(-1)?.add(key);
    },
  });
  return faults;
}
