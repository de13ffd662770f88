import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';

const ENDS = { joints: ['a', 'b'], lines: ['from', 'to'] } as const;

/** The patches that take pieces out of their build, with every joint and line that ends on one. */
export function takeOff(ledger: Ledger, pieces: readonly SetupPiece[]): Patch[] {
  const removed = pieces.flatMap((piece) => endingOn(ledger, piece));
  const roots = pieces.filter(({ build, id }) => ledger.at(`builds/${build}/root`) === id).map(({ build }) => `builds/${build}/root`);
  return [...new Set([...removed, ...roots, ...pieces.map(({ path }) => path)])].map((path) => ({ op: 'remove', path }));
}

/** How many joints end on a piece, in its build and in the glasses. */
export const jointsOn = (ledger: Ledger, piece: SetupPiece): number => endingOn(ledger, piece).filter((path) => path.split('/')[2] === 'joints').length;

/** The joints and lines that end on a piece, wherever they stand. A glass may call a piece of its own by the same key: such ends are its own. */
function endingOn(ledger: Ledger, { build, id }: SetupPiece): string[] {
  const glasses = ledger.keys('setups').filter((setup) => ledger.at(`setups/${setup}/camera`) === build).flatMap((setup) => (ledger.at(`setups/${setup}/glasses`) ?? []) as readonly string[]);
  const own = new Set([`builds/${build}`, ...glasses.filter((glass) => ledger.at(`glasses/${glass}/pieces/${id}`) === undefined).map((glass) => `glasses/${glass}`)]);
  const all = ['builds', 'glasses'].flatMap((root) => ledger.keys(root).map((assembly) => `${root}/${assembly}`));
  return all.flatMap((path) => (['joints', 'lines'] as const).flatMap((kind) => ledger.keys(`${path}/${kind}`).map((one) => `${path}/${kind}/${one}`).filter((one) => ENDS[kind].some((end) => {
    const [at, piece, far] = (ledger.at(`${one}/${end}`) as string).split('/').toReversed();
    return at !== undefined && piece === id && (far === undefined ? own.has(path) : far === build);
  }))));
}
