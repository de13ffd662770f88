import { type Vector, subtract } from '../../../assembly/placing/Transform.ts';
import { packPlace } from '../../../calc/mechanics/packPlace.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { LARGEST_USE, cannotJudge, judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { NotEntered } from '../../NotEntered.ts';
import { describeFigure } from '../../describeFigure.ts';
import { allPlaced } from '../../quantities/allPlaced.ts';
import { allInBalance } from '../../quantities/allWeighed.ts';
import { ESTIMATE } from '../../quantities/estimateNote.ts';
import { type GimbalLoad, gimbalLoad, gimbalOf } from '../../quantities/gimbalLoad.ts';
import { type Reach, WAYS, type Way, moveSays, reachOf } from '../../quantities/gimbalReach.ts';
import { heaviestPack } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { eachSetup, glassesOf } from '../../subjects.ts';

export const gimbal = question<{ readonly setup: string }>({
  id: 'balance.gimbal',
  asks: 'Can every lens be balanced in the gimbal?',
  kind: 'immediate',
  explains:
    'A gimbal turns freely where the centre of mass of all that turns with the camera lies where its axes meet. With each lens that centre stands somewhere else; the camera has to be slid by as much, from side to side, up and down, fore and aft, and each way is held against what is left to slide there. What extends as it is focused takes the centre along, so that the middle of its way is what is balanced. ' +
    'How far the camera is slid from lens to lens is what has to be done again at each change. What hangs on the gimbal itself does not count; of a cable from there to the camera half does.',
  sources: ['statics of rigid bodies', 'a lens that extends shifts the balance: common practice'],
  subjects: (ledger) => eachSetup(ledger).filter(({ setup }) => glassesOf(ledger, setup).slice(0, 1).some((glass) => gimbalOf(ledger, { setup, glass }) !== undefined)),
  ask: (asking, { setup }) => {
    const loads = glassesOf(asking.ledger, setup).map((glass) => ({ glass, name: nameAt(asking.ledger, 'glasses', glass), load: gimbalLoad(asking, { setup, glass }) }));
    const text = loads.map(({ load }) => load).find((load) => typeof load === 'string');
    if (text !== undefined) return cannotJudge(text);
    const seats = loads.flatMap(({ load, ...one }): Seat[] => (typeof load === 'object' ? [{ ...one, load, wantedMm: WAYS.map(({ at }) => -(load.offMm[at] + load.shiftMm[at] / 2)) }] : []));
    const [first] = seats;
    if (first === undefined) return null;
    const { worst, missing } = worstMove(asking, setup, seats);
    if (worst === undefined || (worst.use <= 1 && missing.length > 0)) throw new NotEntered(missing.map((path) => describeFigure(first.load.gimbal.part, path)));
    const { name } = first.load.gimbal;
    return allPlaced(allInBalance(judgeRatio({
      needs: { amount: { value: Math.abs(worst.mm), unit: 'mm' }, from: `${worst.mm < 0 ? worst.way.less : worst.way.more}, ${worst.seat.name}`, word: 'to slide' },
      has: { amount: { value: worst.reach.roomMm, unit: 'mm' }, from: worst.reach.says },
      says: {
        holds: `Every lens of the set can be balanced in ${name}.`, tight: `${worst.seat.name} can just be balanced in ${name}.`,
        fails: `${worst.seat.name} cannot be balanced in ${name}: the camera does not slide far enough ${worst.mm < 0 ? worst.way.less : worst.way.more}.`,
      },
      steps: steps(seats),
      mends: worst.use > 0.9 ? mends(asking, setup, seats, worst) : [],
      notes: [ESTIMATE, 'Fingers, hair and cables clear when a gimbal starts.', ...new Set(seats.flatMap(({ load }) => load.notes))],
    }), seats.flatMap(({ load }) => load.whole.unweighed)), seats.map(({ load }) => load.whole));
  },
});

interface Seat {
  readonly glass: string;
  readonly name: string;
  readonly load: GimbalLoad;
  /** Where the centre has to go, in the order of the ways. */
  readonly wantedMm: readonly number[];
}

/** Nobody slides a plate more finely than this. */
const FINE_MM = 0.5;

interface Move {
  readonly seat: Seat;
  readonly way: Way;
  readonly mm: number;
  readonly reach: Reach;
  readonly use: number;
}

