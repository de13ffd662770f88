import { videoTrace } from '../../../assembly/lines/videoTrace.ts';
import { pieceSetting } from '../../../assembly/setupPieces.ts';
import type { Mend } from '../../answer.ts';
import { judgeYes } from '../../judge.ts';
import { squeezeOf } from '../../quantities/squeezeOf.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const desqueeze = question({
  id: 'lines.desqueeze',
  asks: 'Is the picture de-squeezed only once on its way?',
  kind: 'immediate',
  explains:
    'Bodies, transmitters and converters can de-squeeze, and so can the screen. Twice, and faces are twice as wide; and what behind a de-squeezing device is recorded or framed on is no longer the picture as shot. ' +
    'Asked of every screen whose picture comes already de-squeezed; whether a screen that must do it itself can, is asked under sight.',
  sources: ['common practice'],
  subjects: (ledger) => eachPieceOf(ledger, ({ setup, glass }) => [...videoTrace(ledger, setup, glass).into.values()].map(({ piece }) => piece).filter(({ part }) => part.has('screen'))),
  ask: (asking, subject) => {
    const { setup, glass } = withGlass(asking.ledger, subject);
    const leg = videoTrace(asking.ledger, setup, glass).into.get(subject.piece);
    if (leg?.picture === undefined || leg.desqueezedBy.length === 0) return null;
    const { piece, desqueezedBy } = leg;
    const own = pieceSetting(piece, 'squeeze');
    const alsoHere = own !== undefined && own !== 1;
    const squeezed = squeezeOf(asking, { setup, glass }).value !== 1;
    const names = [...desqueezedBy.map(({ name }) => name), ...(alsoHere ? [piece.name] : [])];
    const once = names.length === 1 && squeezed;
    return judgeYes({
      yes: once,
      says: {
        holds: `${names[0] ?? ''} de-squeezes the picture for ${piece.name}, nothing else does.`,
        fails: squeezed ? `The picture on ${piece.name} is de-squeezed ${names.length === 2 ? 'twice' : `${names.length} times`}: by ${names.join(' and ')}.` : `${names.join(' and ')} stretches a picture that was not squeezed.`,
      },
      mends: once || !alsoHere ? [] : [off(piece.path, piece.name)],
    });
  },
});

const off = (path: string, name: string): Mend => ({ says: `switch de-squeeze off on ${name}`, edit: { says: `de-squeeze off on ${name}`, patches: [{ op: 'remove', path: `${path}/squeeze` }] } });
