const RIGHT_TO_LEFT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/;
const STRETCH = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC][\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\s\p{P}\p{M}]*[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\p{M}]|[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/gu;

/**
 * The letters of a line from left to right as they stand on paper. Stretches of Hebrew and Arabic run the other way; Arabic
 * letters take the shape their neighbours ask for. Enough for names inside a line; a whole bidirectional page is not attempted.
 */
export function inReadingOrder(text: string): string[] {
  if (!RIGHT_TO_LEFT.test(text)) return [...text];
  return [...text.replace(STRETCH, (stretch) => [...joinedLetters(stretch)].toReversed().join(''))];
}

/** Arabic letters from U+0621 on: the first of their shapes among the presentation forms, and whether they join to the next. */
const SHAPES: Readonly<Record<string, readonly [isolated: number, forms: 2 | 4]>> = Object.fromEntries(
  ([
    [0x0621, 0xFE80, 1], [0x0622, 0xFE81, 2], [0x0623, 0xFE83, 2], [0x0624, 0xFE85, 2], [0x0625, 0xFE87, 2], [0x0626, 0xFE89, 4], [0x0627, 0xFE8D, 2], [0x0628, 0xFE8F, 4],
    [0x0629, 0xFE93, 2], [0x062A, 0xFE95, 4], [0x062B, 0xFE99, 4], [0x062C, 0xFE9D, 4], [0x062D, 0xFEA1, 4], [0x062E, 0xFEA5, 4], [0x062F, 0xFEA9, 2], [0x0630, 0xFEAB, 2],
    [0x0631, 0xFEAD, 2], [0x0632, 0xFEAF, 2], [0x0633, 0xFEB1, 4], [0x0634, 0xFEB5, 4], [0x0635, 0xFEB9, 4], [0x0636, 0xFEBD, 4], [0x0637, 0xFEC1, 4], [0x0638, 0xFEC5, 4],
    [0x0639, 0xFEC9, 4], [0x063A, 0xFECD, 4], [0x0641, 0xFED1, 4], [0x0642, 0xFED5, 4], [0x0643, 0xFED9, 4], [0x0644, 0xFEDD, 4], [0x0645, 0xFEE1, 4], [0x0646, 0xFEE5, 4],
    [0x0647, 0xFEE9, 4], [0x0648, 0xFEED, 2], [0x0649, 0xFEEF, 2], [0x064A, 0xFEF1, 4],
  ] as const).map(([letter, isolated, forms]) => [String.fromCodePoint(letter), [isolated, forms === 1 ? 2 : forms] as const]),
);
const HAMZA = '\u0621'; // joins to neither side

/** Shapes in the order isolated, final, initial, middle (the Unicode chart "Arabic Presentation Forms-B"). */
function joinedLetters(stretch: string): string {
  const letters = [...stretch];
  const joinsOn = (letter: string | undefined): boolean => letter !== undefined && SHAPES[letter]?.[1] === 4;
  const joinsBack = (letter: string | undefined): boolean => letter !== undefined && letter !== HAMZA && SHAPES[letter] !== undefined;
  return letters
    .map((letter, at) => {
      const shape = SHAPES[letter];
      if (shape === undefined || letter === HAMZA) return letter;
      const back = joinsOn(letters[at - 1]);
      const on = shape[1] === 4 && joinsBack(letters[at + 1]);
      return String.fromCodePoint(shape[0] + (back ? (on ? 3 : 1) : on ? 2 : 0));
    })
    .join('');
}
