import { printAmount } from '../../../units/print.ts';
import { cannotJudge, judgeRatio, judgeYes } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { flowBelow, eachSupply, packOn, supplyOf } from '../../quantities/supplies.ts';
import { withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const pack = question({
  id: 'power.pack',
  asks: 'Can the pack give what all its devices draw together?',
  kind: 'immediate',
  explains:
    'The sum of all currents below a pack, with every load at its peak, at the end of its charge, against the highest current the pack is made for. On a hot-swap plate one pack must carry all of it while the other is changed. ' +
    'Where the loads are more than any voltage can push through the cables, nothing starts.',
  sources: ['the pack\'s own rating', 'Ohm\'s law for constant-power loads'],
  subjects: eachSupply,
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const supply = supplyOf(asking, whole, subject.piece);
    if (supply === undefined) return null;
    const state = packOn(asking, whole.setup, supply);
    const flow = flowBelow(supply, state.cutoffV, 'peakW');
    const atFull = flow.collapses ? flowBelow(supply, state.fullV, 'peakW') : flow;
    if (atFull.collapses) return judgeYes({ yes: false, says: { holds: '', fails: `What hangs on ${supply.piece.name} is more than its cables can carry from ${state.part.name}.` } });
    if (flow.collapses) return cannotJudge(`At the end of ${state.part.name} no voltage feeds all that hangs on ${supply.piece.name} at once.`);
    const most = state.maxA ?? asking.figure(state.part, 'pack/maxA');
    return judgeRatio({
      needs: { amount: { value: flow.sourceA, unit: 'A' }, from: `${supply.nodes.filter(({ draw }) => draw !== undefined).length} devices, all at their peak, at ${printAmount({ value: state.cutoffV, unit: 'V' })}` },
      has: { amount: { value: most.value, unit: 'A' }, from: `highest current of ${state.part.name} ${origin(most)}` },
      says: {
        holds: `${state.part.name} gives what hangs on ${supply.piece.name}.`,
        tight: `${state.part.name} only just gives what hangs on ${supply.piece.name}.`,
        fails: `${state.part.name} is overloaded by what hangs on ${supply.piece.name}.`,
      },
      steps: supply.nodes.flatMap(({ draw, piece }) => (draw === undefined || draw.peakW === 0 ? [] : { says: `${piece.name} at its peak`, amount: { value: draw.peakW, unit: 'W' } })),
    });
  },
});
