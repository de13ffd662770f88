import { silhouettes } from '../../assembly/space/silhouette.ts';
import { worldHulls, worldSolids } from '../../assembly/space/worldSolids.ts';
import { type Vector, add, dot, length, scale, subtract } from '../../assembly/placing/Transform.ts';
import { drag } from '../../calc/mechanics/drag.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import { balance } from '../../standards/assumptions/balance.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { nameAt } from '../nameAt.ts';
import { origin } from '../origin.ts';
import type { SetupGlass } from '../subjects.ts';
import { shootFigure, shotsOf } from './shootFigures.ts';

/** The air that goes past a rig at its worst. */
export interface Air {
  readonly speedMps: number;
  /** "Day one: 7 m/s (sheet) × 1.6 for gusts". */
  readonly says: string;
}

/**
 * The strongest gust of the days on which a setup is shot outdoors, and the speed driven on top. Of a setup without shots all shots of the shoot
 * count, without any all days. `undefined`: it is shot indoors only, or nothing says that there is wind.
 */
export function airPast(asking: Asking, setup: string): Air | undefined {
  return asking.ledger.cell(`air past|${setup}`, () => {
    const shots = shotsCounting(asking.ledger, setup);
    const all = shots.length === 0 ? asking.ledger.keys('days').flatMap((day) => windOfDay(asking, day) ?? []) : shots.flatMap((shot) => airOfShot(asking, shot) ?? []);
    return all.reduce<Air | undefined>((worst, one) => (one.speedMps > (worst?.speedMps ?? 0) ? one : worst), undefined);
  });
}

const shotsCounting = (ledger: Ledger, setup: string): readonly string[] => (shotsOf(ledger, setup).length > 0 ? shotsOf(ledger, setup) : ledger.keys('shots'));

/** On a vehicle whose speed nothing states: what an answer must say, as the air against it is left out. */
export function speedNotEntered(ledger: Ledger, setup: string, build: string): string[] {
  const driven = ledger.at(`builds/${build}/purpose`) === 'vehicle' && !shotsOf(ledger, setup).some((shot) => ledger.at(`shots/${shot}/drivingMps`) !== undefined);
  return driven ? ['The speed it is driven at is not entered with any shot: the air against it is left out.'] : [];
}

function airOfShot(asking: Asking, shot: string): Air | undefined {
  const { ledger } = asking;
  const place = ledger.at(`shots/${shot}/place`);
  if (place === 'interior') return undefined;
  const day = ledger.at(`shots/${shot}/day`) as string | undefined;
  const days = day === undefined ? ledger.keys('days') : [day];
  const winds = days.flatMap((one) => windOfDay(asking, one) ?? []);
  const wind = winds.length > 0 ? winds.reduce((worst, one) => (one.speedMps > worst.speedMps ? one : worst)) : place === 'exterior' ? blowing(asking, asking.assume(balance.windMps), 'no wind is entered') : undefined;
  const driven = shootFigure(ledger, `shots/${shot}/drivingMps`);
  if (driven === undefined || driven.value === 0) return wind;
  const says = [`driven at ${printAmount({ value: driven.value, unit: 'm/s' })}`, ...(wind === undefined ? [] : [`against ${wind.says}`])].join(' ');
  return { speedMps: driven.value + (wind?.speedMps ?? 0), says };
}

function windOfDay(asking: Asking, day: string): Air | undefined {
  const wind = shootFigure(asking.ledger, `days/${day}/windMps`);
  return wind === undefined ? undefined : blowing(asking, wind, nameAt(asking.ledger, 'days', day));
}

function blowing(asking: Asking, wind: Figure, when: string): Air {
  const gust = asking.assume(mechanics.gustFactor);
  return { speedMps: wind.value * gust.value, says: `${when}: ${printAmount({ value: wind.value, unit: 'm/s' })} ${origin(wind)} × ${printNumber(gust.value)} for gusts` };
}

/** What pushes on some placed pieces from one level direction. */
export interface WindOn {
  readonly along: Vector;
  readonly forceN: number;
  readonly areaMm2: number;
  /** In the build's frame; its place along the wind has no meaning. */
  readonly centreMm: Vector;
  /** How far to either side of that the push may lie. */
  readonly besideMm: Vector;
}

