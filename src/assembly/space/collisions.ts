import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { rigJoints } from '../placing/rigJoints.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { type Body, TOUCH_MM, bodies, boxAround, boxesMeet } from './bodies.ts';
import { convexOverlap } from './convexOverlap.ts';
import { type WorldSolid, convexParts } from './worldSolids.ts';

/** Two pieces of a build that are in one place. */
export interface Collision {
  readonly a: SetupPiece;
  readonly b: SetupPiece;
  /** About how deep, mm: the larger of the two must give way by so much. */
  readonly depthMm: number;
  /** Only at the end of the focus travel. */
  readonly withTravel: boolean;
  /** One of the shapes is a guess. */
  readonly coarse: boolean;
}

/** Every pair of pieces that are in one place, at either end of the focus travel. Pieces that are joined or mesh are meant to touch. */
export function collisions(ledger: Ledger, setup: string, glass: string): readonly Collision[] {
  return ledger.cell(`collisions|${setup}|${glass}`, () => {
    const joined = joinedPairs(ledger, setup, glass);
    const still = bodies(ledger, setup, glass);
    const travelled = still.some(({ world }) => world.travelMm !== 0) ? travelledBodies(still) : [];
    const found = new Map<string, Collision>();
    for (const [all, withTravel] of [[still, false], [travelled, true]] as const) {
      for (const [a, b] of meetingPairs(all, joined)) {
        const pair = pairKey(a.world.piece.ref, b.world.piece.ref);
        if (found.get(pair)?.withTravel === !withTravel) continue;
        const depthMm = depthOf(a.world, b.world, withTravel);
        if (depthMm <= (found.get(pair)?.depthMm ?? 0)) continue;
        found.set(pair, { a: a.world.piece, b: b.world.piece, depthMm, withTravel, coarse: a.world.coarse || b.world.coarse });
      }
    }
    return [...found.values()].toSorted((one, two) => two.depthMm - one.depthMm);
  });
}

const pairKey = (a: string, b: string): string => (a < b ? `${a}|${b}` : `${b}|${a}`);

function joinedPairs(ledger: Ledger, setup: string, glass: string): ReadonlySet<string> {
  return new Set(rigJoints(ledger, setup, glass).joints.map(({ a, b }) => pairKey(a.ref, b.ref)));
}

function travelledBodies(still: readonly Body[]): Body[] {
  const worlds = [...new Set(still.map(({ world }) => world))];
  return worlds.flatMap((world) => convexParts(world, -TOUCH_MM, true).map((corners) => ({ world, corners, box: boxAround(corners) })));
}

/** Pairs of bodies that overlap, swept along the axis so that only neighbours are asked. */
function* meetingPairs(all: readonly Body[], joined: ReadonlySet<string>): Generator<[Body, Body]> {
  const swept = all.toSorted((a, b) => a.box.low[2] - b.box.low[2]);
  for (const [at, a] of swept.entries()) {
    for (let other = at + 1; other < swept.length; other += 1) {
      const b = swept[other] as Body;
      if (b.box.low[2] > a.box.high[2]) break;
      const [one, two] = [a.world.piece, b.world.piece];
      if (one === two || one.build !== two.build || !boxesMeet(a.box, b.box) || joined.has(pairKey(one.ref, two.ref))) continue;
      if (convexOverlap(a.corners, b.corners)) yield [a, b];
    }
  }
}

/** Shrinks both until they part; what had to be taken off the two together is how deep they stood in each other. */
function depthOf(a: WorldSolid, b: WorldSolid, travelled: boolean): number {
  const meet = (shrink: number) => {
    const others = convexParts(b, -shrink, travelled);
    return convexParts(a, -shrink, travelled).some((one) => others.some((other) => convexOverlap(one, other)));
  };
  let [low, high] = [TOUCH_MM, 64];
  for (let step = 0; step < 8; step += 1) {
    const middle = (low + high) / 2;
    if (meet(middle)) low = middle;
    else high = middle;
  }
  return low + high;
}
