/** Between a number and its unit, and between thousands. */
export const THIN_SPACE = '\u2009';
