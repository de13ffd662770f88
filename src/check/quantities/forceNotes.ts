import { carriedWords } from '../../assembly/hold/carriedOn.ts';
import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { heldFast } from '../../assembly/hold/underWeight.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { cautionsFor } from './estimateNote.ts';
import { listed } from './listed.ts';
import { unplacedNote } from './unplacedNote.ts';

/** What every answer must say that rests on the forces in a camera build. */
export function forceNotes(ledger: Ledger, { setup, glass }: SetupGlass): string[] {
  const rig = heldFast(ledger, setup, glass);
  const build = ledger.at(`setups/${setup}/camera`) as string;
  return [...cautionsFor(ledger.at(`builds/${build}/purpose`)), ...(rig === undefined ? [] : [...bonded(ledger, { setup, glass }, rig), ...unweighedNote(rig)]), ...unplacedNote(ledger, { setup, glass }, build)];
}

/** Supports that only push are reckoned as if they held. */
function bonded(ledger: Ledger, { setup, glass }: SetupGlass, { springs }: RigNetwork): string[] {
  const supports = springs.flatMap((spring) => (spring !== 'ground' && spring.type.name === 'lens support' ? [carriedWords(ledger, setup, glass, spring.joint)] : []));
  return supports.length === 0 ? [] : [`Only pushes, and is taken to hold as well: ${listed(supports)}.`];
}

const unweighedNote = ({ unweighed }: RigNetwork): string[] => (unweighed.length > 0 ? [`Weighs nothing here: ${listed(unweighed.map(({ name }) => name))}.`] : []);

/** How far the usual stiffness of joints may be out: "stiffness estimated, 0.33 to 3 times". */
export function stiffnessWords(asking: Asking): string {
  const { value, low, high } = asking.assume(hold.stiffness);
  return `stiffness estimated, ${printNumber(low / value, 2)} to ${printNumber(high / value, 2)} times`;
}
