/**
 * A circle in a graph of names, as a list that ends where it starts, or `undefined`. Walks with a trail of its own: a chain of
 * names may be longer than the call stack is deep.
 */
export function circleIn(next: Readonly<Record<string, readonly string[]>>): string[] | undefined {
  const graph = new Map(Object.entries(next));
  const done = new Set<string>();
  for (const start of graph.keys()) {
    const trail = [{ name: start, tried: 0 }];
    const onTrail = new Set([start]);
    for (let last = trail.at(-1); last !== undefined && !done.has(start); last = trail.at(-1)) {
      const other = graph.get(last.name)?.[last.tried++];
      if (other === undefined) {
        done.add(last.name);
        onTrail.delete(last.name);
        trail.pop();
      } else if (onTrail.has(other)) {
        const names = trail.map(({ name }) => name);
        return [...names.slice(names.indexOf(other)), other];
      } else if (!done.has(other)) {
        trail.push({ name: other, tried: 0 });
        onTrail.add(other);
      }
    }
  }
  return undefined;
}
