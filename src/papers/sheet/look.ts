/** The papers' look: black ink, hairlines, four sizes of type, a 4 px (1 mm) grid. */
export const SIZE = { title: 20, heading: 11, body: 9, small: 7.5 } as const;
/** Large letters for what nobody may overlook. */
export const ALARM = 28;
export const HAIRLINE = { widthMm: 0.15 } as const;
export const RULE = { widthMm: 0.35 } as const;
export const BOLD_RULE = { widthMm: 0.7 } as const;
export const QUIET = 0.35;
/** Space a hand drill or a clipboard needs at the edge, and what printers cannot reach. */
export const MARGIN = { left: 16, right: 12, top: 13, bottom: 14 } as const;
export const LEADING = 1.32;

export const PAPERS = { A4: { widthMm: 210, heightMm: 297 }, Letter: { widthMm: 215.9, heightMm: 279.4 } } as const;
export type PaperSize = keyof typeof PAPERS;
