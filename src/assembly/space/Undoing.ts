import { smallerParts } from './smallerParts.ts';

/** Two pieces, by number, that a screw joins, and the pieces that stand where its key has to go. */
export interface Link {
  readonly a: number;
  readonly b: number;
  readonly inWay: readonly number[];
}

/**
 * Pieces that come apart lump by lump, as links that nothing in their lump covers any more are undone. Each piece is looked at again only when it
 * is in the smaller part of what parts, so that a chain of hundreds costs little more than a look at each.
 */
export class Undoing<Joint extends Link> {
  /** The links at each piece. */
  readonly around: readonly (readonly Joint[])[];
  readonly #covers: readonly (readonly Joint[])[];
  /** The lump that each piece is in at present. */
  readonly #lump: Int32Array;
  readonly #undone = new Set<Joint>();
  #next = 1;

  constructor(count: number, links: readonly Joint[]) {
    const [around, covers] = [lists<Joint>(count), lists<Joint>(count)];
    for (const link of links) {
      around[link.a]?.push(link);
      around[link.b]?.push(link);
      for (const piece of link.inWay) covers[piece]?.push(link);
    }
    [this.around, this.#covers, this.#lump] = [around, covers, new Int32Array(count)];
  }

  /** What hangs together at all, each lump in order. */
  whole(): number[][] {
    return [...this.#lump.keys()].flatMap((first) => {
      if (this.#lump[first] !== 0) return [];
      const own = [first];
      const mark = this.#mark(own);
      for (const piece of own) {
        for (const link of this.around[piece] ?? []) {
          const other = otherEnd(link, piece);
          if (this.#lump[other] !== 0) continue;
          this.#lump[other] = mark;
          own.push(other);
        }
      }
      return [own.toSorted((a, b) => a - b)];
    });
  }

  /** Takes a lump apart as far as it goes: what comes off together, round by round, and what is left. */
  apart(pieces: readonly number[]): { readonly rounds: readonly (readonly (readonly number[])[])[]; readonly left: readonly number[] } {
    const mark = this.#lump[pieces[0] as number] as number;
    const rounds: number[][][] = [];
    let open = pieces.flatMap((piece) => this.#linksIn(piece, mark).filter((link) => link.a === piece && !this.#isCovered(link)));
    for (;;) {
      for (const link of open) this.#undone.add(link);
      const off = smallerParts(open.flatMap(({ a, b }) => [a, b]), (piece) => this.#linksIn(piece, mark).flatMap((link) => (this.#undone.has(link) ? [] : otherEnd(link, piece))));
      if (off.length === 0) break;
      for (const lump of off) this.#mark(lump);
      rounds.push(off);
      open = [...new Set(off.flat().flatMap((piece) => this.#covers[piece] ?? []))].filter((link) => this.#isIn(link, mark) && !this.#undone.has(link) && !this.#isCovered(link));
    }
    return { rounds, left: pieces.filter((piece) => this.#lump[piece] === mark) };
  }

  /** What of the same lump stands where a link's key has to go. */
  coveredBy(link: Joint): number | undefined {
    return link.inWay.find((piece) => this.#lump[piece] === this.#lump[link.a]);
  }

  #isCovered = (link: Joint): boolean => this.coveredBy(link) !== undefined;
  #isIn = ({ a, b }: Joint, mark: number): boolean => this.#lump[a] === mark && this.#lump[b] === mark;
  #linksIn = (piece: number, mark: number): Joint[] => (this.around[piece] ?? []).filter((link) => this.#isIn(link, mark));

  #mark(pieces: readonly number[]): number {
    const mark = this.#next;
    this.#next += 1;
    for (const piece of pieces) this.#lump[piece] = mark;
    return mark;
  }
}

const lists = <T>(count: number): T[][] => Array.from({ length: count }, () => []);
const otherEnd = ({ a, b }: Link, piece: number): number => (a === piece ? b : a);
