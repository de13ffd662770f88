import { type ControlBreak, controlPaths } from '../../../assembly/lines/controlTrace.ts';
import { judgeYes } from '../../judge.ts';
import { lineName } from '../../quantities/lineWords.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const control = question({
  id: 'lines.control',
  asks: 'Does a hand reach every motor?',
  kind: 'immediate',
  explains: 'Followed back from each motor, through cables and over the air, to the wheel in somebody\'s hand: sockets, protocol, net, mode and band. Where it breaks is named.',
  sources: ['common practice'],
  subjects: (ledger) => eachPieceOf(ledger, ({ setup, glass }) => controlPaths(ledger, setup, glass).map(({ motor }) => motor)),
  ask: (asking, subject) => {
    const { setup, glass } = withGlass(asking.ledger, subject);
    const path = controlPaths(asking.ledger, setup, glass).find(({ motor }) => motor.ref === subject.piece);
    if (path === undefined) return null;
    const { motor, hand, legs, broken } = path;
    return judgeYes({
      yes: broken === undefined,
      says: { holds: `${hand?.name ?? ''} turns ${motor.name}.`, fails: broken === undefined ? '' : sentence(broken, motor.name) },
      steps: broken === undefined ? [{ says: legs.map(({ piece, kind }) => (kind === 'air' ? `over the air → ${piece.name}` : piece.name)).join(' → ') }] : [],
      notes: ['Fingers, hair and cables clear when motors calibrate.'],
    });
  },
});

function sentence(broken: ControlBreak, motor: string): string {
  if (broken.kind === 'protocol') return `${lineName(broken.line)}: the two ends speak different protocols.`;
  const { piece } = broken;
  switch (broken.kind) {
    case 'not connected': return piece.name === motor ? `Nothing controls ${motor}: no control cable is plugged in.` : `Nothing reaches ${piece.name}, which should control ${motor}.`;
    case 'no net': return `${piece.name} is on no radio net, so no hand reaches ${motor}.`;
    case 'no transmitter': return `No hand unit sends on the net of ${piece.name}.`;
    case 'no mode set': return `${piece.name} has several modes and none is set.`;
    case 'circle': return `The control lines run in a circle through ${piece.name}.`;
    case 'other mode': return `${piece.name} and ${broken.transmitter.name} are not in the same mode.`;
    default: return `${piece.name} and ${broken.transmitter.name} work in different bands.`;
  }
}