/** The move that asks most of what is left to slide; and the travels that would have to be known. `by`: where a cure puts the centre forward of where it is. */
function worstMove(asking: Asking, setup: string, seats: readonly Seat[], by: (seat: Seat, way: Way) => number = () => 0): { worst: Move | undefined; missing: string[] } {
  const missing = new Set<string>();
  const moves = seats.flatMap((seat) => WAYS.flatMap((way): Move[] => {
    const mm = (seat.wantedMm[way.at] ?? 0) - by(seat, way);
    const reach = reachOf(asking.ledger, { setup, glass: seat.glass }, seat.load, way, mm);
    const near = Math.abs(mm) < FINE_MM;
    if (reach === undefined && !near) missing.add(way.figure);
    if (reach === undefined) return [];
    return [{ seat, way, mm: near ? 0 : mm, reach, use: near ? 0 : reach.roomMm <= 0 ? LARGEST_USE : Math.abs(mm) / reach.roomMm }];
  }));
  return { worst: moves.reduce<Move | undefined>((most, one) => (most === undefined || one.use > most.use ? one : most), undefined), missing: [...missing] };
}

function steps(seats: readonly Seat[]): Step[] {
  const moves = ({ name, wantedMm }: Seat): Step => {
    const own = WAYS.filter(({ at }) => Math.abs(wantedMm[at] ?? 0) >= FINE_MM).map((way) => moveSays(way, wantedMm[way.at] ?? 0));
    return { says: own.length === 0 ? `${name}: balanced as it is set` : `${name}: slide the camera on its plate until the centre comes ${own.join(', ')}` };
  };
  const spreads = WAYS.map((way) => ({ way, spread: Math.max(...seats.map(({ wantedMm }) => wantedMm[way.at] ?? 0)) - Math.min(...seats.map(({ wantedMm }) => wantedMm[way.at] ?? 0)) }));
  const shifts = seats.map(({ name, load }) => ({ name, mm: Math.hypot(...load.shiftMm) })).filter(({ mm }) => mm > 0.05);
  return [
    ...seats.map(moves),
    ...spreads.filter(({ spread }) => seats.length > 1 && spread >= FINE_MM).map(({ way, spread }): Step => ({ says: `from lens to lens it moves ${way.says} by`, amount: { value: spread, unit: 'mm' } })),
    ...shifts.map(({ name, mm }): Step => ({ says: `${name}: from infinity to close its centre moves by`, amount: { value: mm, unit: 'mm' } })),
  ];
}

/** The camera by hand, and the pack, each so that the set comes into the middle of what it asks that way. */
function mends(asking: Asking, setup: string, seats: readonly Seat[], { way, use: now }: Move): Mend[] {
  const all = seats.map(({ wantedMm }) => wantedMm[way.at] ?? 0);
  const byMm = Math.round((Math.max(...all) + Math.min(...all)) / 2);
  const useWith = (moved: (seat: Seat) => number): number => worstMove(asking, setup, seats, (seat, one) => (one.at === way.at ? moved(seat) : 0)).worst?.use ?? 0;
  const byHand = { says: `Set the camera ${moveSays(way, byMm)} by hand: ${way.at === 1 ? 'a spacer, a riser or none' : 'another hole or a longer plate'}; that centres the set`, use: useWith(() => byMm), costs: 'the other lenses shift by as much' };
  return [byHand, ...(way.at === 2 ? packMend(seats, byMm, useWith) : [])].filter(({ use = 0 }) => use < now);
}

function packMend(seats: readonly Seat[], byMm: number, useWith: (moved: (seat: Seat) => number) => number): Mend[] {
  const [first] = seats;
  const plate = first === undefined ? undefined : heaviestPack(first.load.whole);
  if (first === undefined || plate === undefined || plate.massG >= first.load.whole.massG) return [];
  const { whole } = first.load;
  // Counted along the gimbal from the common centre as it is.
  const others = whole.massG - plate.massG;
  const stands = first.load.turn(subtract(plate.centreMm as Vector, whole.centreMm as Vector))[2];
  const { packMm } = packPlace({ massG: others, centreMm: (-plate.massG * stands) / others, packMassG: plate.massG, wantedMm: byMm });
  const goMm = Math.round(packMm - stands);
  const says = `Put ${plate.piece.name} ${printAmount({ value: Math.abs(goMm), unit: 'mm' })} further ${goMm < 0 ? 'back' : 'forward'}`;
  return [{ says, use: useWith(({ load }) => (goMm * (heaviestPack(load.whole)?.massG ?? 0)) / load.whole.massG), costs: 'a longer lead to the camera' }];
}
