import { carriedWords } from '../../assembly/hold/carriedOn.ts';
import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { heldFast } from '../../assembly/hold/underWeight.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { cautionsFor } from './estimateNote.ts';
import { listed } from './listed.ts';
import { nothingBears } from './nothingBears.ts';
import { unplacedNote } from './unplacedNote.ts';

/** What every answer must say that rests on the forces in a camera build. */
export function forceNotes(ledger: Ledger, { setup, glass }: SetupGlass): string[] {
  const rig = heldFast(ledger, setup, glass);
  const build = ledger.at(`setups/${setup}/camera`) as string;
  return [...cautionsFor(ledger.at(`builds/${build}/purpose`)), ...(rig === undefined ? [] : [...heldByWhat(ledger, { setup, glass }, build, rig), ...bonded(ledger, { setup, glass }, rig), ...unweighedNote(rig)]), ...unplacedNote(ledger, { setup, glass }, build)];
}

/** Where its purpose asks for a carrier that is not there. */
function heldByWhat(ledger: Ledger, { setup, glass }: SetupGlass, build: string, { stands }: RigNetwork): string[] {
  const missing = nothingBears(ledger, build, [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build));
  return missing === undefined ? [] : [`Reckoned ${stands.says}, though it ${missing.finding}`];
}

/** Supports that only push are reckoned as if they held. */
function bonded(ledger: Ledger, { setup, glass }: SetupGlass, { springs }: RigNetwork): string[] {
  const supports = springs.flatMap((spring) => (spring !== 'ground' && spring.type.name === 'lens support' ? [carriedWords(ledger, setup, glass, spring.joint)] : []));
  return supports.length === 0 ? [] : [`${listed(supports)}: ${supports.length === 1 ? 'this support only pushes up' : 'these supports only push up'}; reckoned as if ${supports.length === 1 ? 'it' : 'they'} held down too.`];
}

const unweighedNote = ({ unweighed }: RigNetwork): string[] => (unweighed.length > 0 ? [`Weighs nothing here: ${listed(unweighed.map(({ name }) => name))}.`] : []);

/** How far the usual stiffness of joints may be out: "stiffness estimated, 0.33 to 3 times". */
export function stiffnessWords(asking: Asking): string {
  const { value, low, high } = asking.assume(hold.stiffness);
  return `stiffness estimated, ${printNumber(low / value, 2)} to ${printNumber(high / value, 2)} times`;
}
