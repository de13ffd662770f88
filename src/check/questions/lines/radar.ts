import { nets } from '../../../assembly/lines/nets.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { RADAR_AVOIDANCE, RADIO_RULES_CAUTION } from '../../../standards/radioRules.ts';
import { printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { setOn } from '../../quantities/lineEdits.ts';
import { type Permission, type Region, permission, permissions } from '../../quantities/permission.ts';
import { channelsOf } from '../../quantities/radioSpan.ts';
import { sendersOf } from '../../quantities/radios.ts';
import { shootFigure, shotsOf } from '../../quantities/shootFigures.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const radar = question({
  id: 'lines.radar',
  asks: 'If radar forces the link off its channel, is it back before the next take?',
  kind: 'immediate',
  explains:
    `On channels shared with radar a transmitter must leave within ${RADAR_AVOIDANCE.leaveWithinS} s when it hears one, and listen on the new channel, if that is shared too, before it sends: ` +
    `${RADAR_AVOIDANCE.listenS} s, near weather radar in the EU ${RADAR_AVOIDANCE.listenWeatherRadarS} s. Then the receivers must find it again. The time off the air is held against the shortest time between takes. ` +
    'Asked where the channel that is set, or every channel that may be used, is shared with radar.',
  sources: ['EN 301 893', '47 CFR 15.407'],
  subjects: (ledger) => eachPieceOf(ledger, (whole) => sendersOf(ledger, whole)),
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const piece = sendersOf(asking.ledger, whole).find(({ ref }) => ref === subject.piece);
    const region = asking.ledger.at('needs/region') as Region | undefined;
    if (piece === undefined || region === undefined) return null;
    const usable = permissions(piece, region).filter(({ rule }) => rule !== undefined);
    if (usable.length === 0 || usable.some(({ listenS }) => listenS === 0)) return null;
    const listenS = Math.max(...usable.map((one) => one.listenS), piece.part.figure('radio/radarCheckS')?.value ?? 0);
    const listeners = nets(asking.ledger, whole.setup, whole.glass).find(({ transmitters }) => transmitters.includes(piece))?.receivers ?? [];
    const relinkS = Math.max(0, ...[piece, ...listeners].map(({ part }) => part.figure('radio/relinkS')?.value ?? 0));
    const between = shortestReset(asking, whole.setup);
    return judgeRatio({
      needs: { amount: { value: listenS + relinkS, unit: 's' }, from: `${printNumber(listenS)} s of listening, ${printNumber(relinkS)} s to link again` },
      has: { amount: { value: between.minutes * 60, unit: 's' }, from: `shortest time between takes, ${between.name}` },
      says: {
        holds: `If radar moves ${piece.name}, the picture is back between takes.`,
        fails: `If radar moves ${piece.name}, the picture is away longer than the time between takes of ${between.name}.`,
      },
      mends: withoutRadar(piece, region, relinkS / (between.minutes * 60)),
      notes: [RADIO_RULES_CAUTION],
    });
  },
});

function shortestReset(asking: Asking, setup: string): { minutes: number; name: string } {
  const stated = shotsOf(asking.ledger, setup).flatMap((shot) => {
    const reset = shootFigure(asking.ledger, `shots/${shot}/resetMin`);
    return reset === undefined ? [] : { minutes: reset.value, name: asking.ledger.at(`shots/${shot}/name`) as string };
  });
  const shortest = stated.toSorted((a, b) => a.minutes - b.minutes)[0];
  if (shortest === undefined) throw new NotEntered([{ path: 'shots', says: 'the time between takes of a shot in this setup' }]);
  return shortest;
}

function withoutRadar(piece: SetupPiece, region: Region, afterUse: number): Mend[] {
  const free: Permission | undefined = channelsOf(piece).map((channel) => permission(piece, region, channel)).find(({ rule, listenS }) => rule !== undefined && listenS === 0);
  if (free === undefined) return [];
  return [{
    says: `channel ${free.channel}, where no radar is minded`,
    edit: setOn(piece, 'channel', free.channel, `${piece.name} to channel ${free.channel}`),
    use: afterUse,
    ...(free.rule?.indoorsOnly === true ? { costs: 'indoors only' } : {}),
  }];
}
