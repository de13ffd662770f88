import type { Basis, StatedFigure } from '../schema/basics.ts';
import type { FacetName, Part } from '../schema/part.ts';
import { type Figure, figureOf } from './figures.ts';
import type { Ledger, Place } from './Ledger.ts';

/**
 * One part or copy as questions read it: every look is noted in the ledger, a copy's own figures come first. A view holds no
 * values, only where to look, so that it may be kept and shared.
 */
export class PartView {
  readonly ledger: Ledger;
  readonly id: string;
  /** Where it stands if it is a part; and whether it is a copy. */
  readonly #own: PartPlaces;
  /** The part when last looked at: a copy may become one of another part. */
  #part: PartPlaces;

  /** `id` names a part or a copy. */
  constructor(ledger: Ledger, id: string) {
    this.ledger = ledger;
    this.id = id;
    this.#own = placesOf(ledger, id);
    this.#part = this.#own;
  }

  /** Path of the part in the file. */
  get path(): string {
    return this.#partOf(this.#seeOf()).path;
  }

  /** Path of the copy, where it is one. */
  get copyPath(): string | undefined {
    return this.#seeOf() === undefined ? undefined : this.#own.asCopy;
  }

  get name(): string {
    const of = this.#seeOf();
    const own = of === undefined ? undefined : this.ledger.at(`${this.#own.asCopy}/name`);
    return (own ?? this.ledger.see(this.#partOf(of).below('name')) ?? this.id) as string;
  }

  get kind(): Part['kind'] {
    return this.read('kind') as Part['kind'];
  }

  /** Whether it has a facet at all; the figures in it do not count as read. */
  has(facet: FacetName): boolean {
    return this.ledger.see(this.#partOf(this.#seeOf()).presence(facet)) as boolean;
  }

  /** A whole facet: everything in it counts as read. For its figures use `figure`. */
  facet<Name extends FacetName>(facet: Name): Part[Name] {
    return this.read(facet) as Part[Name];
  }

  /** Whatever stands at a path in the part: a word, a list, a count. */
  read(path: string): unknown {
    const of = this.#seeOf();
    return this.#override(of, path) ?? this.ledger.see(this.#partOf(of).below(path));
  }

  /** A figure of the part, or `undefined` where it is not entered. */
  figure(path: string): Figure | undefined {
    const of = this.#seeOf();
    const own = this.#override(of, path) as StatedFigure | undefined;
    if (own !== undefined) return figureOf(own, `${this.#own.asCopy}/figures/${path}`, 'measured');
    const place = this.#partOf(of).below(path);
    const stated = this.ledger.see(place) as StatedFigure | undefined;
    return stated === undefined ? undefined : figureOf(stated, place.path, this.basis);
  }

  /** Where the part's bare figures come from. */
  get basis(): Basis {
    return (this.ledger.see(this.#partOf(this.#seeOf()).below('basis')) as Basis | undefined) ?? 'sheet';
  }

  /** The part it is a copy of, noted as read. */
  #seeOf(): string | undefined {
    return this.ledger.see(this.#own.copyOf) as string | undefined;
  }

  #partOf(of: string | undefined): PartPlaces {
    const id = of ?? this.id;
    if (this.#part.id !== id) this.#part = placesOf(this.ledger, id);
    return this.#part;
  }

  #override(of: string | undefined, path: string): unknown {
    if (of === undefined) return undefined;
    return (this.ledger.at(`${this.#own.asCopy}/figures`) as Record<string, unknown> | undefined)?.[path];
  }
}

/** All views of a part look in the same places. */
const PLACES = new WeakMap<Ledger, Map<string, PartPlaces>>();

function placesOf(ledger: Ledger, id: string): PartPlaces {
  let ofLedger = PLACES.get(ledger);
  if (ofLedger === undefined) PLACES.set(ledger, (ofLedger = new Map()));
  const known = ofLedger.get(id);
  if (known !== undefined) return known;
  const places = new PartPlaces(ledger, id);
  ofLedger.set(id, places);
  return places;
}

/** Places in a part that were looked at. */
class PartPlaces {
  readonly #ledger: Ledger;
  readonly id: string;
  readonly path: string;
  /** Where it stands if it is a copy, and what that is a copy of. */
  readonly asCopy: string;
  readonly copyOf: Place;
  readonly #own: Place;
  readonly #below = new Map<string, Place>();
  readonly #presence = new Map<FacetName, Place>();

  constructor(ledger: Ledger, id: string) {
    this.#ledger = ledger;
    this.id = id;
    this.path = `kit/parts/${id}`;
    this.asCopy = `kit/copies/${id}`;
    this.copyOf = ledger.place(`${this.asCopy}/of`);
    this.#own = ledger.place(this.path);
  }

  below(path: string): Place {
    return this.#below.get(path) ?? this.#kept(this.#below, path, namesOf(path));
  }

  presence(facet: FacetName): Place {
    return this.#presence.get(facet) ?? this.#kept(this.#presence, facet, [facet, '?']);
  }

  #kept<Key extends string>(places: Map<Key, Place>, key: Key, names: readonly string[]): Place {
    const place = this.#ledger.placeBelow(this.#own, names);
    places.set(key, place);
    return place;
  }
}

/** Paths within a part by their names: the same few are asked of every part. */
const NAMES = new Map<string, readonly string[]>();

function namesOf(path: string): readonly string[] {
  const known = NAMES.get(path);
  if (known !== undefined) return known;
  const names = path.split('/');
  NAMES.set(path, names);
  return names;
}
