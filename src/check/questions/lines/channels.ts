import { type SetupPiece, pieceSetting } from '../../../assembly/setupPieces.ts';
import { spansOverlap } from '../../../standards/radioChannels.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { setOn } from '../../quantities/lineEdits.ts';
import { channelsOf, radioSpan } from '../../quantities/radioSpan.ts';
import { RADIO_CAUTION, sendersOf } from '../../quantities/radios.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const channels = question({
  id: 'lines.channels',
  asks: 'Do the radios keep out of each other\'s channels?',
  kind: 'immediate',
  explains:
    'Every transmitter of a setup takes up a channel as wide as its mode; two that overlap disturb each other, however good each link is alone. Asked of each transmitter that has another in its band. ' +
    'Channels of strangers on the location are not known here: look before the first take.',
  sources: ['IEEE 802.11 and 802.15.4 channel plans (from memory)', 'common practice'],
  subjects: (ledger) => eachPieceOf(ledger, (whole) => sendersOf(ledger, whole)),
  ask: (asking, subject) => {
    const senders = sendersOf(asking.ledger, withGlass(asking.ledger, subject));
    const own = senders.find(({ ref }) => ref === subject.piece);
    if (own === undefined) return null;
    const others = senders.filter((other) => other !== own && sameBand(own, other));
    if (others.length === 0) return null;
    const span = spanOf(asking, own);
    const hit = others.find((other) => spansOverlap(span, spanOf(asking, other)));
    return judgeYes({
      yes: hit === undefined,
      says: { holds: `${own.name} keeps clear of ${others.map(({ name }) => name).join(' and ')}.`, fails: `${own.name} and ${hit?.name ?? ''} send on overlapping channels.` },
      steps: [own, ...others].map((one) => {
        const { lowMHz, highMHz } = spanOf(asking, one);
        return { says: `${one.name}: ${lowMHz} to ${highMHz} MHz` };
      }),
      mends: hit === undefined ? [] : freeChannels(asking, own, others),
      notes: [RADIO_CAUTION],
    });
  },
});

const sameBand = (a: SetupPiece, b: SetupPiece): boolean => {
  const [first, second] = [a, b].map(({ part }) => part.figure('radio/bandMHz')?.value ?? 5500);
  return first !== undefined && second !== undefined && first > 4000 === second > 4000;
};

function spanOf(asking: Asking, piece: SetupPiece) {
  const channel = asking.entered<number>(`${piece.path}/channel`, `the channel of ${piece.name}`);
  const span = radioSpan(piece);
  if (span === undefined) throw new NotEntered([{ path: `${piece.path}/channel`, says: `a channel of ${piece.name} that is in the plan of its band (${channel} is not)` }]);
  return span;
}

function freeChannels(asking: Asking, own: SetupPiece, others: readonly SetupPiece[]): Mend[] {
  const free = channelsOf(own).find((channel) => {
    const span = radioSpan(own, channel);
    return span !== undefined && others.every((other) => !spansOverlap(span, spanOf(asking, other)));
  });
  if (free === undefined || free === pieceSetting(own, 'channel')) return [];
  return [{ says: `channel ${free} on ${own.name}`, edit: setOn(own, 'channel', free, `${own.name} to channel ${free}`) }];
}