/**
 * Wind on pieces of a setup, from level directions all round. The outline of them all together is what stands in its way: bores count as closed, and
 * nothing that stands before them shields them. `key` tells this choice of pieces from others.
 */
export function windOn(asking: Asking, { setup, glass }: SetupGlass, { air, refs, key }: { air: Air; refs: ReadonlySet<string>; key: string }): WindOn[] {
  const outlines = asking.ledger.cell(`silhouettes|${setup}|${glass}|${key}`, () =>
    silhouettes([...worldHulls(asking.ledger, setup, glass)].flatMap(([{ piece }, hull]) => (refs.has(piece.ref) ? [hull] : []))));
  const aside = asking.assume(balance.windOffCentre).value;
  return outlines.map(({ along, areaMm2, centreMm, widthMm }) => ({
    along, areaMm2, centreMm, forceN: windForce(asking, air, areaMm2), besideMm: scale([along[2], 0, -along[0]], aside * widthMm),
  }));
}

/** Share of what it takes up to which a bound on the wind is enough. */
export const NOTHING_MUCH = 0.3;

/** No wind turns some pieces about a line by more, N·m: each solid by itself, from its widest side, at the end of its reach and off its middle. Quick, where it settles that the wind is not the worst. */
export function windMomentAtMost(asking: Asking, { setup, glass }: SetupGlass, { air, refs, lever }: { air: Air; refs: ReadonlySet<string>; lever: (place: Vector) => Vector }): { momentNm: number; forceN: number } {
  const solids = worldSolids(asking.ledger, setup, glass).filter(({ piece }) => refs.has(piece.ref));
  const reachMm = Math.max(0, ...solids.map(({ solid, place }) => length(lever(place.t)) + halfAcross(solid)));
  // Where they lie along the line they have no arm, but all their width counts for how far beside its middle the wind may push.
  const middle = scale(solids.reduce<Vector>((sum, { place }) => add(sum, place.t), [0, 0, 0]), 1 / Math.max(1, solids.length));
  const widthMm = 2 * Math.max(0, ...solids.map(({ solid, place }) => length(subtract(place.t, middle)) + halfAcross(solid)));
  const besideMm = asking.assume(balance.windOffCentre).value * widthMm;
  const forceN = windForce(asking, air, solids.reduce((sum, { solid }) => sum + widestView(solid), 0));
  return { forceN, momentNm: forceN * (reachMm + besideMm) * 1e-3 };
}

/** The largest outline of a solid from any side, mm²: a box shows its three faces, a cylinder its end and its side. */
export function widestView(solid: Solid): number {
  if (solid.shape !== 'box') return Math.hypot((Math.PI / 4) * solid.diameterMm ** 2, solid.diameterMm * solid.lengthMm);
  const [x, y, z] = solid.sizeMm;
  return Math.hypot(x * y, y * z, z * x);
}

const halfAcross = (solid: Solid): number => (solid.shape === 'box' ? length(solid.sizeMm) / 2 : Math.hypot(solid.diameterMm, solid.lengthMm) / 2);

export function windForce(asking: Asking, { speedMps }: Air, areaMm2: number): number {
  return drag({ speedMps, areaMm2, dragCoefficient: asking.assume(mechanics.dragCoefficient).value, airDensityKgPerM3: asking.assume(mechanics.airDensity).value }).forceN;
}

/** "0.11 m² × 1.05 in 11.2 m/s of air (Day one: ...)", for the side of an answer. */
export const windSays = (air: Air, areaMm2: number): string => `${printNumber(areaMm2 / 1e6)} m² in ${printAmount({ value: air.speedMps, unit: 'm/s' })} of air (${air.says})`;

/** The moment of such a push about an axis through a place, at its worst, N·m. */
export function windMoment({ along, forceN, centreMm, besideMm }: WindOn, lever: (place: Vector) => Vector): number {
  const arms = [1, -1].map((side) => Math.abs(dot(lever([centreMm[0] + side * besideMm[0], centreMm[1] + side * besideMm[1], centreMm[2] + side * besideMm[2]]), along)));
  return forceN * Math.max(...arms) * 1e-3;
}
