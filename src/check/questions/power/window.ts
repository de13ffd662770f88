import { power as assumed } from '../../../standards/assumptions/power.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeShare } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { describeFigure } from '../../describeFigure.ts';
import { cableEdit, cablesThatFit } from '../../quantities/kitCables.ts';
import { socAtRest } from '../../quantities/packState.ts';
import { dropsOutAt, flowBelow, isRegulated, lowestV, packOn, supplyOf } from '../../quantities/supplies.ts';
import { type PieceSubject, eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import { type Supply, powerTrace } from '../../../assembly/lines/powerTrace.ts';
import { loopOf } from '../../../assembly/lines/cableLoop.ts';
import type { SetupGlass } from '../../subjects.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';

export const window = question({
  id: 'power.window',
  asks: 'Is the voltage at each device enough till the pack is empty?',
  kind: 'immediate',
  explains:
    'At the end of the pack, cold, with every load at its peak at once, after the drop in each cable and plug, the voltage at the device must still be what it takes. Where it is not, the device drops out while charge is left: the share that can be used till then is the answer. ' +
    'All peaks at once is the worst case; a start-up peak of one device alone asks less. A regulator on the way makes the voltage its own.',
  sources: ['ASTM B258, IEC 60028: resistance of the cable', 'Ohm\'s law for constant-power loads', 'contacts and cold: estimates'],
  subjects: (ledger) => eachPieceOf(ledger, ({ setup, glass }) => fedPieces(ledger, { setup, glass })),
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const found = nodeOf(asking, whole, subject);
    if (found === undefined || isRegulated(found.supply, found.at)) return null;
    const { supply, at } = found;
    const node = supply.nodes[at];
    if (node?.line === undefined) return null;
    const low = lowestV(node);
    if (low === undefined) throw new NotEntered([describeFigure(node.piece.part, `ports/${node.line.to.id}/power/lowV`)]);
    const pack = packOn(asking, whole.setup, supply);
    const end = flowBelow(supply, pack.cutoffV, 'peakW');
    const endV = end.collapses ? 0 : (end.volts[at] as number);
    if (endV >= low.value) {
      return judgeRatio({
        needs: { amount: { value: low.value, unit: 'V' }, from: `least that ${node.piece.name} takes ${origin(low)}` },
        has: { amount: { value: endV, unit: 'V' }, from: `at the end of ${pack.part.name}, all loads at their peak` },
        says: { holds: `${node.piece.name} runs to the end of ${pack.part.name}.`, fails: '' },
        steps: [{ says: 'the pack ends at', amount: { value: pack.cutoffV, unit: 'V' } }, { says: `lost on the way, last in ${node.loop.says}`, amount: { value: pack.cutoffV - endV, unit: 'V' } }],
        goodUpTo: 1,
      });
    }
    return early(asking, { whole, supply, at, lowV: low.value, endV });
  },
});

interface Early {
  readonly whole: SetupGlass;
  readonly supply: Supply;
  readonly at: number;
  readonly lowV: number;
  readonly endV: number;
}

/** The device drops out while charge is left. */
function early(asking: Asking, given: Early): Judgement {
  const { whole, supply, at, lowV, endV } = given;
  const pack = packOn(asking, whole.setup, supply);
  const node = supply.nodes[at];
  const wished = asking.assume(assumed.usableCharge);
  const usable = usableShare(asking, whole, supply, at);
  const percent = printAmount({ value: 1 - usable, unit: 'share' });
  const name = node?.piece.name ?? '';
  return judgeShare({
    got: usable,
    wished: wished.value,
    needs: { amount: { value: wished.value, unit: 'share' }, from: `of ${pack.part.name} to be usable ${origin(wished)}` },
    has: { amount: { value: usable, unit: 'share' }, from: `until peak load pulls ${name} to ${printAmount({ value: lowV, unit: 'V' })}` },
    says: {
      holds: `${name} drops out shortly before ${pack.part.name} is empty.`,
      tight: `${name} drops out with ${percent} left in ${pack.part.name}.`,
      fails: usable <= 0 ? `${name} does not run on ${pack.part.name} at peak load.` : `${name} drops out with ${percent} left in ${pack.part.name}.`,
    },
    steps: [
      { says: 'the pack ends at', amount: { value: pack.cutoffV, unit: 'V' } },
      { says: `at ${name} then, all loads at their peak`, amount: { value: endV, unit: 'V' } },
      { says: `it takes at least`, amount: { value: lowV, unit: 'V' } },
    ],
    mends: thicker(asking, given, wished.value),
  });
}

/** Charge used until the device's lowest voltage is reached at peak load: the voltage at rest is then higher by what the pack itself loses. */
function usableShare(asking: Asking, whole: SetupGlass, supply: Supply, at: number): number {
  const pack = packOn(asking, whole.setup, supply);
  const sourceV = dropsOutAt(supply, at, 'peakW');
  if (sourceV === undefined) return 1;
  const { sourceA, collapses } = flowBelow(supply, sourceV, 'peakW');
  return collapses ? 0 : 1 - socAtRest(pack, sourceV + sourceA * pack.internalOhm);
}

/** Thicker or shorter cables of the kit in place of the last one, where they help enough to be told. */
function thicker(asking: Asking, { whole, supply, at }: Early, wished: number): Mend[] {
  const line = supply.nodes[at]?.line;
  if (line === undefined) return [];
  const now = usableShare(asking, whole, supply, at);
  return cablesThatFit(asking.ledger, powerTrace(asking.ledger, whole.setup, whole.glass).wiring, line).flatMap((cable): Mend[] => {
    const loop = loopOf(asking.ledger, { ...line, cable });
    const better = { ...supply, nodes: supply.nodes.map((one, place) => (place === at ? { ...one, loop } : one)) };
    const share = usableShare(asking, whole, better, at);
    return share > now + 0.02 ? [{ says: `${cable.name} instead: ${printAmount({ value: share, unit: 'share' })} usable`, edit: cableEdit(line, cable), use: (1 - share) / (1 - wished) }] : [];
  }).toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0)).slice(0, 2);
}

const fedPieces = (ledger: Ledger, { setup, glass }: SetupGlass) =>
  powerTrace(ledger, setup, glass).supplies.flatMap(({ kind, nodes }) => (kind === 'mains' ? [] : nodes.filter(({ line, draw }) => line !== undefined && draw !== undefined).map(({ piece }) => piece)));

function nodeOf(asking: Asking, whole: SetupGlass, { piece }: PieceSubject): { supply: Supply; at: number } | undefined {
  const place = powerTrace(asking.ledger, whole.setup, whole.glass).byPiece.get(piece);
  const supply = place === undefined ? undefined : supplyOf(asking, whole, place.supply.piece.ref);
  // What its voltage does not suit at all is found by the question on the plug.
  return supply === undefined || place === undefined || supply.nodes[place.at]?.draw === undefined ? undefined : { supply, at: place.at };
}
