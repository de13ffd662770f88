import { pieceSetting, setupPieces } from '../../../assembly/setupPieces.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import type { Judgement, Mend } from '../../answer.ts';
import { describeFigure } from '../../describeFigure.ts';
import { judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { type PieceSubject, eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';

export const bays = question<PieceSubject>({
  id: 'power.bays',
  asks: 'Do the packs go on their plate?',
  kind: 'immediate',
  explains: 'A plate holds as many packs as it has bays, and only those of its own mount. More packs are for the bag, not for the plate: they count in the kit. A pack that states no mount is taken to be made for the plate it is put on.',
  sources: ['common practice'],
  subjects: (ledger) => eachPieceOf(ledger, ({ setup, glass }) => [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.part.has('batteryPlate') && packsOn(piece).length > 0)),
  ask: (asking, subject) => {
    const { setup, glass } = withGlass(asking.ledger, subject);
    const piece = setupPieces(asking.ledger, setup, glass).get(subject.piece);
    if (piece === undefined) return null;
    const packs = packsOn(piece).map((id) => new PartView(asking.ledger, id));
    return strangers(piece, packs) ?? room(piece, packs.length);
  },
});

const packsOn = (piece: SetupPiece): readonly string[] => pieceSetting(piece, 'packs') ?? [];

/** Packs of another mount. */
function strangers(piece: SetupPiece, packs: readonly PartView[]): Judgement | undefined {
  const mount = piece.part.read('batteryPlate/mount') as string;
  const other = packs.map((pack) => ({ pack, own: pack.read('pack/mount') as string | undefined })).find(({ own }) => own !== undefined && own !== mount);
  return other === undefined ? undefined : judgeYes({ yes: false, says: { holds: '', fails: `${other.pack.name} has the mount ${other.own}; ${piece.name} takes ${mount}.` } });
}

function room(piece: SetupPiece, wanted: number): Judgement {
  const stated = piece.part.read('batteryPlate/packs') as number | undefined;
  if (stated === undefined && wanted > 1) throw new NotEntered([describeFigure(piece.part, 'batteryPlate/packs')]);
  const there = stated ?? 1;
  const count = (packs: number): string => (packs === 1 ? 'one pack' : `${packs} packs`);
  return judgeYes({
    yes: wanted <= there,
    says: { holds: `${piece.name} holds ${count(wanted)}.`, fails: `${count(wanted)} cannot be on ${piece.name}: it has ${there === 1 ? 'one bay' : `${there} bays`}.` },
    needs: { amount: { value: wanted, unit: 'count' }, from: 'packs named on it' },
    has: { amount: { value: there, unit: 'count' }, from: stated === undefined ? 'a plate holds one at least' : `bays of ${piece.name}` },
    mends: wanted <= there ? [] : [firstOnes(piece, there, count)],
  });
}

function firstOnes(piece: SetupPiece, there: number, count: (packs: number) => string): Mend {
  const says = `${count(there)} on ${piece.name}`;
  return { says: `${says}, the others in the bag`, edit: { says, patches: [{ op: 'replace', path: `${piece.path}/packs`, value: packsOn(piece).slice(0, there) }] }, costs: 'one more change on the day' };
}
