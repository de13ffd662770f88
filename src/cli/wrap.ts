/**
 * Breaks text into lines of at most `width` characters at spaces, each behind `indent`. A path that is longer than a line is broken behind a
 * slash; other longer words stand alone. What only colours takes no room; no line ends in spaces.
 */
export function wrap(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const { piece, gap } of piecesOf(text, width - indent.length)) {
    if (line !== '' && indent.length + shownLength(line) + gap.length + shownLength(piece) > width) {
      lines.push((indent + line).trimEnd());
      line = piece;
    } else {
      line = line === '' ? piece : `${line}${gap}${piece}`;
    }
  }
  return [...lines, (indent + line).trimEnd()].join('\n');
}

/** The same with the first line further left, behind what stands there already. */
export function hanging(first: string, text: string, width: number, indent: string): string {
  return `${first}${wrap(text, width, indent).slice(indent.length)}`;
}

/** How many characters of it are seen. */
export const shownLength = (text: string): number => text.split(ESCAPE).reduce((sum, part, at) => sum + (at === 0 ? part.length : part.length - (part.indexOf('m') + 1)), 0);
const ESCAPE = '\u001B[';

interface Piece {
  readonly piece: string;
  /** What stands before it on the same line. */
  readonly gap: string;
}

function piecesOf(text: string, room: number): Piece[] {
  return text.split(' ').flatMap((word) => {
    if (shownLength(word) <= room || !word.includes('/')) return [{ piece: word, gap: ' ' }];
    return word.split(/(?<=\/)/).map((piece, at) => ({ piece, gap: at === 0 ? ' ' : '' }));
  });
}
