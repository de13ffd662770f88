import type { Basis, StatedFigure } from '../schema/basics.ts';
import type { FacetName, Part } from '../schema/part.ts';
import { type Figure, figureOf } from './figures.ts';
import type { Ledger } from './Ledger.ts';

/**
 * One part or copy as questions read it: every look is noted in the ledger, a copy's own figures come first. A view holds no
 * values, only where to look, so that it may be kept and shared.
 */
export class PartView {
  readonly ledger: Ledger;
  readonly id: string;
  readonly #asCopy: string;
  readonly #copyOf: string;
  readonly #asPart: string;
  /** Paths below the part that were asked for: a look is quicker under a name that is made once. */
  readonly #below = new Map<string, string>();

  /** `id` names a part or a copy. */
  constructor(ledger: Ledger, id: string) {
    this.ledger = ledger;
    this.id = id;
    this.#asCopy = `kit/copies/${id}`;
    this.#copyOf = `${this.#asCopy}/of`;
    this.#asPart = `kit/parts/${id}`;
  }

  /** Path of the part in the file. */
  get path(): string {
    const of = this.ledger.at(this.#copyOf) as string | undefined;
    return of === undefined ? this.#asPart : `kit/parts/${of}`;
  }

  /** Path of the copy, where it is one. */
  get copyPath(): string | undefined {
    return this.ledger.at(this.#copyOf) === undefined ? undefined : this.#asCopy;
  }

  get name(): string {
    const own = this.copyPath === undefined ? undefined : this.ledger.at(`${this.copyPath}/name`);
    return (own ?? this.ledger.at(this.#pathBelow('name')) ?? this.id) as string;
  }

  get kind(): Part['kind'] {
    return this.read('kind') as Part['kind'];
  }

  /** Whether it has a facet at all; the figures in it do not count as read. */
  has(facet: FacetName): boolean {
    return this.ledger.has(this.#pathBelow(facet));
  }

  /** A whole facet: everything in it counts as read. For its figures use `figure`. */
  facet<Name extends FacetName>(facet: Name): Part[Name] {
    return this.read(facet) as Part[Name];
  }

  /** Whatever stands at a path in the part: a word, a list, a count. */
  read(path: string): unknown {
    return this.#override(path) ?? this.ledger.at(this.#pathBelow(path));
  }

  /** A figure of the part, or `undefined` where it is not entered. */
  figure(path: string): Figure | undefined {
    const own = this.#override(path) as StatedFigure | undefined;
    if (own !== undefined) return figureOf(own, `${this.copyPath}/figures/${path}`, 'measured');
    const whole = this.#pathBelow(path);
    const stated = this.ledger.at(whole) as StatedFigure | undefined;
    return stated === undefined ? undefined : figureOf(stated, whole, this.basis);
  }

  /** Where the part's bare figures come from. */
  get basis(): Basis {
    return (this.ledger.at(this.#pathBelow('basis')) as Basis | undefined) ?? 'sheet';
  }

  #pathBelow(path: string): string {
    const of = this.ledger.at(this.#copyOf) as string | undefined;
    if (of !== undefined) return `kit/parts/${of}/${path}`;
    const known = this.#below.get(path);
    if (known !== undefined) return known;
    const whole = `${this.#asPart}/${path}`;
    this.#below.set(path, whole);
    return whole;
  }

  #override(path: string): unknown {
    if (this.copyPath === undefined) return undefined;
    const figures = this.ledger.at(`${this.copyPath}/figures`) as Record<string, unknown> | undefined;
    return figures?.[path];
  }
}
