/** How many links lie between each piece and the nearest of those it starts from; what hangs on none of them is not in it. */
export function stepsFrom(starts: readonly string[], links: Iterable<readonly [string, string]>): ReadonlyMap<string, number> {
  const beside = new Map<string, string[]>();
  const link = (from: string, to: string): void => {
    const own = beside.get(from);
    if (own === undefined) beside.set(from, [to]);
    else own.push(to);
  };
  for (const [a, b] of links) {
    link(a, b);
    link(b, a);
  }
  const steps = new Map(starts.map((ref) => [ref, 0]));
  for (const [ref, step] of steps) for (const next of beside.get(ref) ?? []) if (!steps.has(next)) steps.set(next, step + 1);
  return steps;
}
