import { silhouettes } from '../../assembly/space/silhouette.ts';
import { type WorldSolid, hullOf, worldSolids } from '../../assembly/space/worldSolids.ts';
import { shapeOf } from '../../assembly/coarseShape.ts';
import { IDENTITY, type Transform } from '../../assembly/placing/Transform.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { weightN } from '../../calc/mechanics/gravity.ts';
import { standTipping } from '../../calc/mechanics/standTipping.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import type { Asking } from '../Asking.ts';
import { LARGEST_USE } from '../judge.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Snag, snagOf } from './snagHeight.ts';
import { type Standing, ownHeight } from './standing.ts';
import { type Air, airPast, widestView, windForce, windOn } from './windOn.ts';

/** All wind on a build, as one push at one height. */
export interface WindPush {
  readonly air: Air;
  readonly forceN: number;
  readonly areaMm2: number;
  readonly heightMm: number;
  /** A bound: no wind pushes harder or higher. */
  readonly atMost: boolean;
}

/** What may tip a build over. */
export interface Pushes {
  readonly tug: Figure;
  readonly snag: Snag;
  readonly wind: WindPush | undefined;
  readonly slope: Figure;
}

/** With a bound on the wind that is never too small: enough to tell which of several to look at. */
export function pushesAtMost(asking: Asking, subject: SetupGlass, standing: Standing): Pushes {
  return {
    tug: asking.assume(mechanics.tugN), snag: snagOf(asking.ledger, subject, standing.legs.build, standing), slope: asking.assume(mechanics.stableTiltDeg),
    wind: windAtMost(asking, subject, standing),
  };
}

/** The same with the wind on the outline. */
export const pushesOn = (asking: Asking, subject: SetupGlass, standing: Standing, atMost: Pushes): Pushes => ({ ...atMost, wind: windPush(asking, subject, standing) });

/** Every solid from its widest side, all at the very top. */
function windAtMost(asking: Asking, subject: SetupGlass, { legs, topMm, unplaced }: Standing): WindPush | undefined {
  const air = airPast(asking, subject.setup);
  if (air === undefined) return undefined;
  const solids = [...exposed(asking, subject, legs).own.map(({ solid }) => solid), ...unplaced.flatMap((piece) => shapeOf(piece.part).solids)];
  const areaMm2 = solids.reduce((sum, solid) => sum + widestView(solid), 0);
  return areaMm2 > 0 ? { air, areaMm2, heightMm: topMm, forceN: windForce(asking, air, areaMm2), atMost: true } : undefined;
}

/** The worst level direction: where push times height is largest. What has no place shows its own widest side, unshielded, on top. */
function windPush(asking: Asking, subject: SetupGlass, { legs, floorY, height, unplaced }: Standing): WindPush | undefined {
  const air = airPast(asking, subject.setup);
  if (air === undefined) return undefined;
  const loose = unplaced.map((piece) => ({ areaMm2: widestSide(piece), heightMm: height.value + ownHeight(piece) / 2 }));
  const placed = floorY === undefined ? [] : windOn(asking, subject, { air, ...exposed(asking, subject, legs) }).map(({ areaMm2, centreMm }) => ({ areaMm2, heightMm: centreMm[1] - floorY }));
  const worst = placed.reduce((most, one) => (one.areaMm2 * one.heightMm > most.areaMm2 * most.heightMm ? one : most), { areaMm2: 0, heightMm: 0 });
  const all = [worst, ...loose];
  const areaMm2 = all.reduce((sum, one) => sum + one.areaMm2, 0);
  const moment = all.reduce((sum, one) => sum + one.areaMm2 * one.heightMm, 0);
  return areaMm2 > 0 && moment > 0 ? { air, areaMm2, heightMm: moment / areaMm2, forceN: windForce(asking, air, areaMm2), atMost: false } : undefined;
}

/** All that is placed; the legs only where their shape is entered, as a guess would be a box of air. */
function exposed(asking: Asking, { setup, glass }: SetupGlass, legs: SetupPiece): { own: readonly WorldSolid[]; refs: ReadonlySet<string>; key: string } {
  const own = worldSolids(asking.ledger, setup, glass).filter(({ piece, coarse }) => piece.build === legs.build && (piece.ref !== legs.ref || !coarse));
  return { own, refs: new Set(own.map(({ piece }) => piece.ref)), key: `on ${legs.ref}` };
}

