import { PAST_CLAMP_MM, rodSpan } from '../../../assembly/placing/alongRods.ts';
import { drivenBy } from '../../../assembly/placing/gears.ts';
import { type RigJoint, rigJoints } from '../../../assembly/placing/rigJoints.ts';
import { type MeshResult, type Placement, placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { rangeOf } from '../../../assembly/placing/rigModel.ts';
import { IDENTITY, apply, dot, inverse, subtract, unit } from '../../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import type { Figure } from '../../../shoot/ledger/figures.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import type { Judgement } from '../../answer.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { type RodShort, gearMends, shortRods, sideOf, sitsWrong } from '../../quantities/gearMends.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const rodLength = question({
  id: 'space.rodLength',
  asks: 'Are the rods long enough?',
  kind: 'immediate',
  explains: 'Every clamp on a rod must sit on it with its whole width, for every lens. The farthest clamp from the rod’s fixed end, with half a clamp beyond it, against the length of the rod. Where a clamp stands at the end of its rod and its gear is not reached, the rod is short by what is missing, or has to slide by as much.',
  sources: ['common practice'],
  subjects: (ledger) =>
    eachGlass(ledger).flatMap(({ setup, glass }) => {
      const pieces = setupPieces(ledger, setup, glass);
      return [...placeSetup(ledger, setup, glass).places.keys()].filter((ref) => pieces.get(ref)?.part.has('beam') === true && clampsOn(ledger, setup, glass, ref).length > 1).map((piece) => ({ setup, glass, piece }));
    }),
  ask: (asking, { setup, glass, piece: ref }) => {
    const rod = setupPieces(asking.ledger, setup, glass).get(ref);
    if (rod === undefined) return null;
    const length = asking.figure(rod.part, 'beam/lengthMm');
    const placement = placeSetup(asking.ledger, setup, glass);
    const short = placement.meshes.flatMap((mesh) => shortRods(asking.ledger, { setup, glass }, mesh).map((one) => ({ ...one, mesh }))).find(({ shift }) => shift.rod.ref === ref);
    const reaching = short === undefined ? undefined : tooShort({ ledger: asking.ledger, subject: { setup, glass }, placement, rod, length, short });
    if (reaching !== undefined) return reaching;
    const farthest = clampsAlong(asking.ledger, placement, ref).toSorted((a, b) => b.reachMm - a.reachMm)[0];
    if (farthest === undefined) return null;
    return judgeRatio({
      needs: { amount: { value: farthest.reachMm + PAST_CLAMP_MM, unit: 'mm' }, from: `to ${farthest.name}, and half a clamp` },
      has: { amount: { value: length.value, unit: 'mm' }, from: `${rod.name} ${origin(length)}` },
      says: { holds: `${rod.name} is long enough.`, tight: `${rod.name} just reaches ${farthest.name}.`, fails: `${rod.name} is too short for ${farthest.name}.` },
      goodUpTo: 0.98,
    });
  },
});

interface TooShort {
  readonly ledger: Ledger;
  readonly subject: SetupGlass;
  readonly placement: Placement;
  readonly rod: SetupPiece;
  readonly length: Figure;
  readonly short: RodShort & { readonly mesh: MeshResult };
}

/** The clamp of what drives a gear is at the end of the rod, and the gear lies beyond. */
function tooShort({ ledger, subject, placement, rod, length, short }: TooShort): Judgement {
  const { driver: drives, driven: turns } = drivenBy(short.mesh);
  const [driver, driven] = [drives.piece.name, turns.piece.name];
  return judgeRatio({
    needs: { amount: { value: length.value + Math.abs(short.byMm), unit: 'mm' }, from: `for ${driver} to reach the gear of ${driven}, and half a clamp` },
    has: { amount: { value: length.value, unit: 'mm' }, from: `${rod.name} ${origin(length)}` },
    says: { holds: '', fails: `${rod.name}${sideOf(placement, rod.ref)} is too short for ${driver} to reach the gear of ${driven}, or sits ${sitsWrong(placement, short)}.` },
    mends: gearMends(ledger, subject, short.mesh),
  });
}

/** How far from the other end of the rod each clamp is; a rod held by an end has only the other one free. */
function clampsAlong(ledger: Ledger, { setup, glass, places, model }: Placement, ref: string): { name: string; reachMm: number }[] {
  const stand = inverse(places.get(ref) ?? IDENTITY);
  const joints = clampsOn(ledger, setup, glass, ref);
  const heldByEnd = joints.some((joint) => slidesNot(joint));
  return joints.flatMap((joint) => {
    const [own, other] = joint.a.ref === ref ? [joint.a, joint.b] : [joint.b, joint.a];
    const [place, { at, out }] = [places.get(other.ref), own.point];
    if (place === undefined || other.point.at === undefined || at === undefined || out === undefined) return [];
    const along = dot(subtract(apply(stand, apply(place, other.point.at)), at), unit(out, [0, 0, 1]));
    const span = rodSpan(own.piece.part, own.point);
    if (span === undefined || slidesNot(joint)) return [{ name: other.piece.name, reachMm: Math.abs(along) }];
    const holdsIt = model.stepTo.get(ref)?.joint.path === joint.path;
    return [{ name: other.piece.name, reachMm: Math.max(along - span[0], heldByEnd || holdsIt ? 0 : span[1] - along) }];
  });
}

/** A seat takes the end of a rod, and lets it go no further. */
const slidesNot = (joint: RigJoint): boolean => rangeOf(joint, 'slideMm') === undefined && joint.settings.slideMm === undefined;

const clampsOn = (ledger: Ledger, setup: string, glass: string, ref: string): RigJoint[] =>
  rigJoints(ledger, setup, glass).joints.filter(({ a, b, fault }) => fault === undefined && ((a.ref === ref && a.point.kind === 'rod') || (b.ref === ref && b.point.kind === 'rod')));
