import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type Transform, type Vector, apply, inverse } from '../../assembly/placing/Transform.ts';
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
  /** The joint of the head's plate, and how far it slides. */
  readonly slide: { readonly valueMm: number; readonly lowMm: number; readonly highMm: number } | undefined;
}

const kindOf = (piece: SetupPiece) => piece.part.read('carrier/kind') as string | undefined;

/** `undefined` where no head of the camera build has a place. */
export function headLoad(asking: Asking, { setup, glass }: SetupGlass): HeadLoad | undefined {
  return asking.ledger.cell(`head load|${setup}|${glass}`, () => {
    const build = asking.ledger.at(`setups/${setup}/camera`) as string;
    const own = [...setupPieces(asking.ledger, setup, glass).values()].filter((piece) => piece.build === build);
    const head = own.find((piece) => kindOf(piece) === 'head');
    const { places, model } = placeSetup(asking.ledger, setup, glass);
    const stand = head === undefined ? undefined : places.get(head.ref);
    if (head === undefined || stand === undefined) return undefined;
    const whole = wholeMass(asking, { setup, glass }, build, (piece) => !['head', 'legs', 'stand'].includes(kindOf(piece) ?? ''));
    if (whole === undefined) return undefined;
    const joint = [...model.tree, ...model.loops].find(({ joint: { a, b } }) => [a, b].some(({ ref, point }) => ref === head.ref && ['tripod plate', 'wedge', 'thread', 'hole'].includes(point.kind)));
    const end = joint === undefined ? undefined : joint.joint.a.ref === head.ref ? joint.joint.a : joint.joint.b;
    const plate: Transform = { r: stand.r, t: apply(stand, (end?.point.at ?? [0, 0, 0])) };
    const [, aboveMm, aheadMm] = apply(inverse(plate), whole.centreMm as Vector);
    const range = joint === undefined ? undefined : (joint.joint.a.point.slideMm ?? joint.joint.b.point.slideMm);
    const slide = range === undefined || joint === undefined ? undefined : { valueMm: (joint.fixed.slideMm ?? 0) * (joint.turned.has('slideMm') ? -1 : 1), lowMm: range[0], highMm: range[1] };
    return { head, whole, aboveMm, aheadMm, slide };
  });
}
