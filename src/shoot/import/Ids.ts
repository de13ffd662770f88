/** Keys that are taken, and new ones made of names. */
export class Ids {
  readonly #taken: Set<string>;
  /** How often a key was made already, so that the thousandth of one name is found as quickly as the first. */
  readonly #made = new Map<string, number>();

  constructor(taken: Iterable<string>) {
    this.#taken = new Set(taken);
  }

  has(id: string): boolean {
    return this.#taken.has(id);
  }

  add(id: string): void {
    this.#taken.add(id);
  }

  /** A free key of letters, digits and hyphens; accents are left out, letters of other scripts stay. */
  madeOf(name: string): string {
    const plain = name.normalize('NFKD').replaceAll(/[\u0300-\u036F]/g, '').normalize('NFC');
    const stem = [...plain.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-+|-+$/g, '')].slice(0, 56).join('').replace(/-+$/, '');
    const base = stem === '' ? 'part' : stem;
    for (let count = this.#made.get(base) ?? 1; ; count += 1) {
      const id = count === 1 ? base : `${base}-${count}`;
      if (this.#taken.has(id)) continue;
      this.#made.set(base, count);
      return id;
    }
  }
}
