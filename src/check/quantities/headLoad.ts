import { carrierKind as kindOf, goesWith } from '../../assembly/hold/carriers.ts';
import { axisOf } from '../../assembly/mates.ts';
import { settingsWith } from '../../assembly/placing/chain.ts';
import { type Placement, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type ModelJoint, rangeOf } from '../../assembly/placing/rigModel.ts';
import { type Transform, type Vector, apply, axis, compose, dot, inverse } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type WholeMass, wholeMass } from './wholeMass.ts';

/** A camera on a head: what is on it, and where its centre is, seen from the head's plate (up, ahead). */
export interface HeadLoad {
  readonly head: SetupPiece;
  readonly whole: WholeMass;
  readonly aboveMm: number;
  readonly aheadMm: number;
  /** Where the plate stands along its travel and between which ends, ahead being more than zero. */
  readonly slide: { readonly valueMm: number; readonly lowMm: number; readonly highMm: number } | undefined;
}

/** `undefined` where no head of the camera build has a place, or where it stands on none by its purpose. */
export function headLoad(asking: Asking, { setup, glass }: SetupGlass): HeadLoad | undefined {
  return asking.ledger.cell(`head load|${setup}|${glass}`, () => {
    const build = asking.ledger.at(`setups/${setup}/camera`) as string;
    if (!goesWith(asking.ledger.at(`builds/${build}/purpose`), 'head')) return undefined;
    const own = [...setupPieces(asking.ledger, setup, glass).values()].filter((piece) => piece.build === build);
    const head = own.find((piece) => kindOf(piece) === 'head');
    const placement = placeSetup(asking.ledger, setup, glass);
    const { places, model } = placement;
    const stand = head === undefined ? undefined : places.get(head.ref);
    if (head === undefined || stand === undefined) return undefined;
    const whole = wholeMass(asking, { setup, glass }, build, (piece) => !['head', 'legs', 'stand'].includes(kindOf(piece) ?? ''));
    if (whole === undefined) return undefined;
    const joint = [...model.tree, ...model.loops].find(({ joint: { a, b } }) => [a, b].some(({ ref, point }) => ref === head.ref && ['tripod plate', 'wedge', 'thread', 'hole'].includes(point.kind)));
    const end = joint === undefined ? undefined : joint.joint.a.ref === head.ref ? joint.joint.a : joint.joint.b;
    const plate: Transform = { r: stand.r, t: apply(stand, (end?.point.at ?? [0, 0, 0])) };
    const [, aboveMm, aheadMm] = apply(inverse(plate), whole.centreMm as Vector);
    const slide = joint === undefined ? undefined : plateSlide(placement, joint, head.ref);
    return { head, whole, aboveMm, aheadMm, slide };
  });
}

/** How far the head's plate slides to either side of the middle of its travel; `undefined` where neither travel nor range is entered. */
export function plateRoom({ head, slide }: HeadLoad): { readonly halfMm: number; readonly from: string } | undefined {
  const stated = head.part.figure('carrier/plateTravelMm');
  if (stated !== undefined) return { halfMm: stated.value / 2, from: 'half the travel of the plate' };
  return slide === undefined ? undefined : { halfMm: (slide.highMm - slide.lowMm) / 2, from: 'half the range of the plate' };
}

/** Where the plate stands now, ahead of the middle of its travel: to balance, that has to be undone as well. */
export const plateNow = ({ slide }: HeadLoad): number => (slide === undefined ? 0 : slide.valueMm - (slide.highMm + slide.lowMm) / 2);

/** As stated, as found, or as it is taken to begin with; counted ahead, whichever piece and way the file counts it on. */
function plateSlide({ places, values }: Placement, joint: ModelJoint, head: string): HeadLoad['slide'] {
  const { joint: { a, b }, frameA, turned } = joint;
  const range = rangeOf(joint.joint, 'slideMm');
  const [stand, base] = [places.get(head), places.get(a.ref)];
  if (range === undefined || stand === undefined || base === undefined) return undefined;
  // Seen from `a`, the setting moves `b`.
  const way = axis(compose(base, frameA).r, axisOf(a.point.kind, 'slideMm'));
  const ahead = Math.sign(dot(way, axis(stand.r, 2))) * (b.ref === head ? -1 : 1) || 1;
  const ends = range.map((end) => end * ahead * (turned.has('slideMm') ? -1 : 1));
  return { valueMm: (settingsWith(joint, values).slideMm ?? 0) * ahead, lowMm: Math.min(...ends), highMm: Math.max(...ends) };
}
