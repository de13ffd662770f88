import { nets } from '../../../assembly/lines/nets.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';

export const receivers = question({
  id: 'lines.receivers',
  asks: 'Does each transmitter serve all its receivers, and alone?',
  kind: 'immediate',
  explains: 'A transmitter pairs with so many receivers and no more, and two transmitters on one net are two pictures for one receiver. Counted over all builds and stations that are live in the setup.',
  sources: ['common practice'],
  subjects: (ledger) => eachPieceOf(ledger, ({ setup, glass }) => nets(ledger, setup, glass).flatMap(({ transmitters, receivers }) => (receivers.length === 0 ? [] : transmitters))),
  ask: (asking, subject) => {
    const { setup, glass } = withGlass(asking.ledger, subject);
    const net = nets(asking.ledger, setup, glass).find(({ transmitters }) => transmitters.some(({ ref }) => ref === subject.piece));
    const own = net?.transmitters.find(({ ref }) => ref === subject.piece);
    if (net === undefined || own === undefined) return null;
    const [first] = net.transmitters;
    if (first !== undefined && first !== own) {
      return judgeYes({ yes: false, says: { holds: '', fails: `${own.name} and ${first.name} send on the same net: no receiver can tell whose picture it gets.` } });
    }
    const listening = net.receivers.filter(({ ref }) => ref !== own.ref);
    const limit = own.part.figure('radio/maxReceivers');
    if (limit === undefined && listening.length <= 1) return judgeYes({ yes: true, says: { holds: `${own.name} serves ${listening[0]?.name ?? 'no receiver'}.`, fails: '' } });
    const most = limit ?? asking.figure(own.part, 'radio/maxReceivers');
    return judgeRatio({
      needs: { amount: { value: listening.length, unit: 'count' }, from: listed(listening.map(({ name }) => name)) },
      has: { amount: { value: most.value, unit: 'count' }, from: `receivers of ${own.name}` },
      says: { holds: listening.length === 1 ? `${own.name} serves its receiver.` : `${own.name} serves its ${listening.length} receivers.`, fails: `${own.name} serves ${most.value} receivers; ${listening.length} are on its net.` },
      goodUpTo: 1,
    });
  },
});
