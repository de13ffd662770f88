import { type ParseError, parseTree, printParseErrorCode, visit } from 'jsonc-parser';
import type { Fault, Outcome } from '../faults/Fault.ts';

/** Larger files are refused before they are parsed: a big shoot is well under a megabyte. */
export const MOST_CHARACTERS = 32 * 1024 * 1024;

const STRICT = { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false };

const SAID: Partial<Record<string, string>> = {
  CommaExpected: 'A comma is missing here.', CloseBraceExpected: 'A closing brace } is missing.', CloseBracketExpected: 'A closing bracket ] is missing.', ColonExpected: 'A colon is missing here.',
  PropertyNameExpected: 'A key in double quotes is expected here.', ValueExpected: 'A value is expected here.', EndOfFileExpected: 'There is more text after the end of the JSON.',
  InvalidCommentToken: 'Comments are not allowed in JSON.', UnexpectedEndOfString: 'A text is not closed with a double quote.', InvalidSymbol: 'This is not JSON.',
};

/** Parses JSON; says line and column of each fault, and refuses a key that stands twice in one object. */
export function readJson(text: string): Outcome<unknown> {
  if (text.length > MOST_CHARACTERS) {
    return refuse({ path: '', message: `The file has ${Math.round(text.length / 1e6)} million characters; at most 33 million are read.`, cure: 'Is it a shoot file?' });
  }
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.includes('\0') || /^(PK|%PDF|.PNG)/.test(clean)) return refuse({ path: '', message: 'This is not a text file.', cure: 'A shoot is JSON text, *.shoot.json.' });
  try {
    const value: unknown = JSON.parse(clean);
    const twice = duplicateKeys(clean);
    return twice.length > 0 ? { ok: false, faults: twice } : { ok: true, value, warnings: [] };
  } catch {
    return { ok: false, faults: syntaxFaults(clean) };
  }
}

const refuse = (fault: Fault): Outcome<never> => ({ ok: false, faults: [fault] });

function syntaxFaults(text: string): Fault[] {
  const errors: ParseError[] = [];
  if (text.trim() === '') return [{ path: '', message: 'The file is empty.' }];
  parseTree(text, errors, STRICT);
  const first = errors[0];
  if (first === undefined) return [{ path: '', message: 'This is not JSON.' }];
  return [{ path: '', ...placeOf(text, first.offset), message: SAID[printParseErrorCode(first.error)] ?? 'This is not JSON.' }];
}

function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - lineStart + 1 };
}

function duplicateKeys(text: string): Fault[] {
  const faults: Fault[] = [];
  const open: Set<string>[] = [];
  visit(text, {
    onObjectBegin: () => void open.push(new Set()),
    onObjectEnd: () => void open.pop(),
    onObjectProperty: (key, _offset, _length, line, column, pathSupplier) => {
      if (open.at(-1)?.has(key) === true) {
        const path = [...pathSupplier().slice(0, -1), key].join('/');
        faults.push({ path, line: line + 1, column: column + 1, message: `The key "${key}" stands twice in one object (${path}).`, cure: 'Give one of them another name.' });
      }
      open.at(-1)?.add(key);
    },
  });
  return faults;
}
