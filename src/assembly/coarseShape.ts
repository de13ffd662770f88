import type { PartView } from '../shoot/ledger/PartView.ts';
import type { Place } from '../shoot/schema/basics.ts';
import type { Point, Solid } from '../shoot/schema/mechanics.ts';
import type { Part } from '../shoot/schema/part.ts';
import { typicalParts } from '../shoot/typical/typicalParts.ts';

/** The solids of a part, and whether they are a guess from its kind and figures because none are entered. */
export interface PartShape {
  readonly solids: readonly Solid[];
  readonly coarse: boolean;
}

/**
 * What a part looks like. A part of which nothing tells its size has no solids, nor has a barrel of which nobody entered the length, nor what is
 * hollow: a box of its outer size would swallow what it is there to hold.
 */
export function shapeOf(part: PartView): PartShape {
  return enteredShape(part) ?? (isHollow(part) ? { solids: [], coarse: true } : guessedShape(part));
}

/** The room a part takes up with all that is inside it: where its mass lies, not what stands in the way. */
export const bulkOf = (part: PartView): PartShape => enteredShape(part) ?? guessedShape(part);

function enteredShape(part: PartView): PartShape | undefined {
  const solids = part.read('solids') as readonly Solid[] | undefined;
  return solids === undefined || solids.length === 0 ? undefined : { solids, coarse: isOfItsClass(part, solids) };
}

/** The shape of a typical class is a guess as any other, until one's own is entered. */
function isOfItsClass(part: PartView, solids: readonly Solid[]): boolean {
  const typical = part.read('typical') as string | undefined;
  const own = typical === undefined || !Object.hasOwn(typicalParts, typical) ? undefined : typicalParts[typical]?.solids;
  return own !== undefined && (own === solids || inWords(own) === inWords(solids));
}

/** In whichever order a file writes it. */
const inWords = (solids: readonly Solid[]): string => JSON.stringify(solids.map((solid) => Object.entries(solid).filter(([, value]) => value !== undefined).toSorted(([a], [b]) => (a < b ? -1 : 1))));

function guessedShape(part: PartView): PartShape {
  const guess = FROM_FIGURES.map((make) => make(part)).find((solid) => solid !== undefined) ?? usualBox(part);
  return { solids: guess === undefined ? [] : [guess], coarse: true };
}

/** Kinds that go round other pieces: frames, rings, and the carriers made of bars. */
const HOLLOW: ReadonlySet<Part['kind']> = new Set(['cage', 'gimbal', 'collar']);
export const isHollow = (part: PartView): boolean => HOLLOW.has(part.kind) || ['gimbal', 'handles'].includes(part.read('carrier/kind') as string);

/** Width, height and length, mm, of what usually goes by a kind. Common practice. */
const USUAL: Partial<Record<Part['kind'], Place>> = {
  body: [120, 115, 120], 'hand unit': [80, 160, 60], motor: [42, 50, 70], 'follow focus': [110, 70, 40], controller: [60, 90, 25], finder: [60, 60, 140], transmitter: [80, 110, 30], receiver: [80, 110, 30],
  converter: [60, 25, 90], battery: [100, 130, 55], 'battery plate': [90, 130, 20], charger: [180, 90, 220], regulator: [40, 20, 60], splitter: [40, 20, 50], cage: [150, 130, 90], plate: [90, 30, 140],
  'rod clamp': [35, 40, 30], arm: [30, 180, 30], handle: [40, 45, 160], support: [80, 60, 20], collar: [110, 110, 25], head: [120, 150, 160], stand: [60, 1300, 60], legs: [140, 1000, 140],
  'shoulder pad': [140, 70, 140], 'matte box': [190, 130, 90], gimbal: [300, 400, 200], media: [60, 90, 10], sound: [80, 30, 120], monitor: [135, 90, 25],
};

const figureOf = (part: PartView, ...paths: readonly string[]): number | undefined => paths.map((path) => part.figure(path)?.value).find((value) => value !== undefined);

/** Barrel diameter of a lens where no front is entered. Common practice: primes for full frame. */
const USUAL_BARREL_MM = 80;

/** What the light passes: how long it is cannot be guessed from what it is, and all ahead of it stands by that. */
export const isBarrel = (part: PartView): boolean => (['lens', 'block', 'focuser', 'mountAdapter'] as const).some((facet) => part.has(facet));

