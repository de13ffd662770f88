/** One full swing on the screen, whatever it takes on the rig. */
export const PERIOD_MS = 1600;
