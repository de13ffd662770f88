import { type OpticalPath, opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass, ShotSubject } from '../subjects.ts';

interface Placed {
  /** The piece of the setup that it is part of, `build/piece`. */
  readonly ref?: string;
  readonly name: string;
  /** How far ahead of the front face of a piece of the glass it stands, mm. Throws `NotEntered` for want of a length. */
  readonly aheadOf: (asking: Asking, front: SetupPiece) => number;
}

/** Something ahead of the lens that the light must get through. */
export type Opening =
  | (Placed & { readonly shape: 'box'; readonly widthMm: number; readonly heightMm: number; /** Goes in either way round. */ readonly turnable?: boolean })
  | (Placed & { readonly shape: 'round'; readonly clearMm: number });

/** What sits on the front and whose size is entered: close-up lenses, filters, stages and hood of the box. A focuser is judged with its block. */
export function openingsOf(ledger: Ledger, subject: SetupGlass): Opening[] {
  const path = opticalPath(ledger, subject.setup, subject.glass);
  return [...roundGlass(path), ...boxStages(path), ...filtersIn(path)];
}

function roundGlass(path: OpticalPath): Opening[] {
  const { closeUps, filters } = path;
  const round = (piece: SetupPiece, clearMm: number | undefined): Opening[] => (clearMm === undefined ? [] : [{ shape: 'round', ref: piece.ref, name: piece.name, clearMm, aheadOf: (asking, front) => lengthAhead(asking, path, front, piece) }]);
  return [
    ...closeUps.flatMap((piece) => round(piece, piece.part.figure('closeUp/clearMm')?.value)),
    ...filters.flatMap((piece) => round(piece, piece.part.figure('filter/diameterMm')?.value)),
  ];
}

/** The close-up lens that a shot names, on the outermost front. */
export function closeUpOfShot(ledger: Ledger, subject: ShotSubject): Opening[] {
  const path = opticalPath(ledger, subject.setup, subject.glass);
  const part = new PartView(ledger, ledger.at(`shots/${subject.shot}/diopter`) as string);
  const clearMm = part.figure('closeUp/clearMm')?.value;
  return clearMm === undefined ? [] : [{ shape: 'round', name: part.name, clearMm, aheadOf: (asking, front) => lengthAhead(asking, path, front) }];
}

interface Stage {
  readonly id: string;
  readonly holds: unknown;
}

const stagesOf = ({ part }: SetupPiece): Stage[] => part.ledger.keys(`${part.path}/matteBox/openings`).map((id) => ({ id, holds: part.read(`matteBox/openings/${id}/holds`) }));

function boxStages(path: OpticalPath): Opening[] {
  const box = path.matteBox;
  if (box === undefined) return [];
  return stagesOf(box).map(({ id }) => {
    const at = `matteBox/openings/${id}`;
    return {
      shape: 'box',
      ref: box.ref,
      name: `${(box.part.read(`${at}/name`) as string | undefined) ?? 'opening'} of ${box.name}`,
      widthMm: box.part.figure(`${at}/widthMm`)?.value ?? 0,
      heightMm: box.part.figure(`${at}/heightMm`)?.value ?? 0,
      aheadOf: (asking, front) => lengthAhead(asking, path, front) + asking.figure(box.part, `${at}/aheadOfFrontMm`).value,
    };
  });
}

/** Square filters stand in the first stage of the box that takes their kind. */
function filtersIn(path: OpticalPath): Opening[] {
  const box = path.matteBox;
  if (box === undefined) return [];
  return path.filters.flatMap((piece) => {
    const [width, height] = [piece.part.figure('filter/widthMm'), piece.part.figure('filter/heightMm')];
    const wanted = piece.part.read('filter/kind') === 'polariser' ? 'turning filter' : 'filter';
    const stages = stagesOf(box);
    const stage = stages.find(({ holds }) => holds === wanted) ?? stages.find(({ holds }) => holds === 'filter' || holds === 'turning filter');
    if (width === undefined || height === undefined || stage === undefined) return [];
    const at = `matteBox/openings/${stage.id}/aheadOfFrontMm`;
    return [{ shape: 'box' as const, ref: piece.ref, name: piece.name, widthMm: width.value, heightMm: height.value, turnable: true, aheadOf: (asking: Asking, front: SetupPiece) => lengthAhead(asking, path, front) + asking.figure(box.part, at).value }];
  });
}

/** Barrels between the front face of one piece and the front face of another; of the whole glass where none is named. */
function lengthAhead(asking: Asking, { stack }: OpticalPath, front: SetupPiece, upTo?: SetupPiece): number {
  const from = stack.findIndex(({ ref }) => ref === front.ref) + 1;
  const to = upTo === undefined ? -1 : stack.findIndex(({ ref }) => ref === upTo.ref);
  const between = stack.slice(from, to < 0 ? undefined : to + 1).filter(({ part }) => part.has('focuser') || part.has('block') || part.has('lens'));
  return between.reduce((sum, { part }) => sum + asking.figure(part, 'lengthMm').value, 0);
}
