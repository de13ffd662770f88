import type { Vector } from '../../../assembly/placing/Transform.ts';
import { packPlace } from '../../../calc/mechanics/packPlace.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { allPlaced } from '../../quantities/allPlaced.ts';
import { allInBalance } from '../../quantities/allWeighed.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { type HeadLoad, headLoad, plateNow, plateRoom } from '../../quantities/headLoad.ts';
import { loadSlides, movedShare, roomAlong, settingFor, settingPatches } from '../../quantities/loadSlides.ts';
import { heaviestPack, leftOut } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { eachSetup, glassesOf } from '../../subjects.ts';

export const travel = question<{ readonly setup: string }>({
  id: 'balance.travel',
  asks: 'Does the plate of the head slide far enough to balance every lens?',
  kind: 'immediate',
  explains:
    'With each lens the centre of mass stands some way ahead of or behind the middle of the head. To balance, the plate has to be slid by as much from the middle of its travel; the lens that asks for most decides. Where the plate does not reach, the place is worked out at which the camera, or the pack, would bring the whole set into the middle of its travel. How far the plate slides from lens to lens is what has to be done again at each change.',
  sources: ['statics of rigid bodies'],
  subjects: (ledger) => eachSetup(ledger),
  ask: (asking, { setup }) => {
    const all = glassesOf(asking.ledger, setup).flatMap((glass) => {
      const load = headLoad(asking, { setup, glass });
      return load === undefined ? [] : [{ glass, load, offMm: load.aheadMm }];
    });
    const [first] = all;
    if (first === undefined) return null;
    const plate = plateRoom(first.load);
    if (plate === undefined) return null;
    const { halfMm, from } = plate;
    const now = plateNow(first.load);
    const wanted = all.map(({ glass, offMm }) => ({ glass, mm: now - offMm }));
    const worst = wanted.reduce((most, one) => (Math.abs(one.mm) > Math.abs(most.mm) ? one : most));
    const name = (glass: string) => nameAt(asking.ledger, 'glasses', glass);
    const spread = Math.max(...wanted.map(({ mm }) => mm)) - Math.min(...wanted.map(({ mm }) => mm));
    return allPlaced(allInBalance(judgeRatio({
      needs: { amount: { value: Math.abs(worst.mm), unit: 'mm' }, from: `${worst.mm < 0 ? 'back' : 'forward'} from the middle, ${name(worst.glass)}` },
      has: { amount: { value: halfMm, unit: 'mm' }, from },
      says: {
        holds: 'Every lens of the set can be balanced on the head.', tight: `${name(worst.glass)} can just be balanced on the head.`,
        fails: `${name(worst.glass)} cannot be balanced: the plate does not slide far enough ${worst.mm < 0 ? 'back' : 'forward'}.`,
      },
      steps: [
        ...wanted.map(({ glass, mm }) => ({ says: `${name(glass)}: slide the plate ${mm < 0 ? 'back' : 'forward'}`, amount: { value: Math.abs(mm), unit: 'mm' as const } })),
        { says: 'from lens to lens it moves by', amount: { value: spread, unit: 'mm' } },
      ],
      mends: Math.abs(worst.mm) > 0.9 * halfMm ? mends(asking, setup, { halfMm, wanted, loads: all.map(({ glass, load }) => ({ glass, load })) }) : [],
      notes: [...cautionsFor('tripod'), ...leftOut(first.load.whole)],
    }), all.flatMap(({ load }) => load.whole.unweighed)), all.map(({ load }) => load.whole));
  },
});

interface Reach {
  readonly halfMm: number;
  /** Where the plate has to go from the middle of its travel; forward is more than zero. */
  readonly wanted: readonly { readonly glass: string; readonly mm: number }[];
  readonly loads: readonly { readonly glass: string; readonly load: HeadLoad }[];
}

