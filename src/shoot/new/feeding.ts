import { printNumber } from '../../units/print.ts';
import type { Piece } from '../schema/build.ts';
import type { Port } from '../schema/electrics.ts';
import { typicalParts } from '../typical/typicalParts.ts';
import { type Wiring, addPiece, feed } from './wiring.ts';

const SMALL_PLATE = 'plate-small';
const nominalOf = (pack: string): number => Number(typicalParts[pack]?.pack?.nominalV);
const isSmall = (pack: string): boolean => nominalOf(pack) < 10;

/** Small packs are clipped each on the device it feeds; larger ones share a plate. */
export function platesOf(pack: string, devices: readonly string[]): Record<string, Piece> {
  const on = (plate: string): Piece => ({ of: plate, packs: [pack] });
  if (isSmall(pack)) return Object.fromEntries(devices.map((device) => [`${device}-plate`, { ...on(SMALL_PLATE), name: `Plate of the ${device.replaceAll('-', ' ')}` }]));
  return { plate: on(nominalOf(pack) > 20 ? 'plate-26v' : 'plate-hot-swap') };
}

/** Feeds each piece that needs power; where outlets run out, splitters make more; another voltage gets a regulator. */
export function feedAll(wiring: Wiring, pieces: readonly string[]): void {
  const there = pieces.filter((piece) => wiring.pieces[piece] !== undefined);
  if (wiring.pieces['plate'] === undefined) {
    for (const piece of there) feed(wiring, [`${piece}-plate`], piece);
    return;
  }
  const taps = Object.values(typicalParts[wiring.pieces['plate'].of]?.ports ?? {}).filter(({ connector }) => connector === TAP).length;
  const onTaps = there.filter((piece) => !HEAVY.has(inputOf(wiring.pieces[piece]?.of)?.connector ?? '')).length;
  const feeds = ['plate'];
  // A splitter takes one outlet and gives several.
  for (let short = onTaps - taps; short > 0; short -= SPLITTER_WAYS - 1) feeds.push(...added(wiring, SPLITTER));
  for (const piece of there) if (!feed(wiring, feeds, piece)) feed(wiring, added(wiring, 'regulator-8v'), piece);
}

const TAP = '2-pin tap';
/** Plugs with an outlet of their own on a plate. */
const HEAVY: ReadonlySet<string> = new Set(['XLR 4']);
const inputOf = (device = ''): Port | undefined => Object.values(typicalParts[device]?.ports ?? {}).find(({ kind, way }) => kind === 'power' && way === 'in');

const SPLITTER = 'tap-splitter';
const SPLITTER_WAYS = Object.values(typicalParts[SPLITTER]?.ports ?? {}).filter(({ way }) => way === 'out').length;

/** A helper between source and device, where it can itself be fed: its id, or nothing. */
function added(wiring: Wiring, of: string): string[] {
  const sources = Object.keys(wiring.pieces).filter((piece) => piece === 'plate' || wiring.pieces[piece]?.of === SPLITTER);
  const id = addPiece(wiring, of);
  if (feed(wiring, sources, id)) return [id];
  delete wiring.pieces[id];
  return [];
}

/** Why a small pack, clipped on it, does not feed a device; nothing where it does. Larger packs have plates, splitters and regulators between. */
export function whyUnfed(pack: string, device: string): string | undefined {
  const [source, fed] = [typicalParts[pack]?.pack, typicalParts[device]];
  const lowV = inputOf(device)?.power?.lowV;
  if (source === undefined || fed === undefined || lowV === undefined || !isSmall(pack)) return undefined;
  const [cutoffV, watts] = [Number(source.cutoffV), Number(fed.draw?.peakW ?? fed.draw?.typicalW ?? 0)];
  const name = `the ${fed.name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase())}`;
  if (Number(lowV) > cutoffV) return `${name} takes no less than ${printNumber(Number(lowV))} V, and this pack ends at ${printNumber(cutoffV)} V.`;
  const mostA = Math.min(Number(source.maxA), ...Object.values(typicalParts[SMALL_PLATE]?.ports ?? {}).map(({ power }) => Number(power?.maxA)));
  return watts / cutoffV > mostA ? `${name} draws ${printNumber(watts / cutoffV)} A at ${printNumber(cutoffV)} V, and this pack on its plate gives ${printNumber(mostA)} A.` : undefined;
}