const FROM_FIGURES: readonly ((part: PartView) => Solid | undefined)[] = [
  function barrel(part) {
    if (!isBarrel(part)) return undefined;
    const lengthMm = barrelLength(part);
    if (lengthMm === undefined) return undefined;
    const diameterMm = figureOf(part, 'front/diameterMm', 'focus/ringDiameterMm') ?? threadAround(part) ?? USUAL_BARREL_MM;
    return { shape: 'cylinder', along: 'z', diameterMm, lengthMm, atMm: [0, 0, lengthMm / 2] };
  },
  function body(part) {
    const flange = figureOf(part, 'body/sensorBehindFrontMm', 'body/flangeMm');
    const [width, height, depth] = USUAL.body as Place;
    return flange === undefined ? undefined : { shape: 'box', sizeMm: [width, height, depth], atMm: [0, 0, flange - depth / 2] };
  },
  function screen(part) {
    const diagonalMm = figureOf(part, 'screen/diagonalMm');
    const [widthPx, heightPx] = [part.read('screen/widthPx'), part.read('screen/heightPx')] as (number | undefined)[];
    if (diagonalMm === undefined || widthPx === undefined || heightPx === undefined) return undefined;
    const scale = diagonalMm / Math.hypot(widthPx, heightPx);
    return { shape: 'box', sizeMm: [widthPx * scale + 16, heightPx * scale + 16, 25], atMm: middle(part) };
  },
  function rod(part) {
    const [outer, length] = [figureOf(part, 'beam/outerMm'), figureOf(part, 'beam/lengthMm')];
    return outer === undefined || length === undefined ? undefined : { shape: 'cylinder', along: 'z', diameterMm: outer, lengthMm: length, atMm: [0, 0, length / 2] };
  },
  function disc(part) {
    const clear = figureOf(part, 'closeUp/clearMm', 'filter/diameterMm');
    return clear === undefined ? undefined : { shape: 'cylinder', along: 'z', diameterMm: clear + 8, lengthMm: 10, atMm: [0, 0, 5] };
  },
  function pane(part) {
    const [width, height] = [figureOf(part, 'filter/widthMm'), figureOf(part, 'filter/heightMm')];
    return width === undefined || height === undefined ? undefined : { shape: 'box', sizeMm: [width, height, 4] };
  },
];

function threadAround(part: PartView): number | undefined {
  const thread = figureOf(part, 'front/threadMm');
  return thread === undefined ? undefined : thread + 8;
}

/** A box of the usual size of its kind, else a cube of its weight in metal with air in it. */
function usualBox(part: PartView): Solid | undefined {
  if (isBarrel(part)) return undefined;
  const usual = USUAL[part.kind];
  // A box for filters stands ahead of the front it is on.
  if (usual !== undefined && part.kind === 'matte box') {
    const [x, y, z] = seatsOf(part).rear?.at ?? [0, 0, 0];
    return { shape: 'box', sizeMm: usual, atMm: [x, y, z + usual[2] / 2] };
  }
  if (usual !== undefined && STANDS.has(part.kind)) {
    const [x, y, z] = middle(part);
    return { shape: 'box', sizeMm: usual, atMm: [x, y - usual[1] / 2, z] };
  }
  if (usual !== undefined) return { shape: 'box', sizeMm: usual, atMm: middle(part) };
  const massG = figureOf(part, 'massG');
  if (massG === undefined || part.kind === 'cable') return undefined;
  const side = Math.cbrt(massG / CUBE_G_PER_MM3);
  return { shape: 'box', sizeMm: [side, side, side], atMm: middle(part) };
}

/** They reach down from what they carry. */
const STANDS: ReadonlySet<Part['kind']> = new Set(['legs', 'stand']);

const CUBE_G_PER_MM3 = 0.001_2; // electronics and hollow metal: near that of water; common practice

/** The middle of a part's points: the usual box goes there. */
function middle(part: PartView): Place {
  const places = Object.values((part.read('points') ?? {}) as Readonly<Record<string, Point>>).flatMap(({ at }) => (at === undefined ? [] : [at]));
  if (places.length === 0) return [0, 0, 0];
  const between = (axis: 0 | 1 | 2): number => (Math.min(...places.map((at) => at[axis])) + Math.max(...places.map((at) => at[axis]))) / 2;
  return [between(0), between(1), between(2)];
}

/** Length of what the light passes, along the axis. */
export const barrelLength = (part: PartView): number | undefined => figureOf(part, 'lengthMm', 'mountAdapter/thicknessMm');

/** Where a piece of the glass sits on the one behind it, and where the next one sits on it: entered points, else its ends. */
export interface Seats {
  readonly rear: Point | undefined;
  readonly front: Point | undefined;
}

export function seatsOf(part: PartView): Seats {
  const points = Object.values((part.read('points') ?? {}) as Readonly<Record<string, Point>>).filter(({ kind }) => kind === 'lens mount' || kind === 'front');
  const facing = (way: 1 | -1) => points.find(({ at, out }) => at !== undefined && out !== undefined && out[2] * way > 0.9);
  if (part.has('body')) {
    const flange = figureOf(part, 'body/sensorBehindFrontMm', 'body/flangeMm');
    return { rear: undefined, front: facing(1) ?? (flange === undefined ? undefined : end(flange, 1)) };
  }
  const length = barrelLength(part);
  return { rear: facing(-1) ?? end(0, -1), front: facing(1) ?? (length === undefined ? undefined : end(length, 1)) };
}

const end = (z: number, way: 1 | -1): Point => ({ kind: 'front', at: [0, 0, z], out: [0, 0, way], up: [0, 1, 0] });