function widestSide(piece: SetupPiece): number {
  const { solids, coarse } = shapeOf(piece.part);
  const hulls = solids.map((solid) => {
    const place: Transform = { r: IDENTITY.r, t: solid.atMm ?? [0, 0, 0] };
    return hullOf({ piece, solid, place, coarse, travel: [0, 0, 0], travelMm: 0 });
  });
  return Math.max(0, ...silhouettes(hulls).map(({ areaMm2 }) => areaMm2));
}

/** How legs are set, where a cure is tried. */
export interface Stance {
  readonly ballastG: number;
  readonly heightMm: number;
  readonly footRadiusMm: number;
}

export const stanceOf = ({ ballastG, height, footRadius }: Standing): Stance => ({ ballastG, heightMm: height.value, footRadiusMm: footRadius.value });

/** One thing that may tip it, against what it takes. */
export interface TipCase {
  readonly by: 'tug' | 'wind' | 'slope';
  readonly demand: number;
  /** Below zero: it falls by itself. */
  readonly capacity: number;
  readonly unit: 'N' | 'deg';
  readonly atHeightMm: number;
  readonly use: number;
}

/** The three, worst first. */
export function tipCases(standing: Standing, pushes: Pushes, stance: Stance = stanceOf(standing)): [TipCase, ...TipCase[]] {
  const downMm = standing.height.value - stance.heightMm;
  const legsDown = standing.legsCentreMm * (downMm / standing.height.value);
  const centreMm = standing.centreMm - (standing.legsG * legsDown + (standing.massG - standing.legsG) * downMm) / standing.massG;
  const at = (heightMm: number) => standTipping({
    footRadiusMm: stance.footRadiusMm, feet: standing.feet.value, massG: standing.massG, centreHeightMm: Math.max(1, centreMm), aheadMm: standing.aheadMm, ballastG: stance.ballastG, atHeightMm: Math.max(1, heightMm - downMm),
  });
  const { tug, snag, wind, slope } = pushes;
  const push = (by: 'tug' | 'wind', demand: number, heightMm: number): TipCase => caseOf({ by, demand, capacity: at(heightMm).tipsAtN, unit: 'N', atHeightMm: Math.max(1, heightMm - downMm) });
  return [
    push('tug', tug.value, snag.heightMm),
    ...(wind === undefined ? [] : [push('wind', wind.forceN, wind.heightMm)]),
    caseOf({ by: 'slope', demand: slope.value, capacity: at(1).tiltDeg, unit: 'deg', atHeightMm: centreMm }),
  ].toSorted((a, b) => b.use - a.use) as [TipCase, ...TipCase[]];
}

const caseOf = (one: Omit<TipCase, 'use'>): TipCase => ({ ...one, use: one.capacity <= 0 ? LARGEST_USE : one.demand / one.capacity });

/**
 * The slope on which pieces without a mass would tip it if they weighed ever so much, from level, in degrees; endless without such pieces. Below
 * it their masses do no harm: between the feet a mass only helps against a push, and the slope that tips two masses together lies between their own.
 */
export function slopeWhateverWeighed({ unweighed, footRadius, feet }: Standing): number {
  const edgeMm = footRadius.value * Math.cos(Math.PI / feet.value);
  return unweighed.reduce((least, { upMm, outMm }) => Math.min(least, (Math.atan2(edgeMm - outMm, upMm) * 180) / Math.PI), Infinity);
}

/** The least mass on the feet, in the middle, with which each of the three uses at most so much; from the same sums, turned round. */
export function ballastFor(standing: Standing, { tug, snag, wind, slope }: Pushes, use: number): number {
  const { massG, aheadMm, centreMm, footRadius, feet } = standing;
  const edgeMm = footRadius.value * Math.cos(Math.PI / feet.value);
  const toStand = (forceN: number, heightMm: number): number => ((forceN / use) * Math.max(1, heightMm)) / weightN(1);
  const toLean = massG * Math.max(1, centreMm) * Math.tan(((slope.value / use) * Math.PI) / 180);
  const hardest = Math.max(toStand(tug.value, snag.heightMm), wind === undefined ? 0 : toStand(wind.forceN, wind.heightMm), toLean);
  return Math.max(0, (hardest + massG * aheadMm) / edgeMm - massG);
}
