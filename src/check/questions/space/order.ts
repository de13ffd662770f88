import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../../assembly/setupPieces.ts';
import { type AssemblyStep, type BlockedScrew, orderOfAssembly } from '../../../assembly/space/orderOfAssembly.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { lengthsMustBeThere } from '../../quantities/lengthsWanted.ts';
import { judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { buildsOf, eachGlass } from '../../subjects.ts';

export const order = question({
  id: 'space.order',
  asks: 'Can it be put together with every screw within reach?',
  kind: 'immediate',
  explains:
    'The rig is taken apart in thought, each piece only when a key has room behind its screws (60 mm, a finger thick); turned round, that is an order of assembly. Where no piece comes off by itself, some come off together and are taken apart ' +
    'on the bench: every screw that a key reaches is undone, from whichever side, until nothing more comes apart. Then what covers the screw is named, and no order is. Knobs turned by hand are asked about under finger room.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: ({ ledger }, { setup, glass }) => {
    if (placeSetup(ledger, setup, glass).places.size < 3) return null;
    const { steps, blocked } = orderOfAssembly(ledger, setup, glass);
    const pieces = setupPieces(ledger, setup, glass);
    const name = (ref: string) => pieces.get(ref)?.name ?? ref;
    const [first, ...more] = blocked.map((one) => coveredWords(one, name));
    if (first === undefined) lengthsMustBeThere(ledger, { setup, glass });
    const builds = buildsOf(ledger, setup).map((build) => ({ build, own: steps.filter(({ ref }) => pieces.get(ref)?.build === build) }));
    return judgeYes({
      yes: first === undefined,
      says: { holds: `It goes together in ${builds[0]?.own.length ?? 0} steps.`, fails: `${first ?? ''}.` },
      steps: first === undefined ? builds.flatMap(({ build, own }, at) => stepWords(own, name, at === 0 ? '' : `${nameOf(ledger, build)}: `)) : more.map((says) => ({ says })),
      notes: first === undefined ? [] : ['No order was found from either side, nor with some pieces put together apart first.'],
    });
  },
});

const coveredWords = ({ by, joint: { joint } }: BlockedScrew, name: (ref: string) => string): string => `${name(by)} covers the screw between ${joint.a.piece.name} and ${joint.b.piece.name}`;
const nameOf = (ledger: Ledger, build: string): string => (ledger.at(`builds/${build}/name`) as string | undefined) ?? build;

/** The steps of one build; a station of one piece goes without saying. */
function stepWords(steps: readonly AssemblyStep[], name: (ref: string) => string, before: string): { says: string }[] {
  if (before !== '' && steps.length < 2) return [];
  return steps.map(({ ref, apart, along }, at) => ({ says: `${before}${at + 1}. ${name(ref)}${apart === true ? ', apart from the rest' : along === undefined ? '' : ` goes on, with ${along.map(name).join(', ')}`}` }));
}
