/** Names in a row for a sentence; of many, the first few. */
export function listed(names: readonly string[], most = 5): string {
  if (names.length <= most) return names.join(', ');
  return `${names.slice(0, most - 1).join(', ')} and ${names.length - most + 1} more`;
}
