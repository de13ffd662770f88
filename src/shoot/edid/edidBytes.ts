import type { Fault, Outcome } from '../../faults/Fault.ts';

const NOTHING: readonly number[] = [];
/** Far beyond what the 256 blocks an EDID can have take up; anything longer is something else. */
const LONGEST = 1_000_000;
/** Beyond so many faults of text, the rest are counted. */
const FAULTS_SHOWN = 10;

/** The bytes of an EDID given as such, or as hex text in any of the usual layouts: bare, spaced, `0x00, …`, or a dump with offsets. */
export function edidBytes(input: Uint8Array | string): Outcome<Uint8Array> {
  if (input.length > LONGEST) {
    const message = `Found ${input.length} ${typeof input === 'string' ? 'characters' : 'bytes'}; no EDID is so long.`;
    return { ok: false, faults: [{ path: '', message, cure: 'Give the EDID of one screen only.' }] };
  }
  if (typeof input === 'string') return bytesOfText(input);
  const looksLikeText = input.length > 0 && input.every((byte) => (byte >= 0x20 && byte < 0x7f) || byte === 9 || byte === 10 || byte === 13);
  return looksLikeText ? bytesOfText(Array.from(input, (byte) => String.fromCharCode(byte)).join('')) : { ok: true, value: input, warnings: [] };
}

function bytesOfText(text: string): Outcome<Uint8Array> {
  const faults: Fault[] = [];
  const bytes = text.replace(/^\uFEFF/, '').split(/\r?\n/).flatMap((line, i) => bytesOfLine(line, i + 1, faults));
  return faults.length > 0 ? { ok: false, faults: firstOf(faults) } : { ok: true, value: Uint8Array.from(bytes), warnings: [] };
}

function firstOf(faults: readonly Fault[]): readonly Fault[] {
  const more = faults.length - FAULTS_SHOWN;
  return more <= 0 ? faults : [...faults.slice(0, FAULTS_SHOWN), { path: '', message: `There are ${more} more such places.` }];
}

function bytesOfLine(line: string, lineNumber: number, faults: Fault[]): readonly number[] {
  if (/^\s*(#|\/\/|$)/.test(line)) return NOTHING;
  const { hex, column } = withoutMargins(line);
  const bytes: number[] = [];
  for (const { 0: token, index } of hex.matchAll(/[^\s,;]+/g)) {
    const digits = token.replace(/^0x/i, '');
    const whole = digits.length === 1 && token !== digits ? `0${digits}` : digits;
    if (!/^[0-9a-f]+$/i.test(whole)) faults.push(notHex(token, lineNumber, column + index));
    else if (whole.length % 2 === 1) faults.push(oddDigits(token, lineNumber, column + index));
    else bytes.push(...pairs(whole));
  }
  return bytes;
}

/** A dump carries offsets before the bytes, `0010:` or eight digits and two spaces, and characters behind them. */
function withoutMargins(line: string): { hex: string; column: number } {
  const offset = /^\s*(?:(?:0x)?[0-9a-f]{1,8}:\s*|[0-9a-f]{8} {2}(?=[0-9a-f]{2} ))/i.exec(line)?.[0] ?? '';
  const rest = line.slice(offset.length).split('|')[0] ?? '';
  const bytesOnly = offset === '' ? rest : rest.replace(/(?<=[0-9a-f]{2}) {2}(?![0-9a-f]{2}( |$)).*$/i, '');
  return { hex: bytesOnly, column: offset.length + 1 };
}

function pairs(digits: string): number[] {
  return Array.from({ length: digits.length / 2 }, (_, i) => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16));
}

function notHex(token: string, line: number, column: number): Fault {
  return { path: '', line, column, message: `Found "${short(token)}", which is not hexadecimal.`, cure: 'Give the bytes only, as 00 to FF.' };
}

function oddDigits(token: string, line: number, column: number): Fault {
  return { path: '', line, column, message: `Found "${short(token)}" with an odd number of digits; a byte has two.`, cure: 'Look for a digit that was lost or doubled.' };
}

function short(token: string): string {
  return token.length > 20 ? `${token.slice(0, 19)}…` : token;
}
