import { mateFault } from '../../assembly/mates.ts';
import { rigJoints } from '../../assembly/placing/rigJoints.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Edit, Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { entering } from '../place.ts';

/** Something that could be fixed: in words, and the edit that does it. */
export interface Fixing {
  readonly says: string;
  readonly edit: Edit;
}

const MOST = 200;

/** Everywhere in its build that a piece could be fixed: a free point of its own on a free point of another that mates. */
export function fixingsOf(shoot: Shoot, ledger: Ledger, { setup, glass }: SetupGlass, ref: string): Fixing[] {
  const pieces = setupPieces(ledger, setup, glass);
  const piece = pieces.get(ref);
  if (piece === undefined) return [];
  const taken = takenPoints(ledger, setup, glass);
  const others = [...pieces.values()].filter(({ build, ref: other }) => build === piece.build && other !== ref);
  return freePoints(piece, taken).flatMap(([own, point]) =>
    others.flatMap((other) =>
      freePoints(other, taken).flatMap(([theirs, target]): Fixing[] => {
        if (mateFault(target, point) !== undefined) return [];
        return [{ says: `${pointName(target, theirs)} of ${other.name}, by its ${pointName(point, own)}`, edit: jointEdit(shoot, piece, `${other.id}/${theirs}`, `${piece.id}/${own}`, `${piece.name} on ${other.name}`) }];
      }),
    ),
  ).slice(0, MOST);
}

/** Parts of the kit that would go on a free point of a piece. */
export function additionsTo(shoot: Shoot, ledger: Ledger, { setup, glass }: SetupGlass, ref: string): Fixing[] {
  const piece = setupPieces(ledger, setup, glass).get(ref);
  if (piece === undefined) return [];
  const taken = takenPoints(ledger, setup, glass);
  return freePoints(piece, taken).flatMap(([own, target]) =>
    ledger.keys('kit/parts').flatMap((of): Fixing[] => {
      const part = new PartView(ledger, of);
      const mating = Object.entries((part.read('points') ?? {}) as Readonly<Record<string, Point>>).find(([, point]) => mateFault(target, point) === undefined);
      if (mating === undefined) return [];
      const home = homeOf(piece);
      const id = freshId(of, new Set(ledger.keys(`${home}/pieces`)));
      const says = `${part.name} on the ${pointName(target, own)} of ${piece.name}`;
      const patches = [...entering(shoot, `${home}/pieces/${id}`, { of }), ...jointPatches(shoot, home, id, `${piece.id}/${own}`, `${id}/${mating[0]}`)];
      return [{ says, edit: { says, patches } }];
    }),
  ).slice(0, MOST);
}

function takenPoints(ledger: Ledger, setup: string, glass: string): ReadonlySet<string> {
  return new Set(rigJoints(ledger, setup, glass).joints.flatMap(({ a, b }) => [`${a.ref}/${a.pointId}`, `${b.ref}/${b.pointId}`]));
}

/** Rods hold many clamps; everything else one thing. */
function freePoints({ ref, part }: SetupPiece, taken: ReadonlySet<string>): [string, Point][] {
  const points = (part.read('points') ?? {}) as Readonly<Record<string, Point>>;
  return Object.entries(points).filter(([id, { kind }]) => kind === 'rod' || !taken.has(`${ref}/${id}`));
}

const pointName = ({ name, kind, class: size }: Point, id: string): string => name ?? `${size === undefined ? '' : `${size} `}${kind} (${id.replaceAll('-', ' ')})`;

/** Where a piece stands in the file without its own name: a build or a glass. */
const homeOf = ({ path }: SetupPiece): string => path.replace(/\/pieces\/[^/]+$/, '');

function jointEdit(shoot: Shoot, piece: SetupPiece, a: string, b: string, says: string): Edit {
  return { says, patches: jointPatches(shoot, homeOf(piece), piece.id, a, b) };
}

function jointPatches(shoot: Shoot, home: string, piece: string, a: string, b: string): Patch[] {
  const [kind = '', id = ''] = home.split('/');
  const holder = kind === 'glasses' ? shoot.glasses[id] : shoot.builds[id];
  return entering(shoot, `${home}/joints/${freshId(piece, new Set(Object.keys(holder?.joints ?? {})))}`, { a, b });
}

function freshId(base: string, taken: ReadonlySet<string>): string {
  const short = base.slice(0, 58);
  let at = 2;
  if (!taken.has(short)) return short;
  while (taken.has(`${short}-${at}`)) at += 1;
  return `${short}-${at}`;
}
