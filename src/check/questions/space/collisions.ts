import { isHollow, shapeOf } from '../../../assembly/coarseShape.ts';
import { collisions as collisionsOf } from '../../../assembly/space/collisions.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { lengthsMustBeThere } from '../../quantities/lengthsWanted.ts';
import { unplacedNote } from '../../quantities/unplacedNote.ts';
import { judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const collisions = question({
  id: 'space.collisions',
  asks: 'Is the rig clear of itself?',
  kind: 'immediate',
  explains:
    'Solids of different pieces must not stand in one place, at infinity or at the close end of the focus travel. Pieces that are joined, and gears that mesh, are meant to touch; half a millimetre counts as touching. Shapes that were not entered ' +
    'are boxes of the usual size: a collision with one of those is a caution, not a failure; what goes round other pieces (a cage, a collar, a gimbal) is not guessed; a barrel without a length has no shape, and where nothing else collides the length is asked for. Cables, hands and moving arms are not looked at.',
  sources: ['Gilbert, Johnson and Keerthi 1988; common practice'],
  subjects: eachGlass,
  ask: ({ ledger }, { setup, glass }) => {
    if (placeSetup(ledger, setup, glass).places.size < 2) return null;
    const found = collisionsOf(ledger, setup, glass);
    const sure = found.filter(({ coarse }) => !coarse);
    if (sure.length === 0) lengthsMustBeThere(ledger, { setup, glass });
    const [first] = sure.length > 0 ? sure : found;
    const shapeless = [...placeSetup(ledger, setup, glass).parts.values()].filter(({ part }) => isHollow(part) && shapeOf(part).solids.length === 0);
    const says = first === undefined ? '' : `${first.a.name} and ${first.b.name} stand in one place${first.withTravel ? ' when the front travels' : ''}.`;
    return judgeYes({
      yes: sure.length === 0,
      caution: found.length > 0,
      says: { holds: 'Nothing stands in anything else.', tight: `${says} One of the two shapes is a guess.`, fails: says },
      steps: found.map(({ a, b, depthMm, withTravel, coarse }) => ({ says: `${a.name} into ${b.name}${withTravel ? ', with travel' : ''}${coarse ? ', a shape guessed' : ''}: about`, amount: { value: Number(depthMm.toPrecision(3)), unit: 'mm' as const } })),
      notes: [
        ...(found.length > 0 ? ['Enter the sizes of the two pieces to be sure; slide or turn one of them.'] : []),
        ...shapeless.map(({ name }) => `${name} goes round other pieces, and its shape is not entered: it was not looked at.`),
        ...unplacedNote(ledger, { setup, glass }, ledger.at(`setups/${setup}/camera`) as string),
      ],
    });
  },
});
