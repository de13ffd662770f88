import { nets, radioMode } from '../../../assembly/lines/nets.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { judgeMargin } from '../../judge.ts';
import { type LinkMargin, linkMargin } from '../../quantities/linkMargin.ts';
import { RADIO_CAUTION } from '../../quantities/radios.ts';
import { shootFigure } from '../../quantities/shootFigures.ts';
import { printAmount } from '../../../units/print.ts';
import { wiredAs } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import { type SetupGlass, type ShotSubject, eachShot } from '../../subjects.ts';
import type { Mend } from '../../answer.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { setOn } from '../../quantities/lineEdits.ts';

interface LinkSubject extends ShotSubject {
  readonly piece: string;
}

export const link = question({
  id: 'lines.link',
  asks: 'Does the radio picture hold at the distance of the shot?',
  kind: 'immediate',
  explains:
    'Best from a walk: the distance at which this receiver broke up tells what loss the link bears; the shot\'s distance, the people and walls in the way and water under the path take from it. ' +
    'Without a walk it is reckoned from power, aerials and the sensitivity of the mode over free space in the open and the coefficient of a house indoors; such sums are out by ± 10 dB, so "good" asks for that much to spare. ' +
    'On the scale 1 is nothing left; the wanted margin is a tenth of the scale.',
  sources: ['ITU-R P.525', 'ITU-R P.1238', 'losses of people and walls: estimates'],
  subjects: (ledger): LinkSubject[] =>
    eachShot(ledger).flatMap((shot) => (ledger.at(`shots/${shot.shot}/linkDistanceM`) === undefined ? [] : receiversIn(ledger, shot).map(({ ref }) => ({ ...shot, piece: ref })))),
  ask: (asking, subject) => {
    const { shot } = subject;
    const { setup, glass } = wiredAs(asking.ledger, subject.setup, subject.glass);
    const net = nets(asking.ledger, setup, glass).find(({ receivers }) => receivers.some(({ ref }) => ref === subject.piece));
    const receiver = net?.receivers.find(({ ref }) => ref === subject.piece);
    const transmitter = net?.transmitters[0];
    const mode = transmitter === undefined ? undefined : radioMode(transmitter);
    const distance = shootFigure(asking.ledger, `shots/${shot}/linkDistanceM`);
    if (receiver === undefined || transmitter === undefined || mode === undefined || distance === undefined) return null;
    const found = linkMargin(asking, { transmitter, receiver, mode, shot, distanceM: distance.value });
    const at = printAmount({ value: distance.value, unit: 'm' });
    return judgeMargin({
      marginDb: found.marginDb,
      spanDb: 10 * found.wantedDb,
      needs: { amount: { value: found.wantedDb, unit: 'dB' }, from: found.walked ? 'margin wanted of a walked link' : 'doubt of an estimated link' },
      has: { amount: { value: found.marginDb, unit: 'dB' }, from: `${found.from}, at ${at}` },
      says: {
        holds: `${receiver.name} holds the picture of ${transmitter.name} at ${at}.`,
        tight: `${receiver.name} may hold the picture of ${transmitter.name} at ${at}, with little to spare.`,
        fails: found.walked ? `${receiver.name} loses the picture of ${transmitter.name} at ${at}.` : `By the estimate ${receiver.name} loses the picture of ${transmitter.name} at ${at}; walk it.`,
      },
      steps: found.steps,
      mends: found.marginDb >= found.wantedDb ? [] : [nearer(found, distance.value), ...otherModes(transmitter, receiver, mode, found)].flatMap((mend) => mend ?? []),
      notes: [RADIO_CAUTION],
    });
  },
});

/** Receivers of picture only: a lost picture is seen at once, a control link has its own warning. */
const receiversIn = (ledger: Ledger, shot: ShotSubject): SetupPiece[] =>
  netsOf(ledger, wiredAs(ledger, shot.setup, shot.glass)).flatMap(({ carries, receivers, transmitters }) => (carries === 'video' && transmitters.length > 0 ? receivers : []));

const netsOf = (ledger: Ledger, { setup, glass }: SetupGlass) => nets(ledger, setup, glass);

const useAt = (marginDb: number, { wantedDb }: LinkMargin): number => Math.max(0, 1 - marginDb / (10 * wantedDb));

function nearer(found: LinkMargin, distanceM: number): Mend | undefined {
  const withinM = distanceM * 10 ** ((found.marginDb - found.wantedDb) / found.coefficient);
  if (withinM < 1) return undefined;
  return { says: `keep the receiver within ${printAmount({ value: withinM, unit: 'm' })}`, use: useAt(found.wantedDb, found) };
}

/** A mode that hears weaker signals is worth the difference. */
function otherModes(transmitter: SetupPiece, receiver: SetupPiece, mode: string, found: LinkMargin): Mend[] {
  const sensitivity = (one: string) => receiver.part.figure(`radio/modes/${one}/sensitivityDbm`)?.value;
  const now = sensitivity(mode);
  return Object.entries(receiver.part.facet('radio')?.modes ?? {}).flatMap(([one, { name }]) => {
    const other = sensitivity(one);
    if (one === mode || now === undefined || other === undefined || other >= now) return [];
    const says = `the mode ${name} on ${transmitter.name} and every receiver`;
    return { says, edit: setOn(transmitter, 'mode', one, says), use: useAt(found.marginDb + now - other, found), costs: 'its delay is another' };
  });
}
