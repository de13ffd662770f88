import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { rigJoints } from '../placing/rigJoints.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { Body, bodies, boxesMeet, depthOf } from './bodies.ts';

/** Two pieces of a build that are in one place. */
export interface Collision {
  readonly a: SetupPiece;
  readonly b: SetupPiece;
  /** About how deep, mm: how far one of them would have to go. */
  readonly depthMm: number;
  /** Only at the end of the focus travel. */
  readonly withTravel: boolean;
  /** One of the shapes is a guess. */
  readonly coarse: boolean;
}

/** Every pair of pieces that are in one place, at either end of the focus travel. Pieces that are joined or mesh are meant to touch. */
export function collisions(ledger: Ledger, setup: string, glass: string): readonly Collision[] {
  return ledger.cell(`collisions|${setup}|${glass}`, () => {
    const joined = new Set(rigJoints(ledger, setup, glass).joints.map(({ a, b }) => pairKey(a.ref, b.ref)));
    const still = bodies(ledger, setup, glass);
    const found = new Map<string, Collision>();
    const look = (all: readonly Body[], withTravel: boolean, ask: (a: Body, b: Body) => boolean): void => {
      for (const [a, b] of meetingPairs(all, joined, ask)) {
        const pair = pairKey(a.world.piece.ref, b.world.piece.ref);
        const before = found.get(pair);
        if (before !== undefined && before.withTravel !== withTravel) continue;
        const depthMm = depthOf(a, b);
        if (depthMm > (before?.depthMm ?? 0)) found.set(pair, { a: a.world.piece, b: b.world.piece, depthMm, withTravel, coarse: a.world.coarse || b.world.coarse });
      }
    };
    look(still, false, () => true);
    if (still.some(moves)) look(still.map((body) => (moves(body) ? new Body(body.world, true) : body)), true, (a, b) => a.travelled || b.travelled);
    return [...found.values()].toSorted((one, two) => two.depthMm - one.depthMm);
  });
}

const moves = ({ world }: Body): boolean => world.travelMm !== 0;
const pairKey = (a: string, b: string): string => (a < b ? `${a}|${b}` : `${b}|${a}`);

/** Pairs of bodies that overlap, swept along the axis so that only neighbours are asked. */
function* meetingPairs(all: readonly Body[], joined: ReadonlySet<string>, ask: (a: Body, b: Body) => boolean): Generator<[Body, Body]> {
  const swept = all.toSorted((a, b) => a.box.low[2] - b.box.low[2]);
  for (const [at, a] of swept.entries()) {
    for (let other = at + 1; other < swept.length; other += 1) {
      const b = swept[other] as Body;
      if (b.box.low[2] > a.box.high[2]) break;
      const [one, two] = [a.world.piece, b.world.piece];
      if (!boxesMeet(a.box, b.box) || one === two || one.build !== two.build || !ask(a, b) || joined.has(pairKey(one.ref, two.ref))) continue;
      if (a.overlaps(b)) yield [a, b];
    }
  }
}
