/** A key that is not taken: the one wished for, else with the first number behind it that is free, from 2. */
export function freeKey(wished: string, taken: Iterable<string>): string {
  const used = new Set(taken);
  let key = wished;
  for (let count = 2; used.has(key); count += 1) key = `${wished}-${count}`;
  return key;
}
