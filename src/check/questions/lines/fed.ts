import { type Dark, type Leg, legsOf } from '../../../assembly/lines/picture.ts';
import { videoTrace } from '../../../assembly/lines/videoTrace.ts';
import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import type { Step } from '../../answer.ts';
import { judgeYes } from '../../judge.ts';
import { pictureName } from '../../quantities/lineWords.ts';
import { linkMends } from '../../quantities/linkMends.ts';
import { listed } from '../../quantities/listed.ts';
import { type PictureLoss, isToldElsewhere, lastLit, lossSentence, pictureLosses } from '../../quantities/pictureLoss.ts';
import { pictureMends } from '../../quantities/pictureMends.ts';
import { eachWired, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import type { SetupGlass } from '../../subjects.ts';

export const fed = question({
  id: 'lines.fed',
  asks: 'Does every screen, transmitter and converter get a picture?',
  kind: 'immediate',
  explains:
    'Followed back from each device to the camera, through cables, loop-outs and over the air: is anything plugged in, is the receiver on a net with a transmitter, in its band and its mode, ' +
    'does the way end at a camera and not in a circle. Each cause is named once, at the first device that goes without, with what stays dark behind it; a loop-out passes on its own input and no other. ' +
    'An output that is dead, a plug that does not fit and a format that is refused are named by the questions on those.',
  sources: ['common practice'],
  subjects: (ledger) =>
    eachWired(ledger).flatMap(({ subject, whole }) => {
      const lost = pictureLosses(ledger, whole);
      const known = pictureLosses(ledger, withGlass(ledger, { setup: whole.setup }));
      return askedPieces(ledger, whole)
        .filter(({ ref, fromGlass }) => subject.glass === undefined || fromGlass || (lost.has(ref) && !known.has(ref)))
        .map(({ ref }) => ({ ...subject, piece: ref }));
    }),
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const trace = videoTrace(asking.ledger, whole.setup, whole.glass);
    const leg = trace.into.get(subject.piece);
    if (leg === undefined) {
      const [blind] = askedPieces(asking.ledger, whole).filter(({ ref }) => ref === subject.piece);
      return blind === undefined ? null : judgeYes({ yes: false, says: { holds: '', fails: `${blind.name} has no input for a picture.` } });
    }
    const { picture, piece } = leg;
    if (picture !== undefined) {
      return judgeYes({ yes: true, says: { holds: `${piece.name} gets a picture: ${pictureName(picture)}.`, fails: '' }, steps: [{ says: wayOf(leg) }] });
    }
    const loss = pictureLosses(asking.ledger, whole).get(subject.piece);
    if (loss === undefined || isToldElsewhere(loss.dark)) return null;
    const reached = lastLit(trace, leg);
    return judgeYes({
      yes: false,
      says: { holds: '', fails: lossSentence(loss) },
      steps: [
        ...(reached === undefined ? [] : [{ says: `the picture gets as far as ${reached.piece.name}${reached.before === undefined ? '' : `: ${wayOf(reached)}`}` }]),
        ...darkBehind(loss),
      ],
      mends: [...linkMends(asking.ledger, whole, loss.dark, leg.before?.picture?.frameRateHz), ...(isOnTheAir(loss.dark) ? [] : pictureMends(asking.ledger, trace, loss))],
    });
  },
});

/** The screens that stay dark with it; where there is none, what else does. */
function darkBehind({ behind }: PictureLoss): Step[] {
  const screens = behind.filter(({ part }) => part.has('screen'));
  const names = (screens.length > 0 ? screens : behind).map(({ name }) => name);
  return names.length === 0 ? [] : [{ says: `behind it stay dark: ${listed(names)}` }];
}

/** Everything that takes a picture in, and the screens that cannot. */
function askedPieces(ledger: Ledger, { setup, glass }: SetupGlass): SetupPiece[] {
  const { into } = videoTrace(ledger, setup, glass);
  return [...[...into.values()].map(({ piece }) => piece), ...screensWithoutInput(setupPieces(ledger, setup, glass), into)];
}

const isOnTheAir = ({ kind }: Dark): boolean => kind !== 'unfed' && kind !== 'circle' && kind !== 'passes nothing on' && kind !== 'cannot make';

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
