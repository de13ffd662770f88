import { type Leg, legsOf } from '../../../assembly/lines/picture.ts';
import { videoTrace } from '../../../assembly/lines/videoTrace.ts';
import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import type { Mend } from '../../answer.ts';
import { judgeYes } from '../../judge.ts';
import { setOn } from '../../quantities/lineEdits.ts';
import { darkSentence, pictureName } from '../../quantities/lineWords.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const fed = question({
  id: 'lines.fed',
  asks: 'Does every screen, transmitter and converter get a picture?',
  kind: 'immediate',
  explains:
    'Followed back from each device to the camera, through cables, loop-outs and over the air: is anything plugged in, is the receiver on a net with a transmitter, in its band and its mode, ' +
    'does the way end at a camera and not in a circle. Only the device where the picture is lost is named; what hangs behind it is not asked again.',
  sources: ['common practice'],
  subjects: (ledger) =>
    eachPieceOf(ledger, ({ setup, glass }) => {
      const { into } = videoTrace(ledger, setup, glass);
      return [...[...into.values()].map(({ piece }) => piece), ...screensWithoutInput(setupPieces(ledger, setup, glass), into)];
    }),
  ask: (asking, subject) => {
    const { setup, glass } = withGlass(asking.ledger, subject);
    const { into } = videoTrace(asking.ledger, setup, glass);
    const leg = into.get(subject.piece);
    if (leg === undefined) {
      const [blind] = screensWithoutInput(setupPieces(asking.ledger, setup, glass), into).filter(({ ref }) => ref === subject.piece);
      return blind === undefined ? null : judgeYes({ yes: false, says: { holds: '', fails: `${blind.name} has no input for a picture.` } });
    }
    const { dark, picture, piece } = leg;
    if (picture !== undefined) {
      return judgeYes({ yes: true, says: { holds: `${piece.name} gets a picture: ${pictureName(picture)}.`, fails: '' }, steps: [{ says: wayOf(leg) }] });
    }
    if (dark === undefined || !isHere(leg, piece)) return null;
    return judgeYes({ yes: false, says: { holds: '', fails: darkSentence(dark) }, mends: mends(leg) });
  },
});

/** Screens that no picture can be plugged into; the camera's own show its picture without a line. */
const screensWithoutInput = (pieces: ReadonlyMap<string, SetupPiece>, into: ReadonlyMap<string, Leg>): SetupPiece[] =>
  [...pieces.values()].filter(({ ref, part }) => !into.has(ref) && part.has('screen') && !part.has('body'));

/** "A body → Picture transmitter → over the air → Receiver A"; the middle of a very long way is only counted. */
function wayOf(leg: Leg): string {
  const legs = legsOf(leg);
  const long = legs.length > LONGEST_SHOWN;
  const names = (some: readonly Leg[]) => some.flatMap((one) => (one.kind === 'air' ? ['over the air', one.piece.name] : [one.piece.name]));
  const shown = long ? [...names(legs.slice(0, 4)), `${legs.length - 8} stages`, ...names(legs.slice(-4))] : names(legs);
  return shown.filter((name, at) => name !== shown[at - 1]).join(' → ');
}

const LONGEST_SHOWN = 24;

/** Whether the picture is lost at this piece, and not before it. */
function isHere({ dark }: Leg, piece: SetupPiece): boolean {
  switch (dark?.kind) {
    case 'unfed': case 'circle': case 'passes nothing on': case 'cannot make': return dark.port.piece.ref === piece.ref;
    case 'no net': case 'no transmitter': return dark.piece.ref === piece.ref;
    case 'no mode set': return dark.piece.ref !== piece.ref;
    case 'mode unknown to the receiver': case 'set to another mode': case 'another band': case 'too many frames': return dark.receiver.ref === piece.ref;
    default: return false;
  }
}

function mends({ dark }: Leg): Mend[] {
  if (dark?.kind !== 'set to another mode') return [];
  const { receiver, transmitter, mode } = dark;
  const name = (transmitter.part.read(`radio/modes/${mode}/name`) ?? mode) as string;
  return [{ says: `set ${receiver.name} to ${name}`, edit: setOn(receiver, 'mode', mode, `${receiver.name} to ${name}`) }];
}