/** Everything that brings the set into the middle: the camera along another joint, by hand, or the pack. */
function mends(asking: Asking, setup: string, { halfMm, wanted, loads }: Reach): Mend[] {
  const all = wanted.map(({ mm }) => mm);
  const byMm = (Math.max(...all) + Math.min(...all)) / 2;
  /** Use once the centre of each lens's rig has gone forward by so much. */
  const useWith = (forwardMm: (at: number) => number): number => Math.max(...all.map((mm, at) => Math.abs(mm - forwardMm(at)))) / halfMm;
  const slid = slideMends(asking, setup, { byMm, loads, useWith });
  const says = `Set the camera ${printAmount({ value: Math.abs(Math.round(byMm)), unit: 'mm' })} further ${wayOf(byMm)} on its wedge or baseplate: that centres the set`;
  const use = useWith(() => Math.round(byMm));
  return [...slid, ...(slid.length === 0 && use < useWith(() => 0) ? [{ says, use, costs: 'the other lenses shift by as much' }] : []), ...packMend(loads, byMm, useWith)];
}

type UseWith = (forwardMm: (at: number) => number) => number;
const wayOf = (mm: number): string => (mm < 0 ? 'back' : 'forward');

/** Joints under the camera that can be slid fore and aft, the head's own plate apart. */
function slideMends(asking: Asking, setup: string, { byMm, loads, useWith }: { byMm: number; loads: Reach['loads']; useWith: UseWith }): Mend[] {
  const [first] = loads;
  if (first === undefined) return [];
  const head = first.load.head.ref;
  return loadSlides(asking.ledger, { setup, glass: first.glass }, head).filter(({ joint: { a, b } }) => a.ref !== head && b.ref !== head).flatMap((slide): Mend[] => {
    const ahead: Vector = [0, 0, Math.sign(byMm)];
    const share = (at: number): number => movedShare(loads[at]?.load.whole, slide);
    const value = settingFor(slide, ahead, Math.min(Math.abs(byMm) / Math.max(share(0), 0.01), roomAlong(slide, ahead)));
    const goMm = (value - slide.valueMm) * slide.way[2];
    const use = useWith((at) => goMm * share(at));
    if (Math.abs(goMm) < 1 || use >= useWith(() => 0)) return [];
    const { a, b } = slide.joint;
    const [low, high] = slide.moved.has(a.ref) ? [b, a] : [a, b];
    const says = `Slide ${high.piece.name} ${printAmount({ value: Math.abs(goMm), unit: 'mm' })} ${wayOf(goMm)} on ${low.piece.name}`;
    return [{ says, edit: { says, patches: settingPatches(slide, value) }, use, costs: 'what reaches back to the plate from the camera (rods, motors) shifts with it' }];
  });
}

/** Where the pack would have to go along the rig, at its own height, for the same. */
function packMend(loads: Reach['loads'], byMm: number, useWith: UseWith): Mend[] {
  const plates = loads.map(({ load }) => heaviestPack(load.whole));
  const [plate, whole] = [plates[0], loads[0]?.load.whole];
  if (plate === undefined || whole === undefined || plate.massG >= whole.massG) return [];
  const others = whole.massG - plate.massG;
  const centreMm = (whole.massG * whole.centreMm[2] - plate.massG * plate.centreMm[2]) / others;
  const { packMm } = packPlace({ massG: others, centreMm, packMassG: plate.massG, wantedMm: whole.centreMm[2] + byMm });
  const goMm = Math.round(packMm - plate.centreMm[2]);
  const use = useWith((at) => (goMm * (plates[at]?.massG ?? 0)) / (loads[at]?.load.whole.massG ?? 1));
  if (Math.abs(goMm) < 1 || use >= useWith(() => 0)) return [];
  return [{ says: `Put ${plate.piece.name} ${printAmount({ value: Math.abs(goMm), unit: 'mm' })} further ${wayOf(goMm)}`, use, costs: Math.abs(goMm) > 250 ? 'a long way out: move the camera as well' : 'a longer lead to the camera' }];
}
