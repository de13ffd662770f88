import { type RigJoint, rigJoints } from '../../../assembly/placing/rigJoints.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { IDENTITY, apply, inverse } from '../../../assembly/placing/Transform.ts';
import { setupPieces } from '../../../assembly/setupPieces.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

/** A clamp holds on about half its width past its middle. Common practice: clamps are 20 to 30 mm wide. */
const PAST_CLAMP_MM = 12;

export const rodLength = question({
  id: 'space.rodLength',
  asks: 'Are the rods long enough?',
  kind: 'immediate',
  explains: 'Every clamp on a rod must sit on it with its whole width, for every lens. The farthest clamp from the rod’s fixed end, with half a clamp beyond it, against the length of the rod.',
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
    const { places } = placeSetup(asking.ledger, setup, glass);
    const stand = inverse(places.get(ref) ?? IDENTITY);
    const along = clampsOn(asking.ledger, setup, glass, ref).flatMap((joint) => {
      const [own, other] = joint.a.ref === ref ? [joint.a, joint.b] : [joint.b, joint.a];
      const place = places.get(other.ref);
      if (place === undefined || other.point.at === undefined || own.point.out === undefined) return [];
      return [{ name: other.piece.name, at: Math.abs(apply(stand, apply(place, other.point.at))[2]) }];
    });
    const farthest = along.toSorted((a, b) => b.at - a.at)[0];
    if (farthest === undefined) return null;
    return judgeRatio({
      needs: { amount: { value: farthest.at + PAST_CLAMP_MM, unit: 'mm' }, from: `to ${farthest.name}, and half a clamp` },
      has: { amount: { value: length.value, unit: 'mm' }, from: `${rod.name} ${origin(length)}` },
      says: { holds: `${rod.name} is long enough.`, tight: `${rod.name} just reaches ${farthest.name}.`, fails: `${rod.name} is too short for ${farthest.name}.` },
      goodUpTo: 0.98,
    });
  },
});

const clampsOn = (ledger: Ledger, setup: string, glass: string, ref: string): RigJoint[] =>
  rigJoints(ledger, setup, glass).joints.filter(({ a, b, fault }) => fault === undefined && ((a.ref === ref && a.point.kind === 'rod') || (b.ref === ref && b.point.kind === 'rod')));
