import { distance } from 'fastest-levenshtein';

const MOST_EDITS = 3;

/**
 * The known name that a misspelt one most likely means, or `undefined` where none is near: at most a third of the longer
 * word, and never more than three letters, may differ.
 */
export function nearestName(misspelt: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestDistance = Infinity;
  for (const name of known) {
    // Names whose lengths differ by more cannot be near: in a large kit this spares most of the work.
    if (Math.abs(name.length - misspelt.length) > MOST_EDITS) continue;
    const edits = distance(misspelt.toLowerCase(), name.toLowerCase());
    if (edits < bestDistance) [best, bestDistance] = [name, edits];
  }
  const longest = Math.max(misspelt.length, best?.length ?? 0);
  return bestDistance <= Math.min(MOST_EDITS, Math.ceil(longest / 3)) ? best : undefined;
}
