import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../../assembly/setupPieces.ts';
import { orderOfAssembly } from '../../../assembly/space/orderOfAssembly.ts';
import { lengthsMustBeThere } from '../../quantities/lengthsWanted.ts';
import { judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const order = question({
  id: 'space.order',
  asks: 'Can it be put together with every screw within reach?',
  kind: 'immediate',
  explains:
    'The rig is taken apart in thought, piece by piece, each only when a key has room behind its screws (60 mm, a finger thick); turned round, that is an order of assembly. Where no piece can come off, the screw that is covered and what covers it are named. Knobs turned by hand are asked about under finger room.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: ({ ledger }, { setup, glass }) => {
    if (placeSetup(ledger, setup, glass).places.size < 3) return null;
    const { steps, blocked } = orderOfAssembly(ledger, setup, glass);
    const pieces = setupPieces(ledger, setup, glass);
    const name = (ref: string) => pieces.get(ref)?.name ?? ref;
    const first = blocked[0];
    if (first === undefined) lengthsMustBeThere(ledger, { setup, glass });
    return judgeYes({
      yes: first === undefined,
      says: {
        holds: `It goes together in ${steps.length} steps.`,
        fails: first === undefined ? '' : `${name(first.by)} covers the screw between ${first.joint.joint.a.piece.name} and ${first.joint.joint.b.piece.name}.`,
      },
      steps: steps.map(({ ref }, at) => ({ says: `${at + 1}. ${name(ref)}` })),
    });
  },
});
