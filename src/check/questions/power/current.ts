import { type PowerNode, type Supply, powerTrace } from '../../../assembly/lines/powerTrace.ts';
import type { WiredLine } from '../../../assembly/lines/wiring.ts';
import { CONTINUOUS_SHARE_OF_FUSE, wireGauge } from '../../../standards/wireGauges.ts';
import { printAmount } from '../../../units/print.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { cableEdit, cablesThatFit } from '../../quantities/kitCables.ts';
import { lineName, socketName } from '../../quantities/lineWords.ts';
import { flowBelow, packOn, supplyOf } from '../../quantities/supplies.ts';
import { type LineSubject, eachLine, lineOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import type { SetupGlass } from '../../subjects.ts';
import type { Mend } from '../../answer.ts';

export const current = question({
  id: 'power.current',
  asks: 'Do tap, cable and plug carry the current?',
  kind: 'immediate',
  explains:
    'Devices with regulators draw constant power: the lower the voltage, the more current. So each line is reckoned at the end of the pack with every load at its peak, against the rating of the outlet (all lines from it together), the cable, and the socket where it passes power on; ' +
    'and at the usual load against 80 % of a fuse. Where a cable states no rating, what its gauge is usually run at counts. Home-made cables: right gauge, right polarity, fused at the source, checked by somebody qualified.',
  sources: ['the parts\' own ratings', 'continuous current to 80 % of a fuse: common practice', 'gauges: common practice, ASTM B258'],
  subjects: (ledger) => eachLine(ledger, 'power'),
  ask: (asking, subject) => {
    const line = lineOf(asking, subject);
    const whole = withGlass(asking.ledger, subject);
    const found = nodeOf(asking, whole, subject);
    if (found === undefined || found.supply.kind === 'mains') return null;
    const { supply, at } = found;
    const lowV = packOn(asking, whole.setup, supply).cutoffV;
    const [peak, usual] = (['peakW', 'typicalW'] as const).map((load) => flowBelow(supply, lowV, load));
    // What no voltage can feed is found by the question on the pack.
    if (peak === undefined || usual === undefined || peak.collapses) return null;
    const [peakA, usualA] = [peak.amps[at] as number, usual.amps[at] as number];
    const fromOutlet = (amps: Float64Array) => supply.nodes.reduce((sum, node, place) => (node.line?.from.key === line.from.key ? sum + (amps[place] as number) : sum), 0);
    const limits = limitsOf(supply, supply.nodes[at], { peakA, outletPeakA: fromOutlet(peak.amps), outletUsualA: fromOutlet(usual.amps) });
    const [worst, ...others] = limits.toSorted((a, b) => b.amps / b.limitA - a.amps / a.limitA);
    if (worst === undefined || peakA === 0) return null;
    const name = lineName(line);
    return judgeRatio({
      needs: { amount: { value: worst.amps, unit: 'A' }, from: `${worst.load} at ${printAmount({ value: lowV, unit: 'V' })}, the end of the pack` },
      has: { amount: { value: worst.limitA, unit: 'A' }, from: worst.says },
      says: {
        holds: `The line from ${name} carries its current.`,
        tight: `The line from ${name} only just carries its current.`,
        fails: `Too much current from ${name} for ${worst.short}.`,
      },
      steps: [{ says: 'usual current', amount: { value: usualA, unit: 'A' } }, ...others.map(({ says, limitA }) => ({ says, amount: { value: limitA, unit: 'A' as const } }))],
      mends: worst.amps > worst.limitA && worst.isCable ? otherCables(asking, whole, line, peakA) : [],
      notes: worst.amps > worst.limitA ? ['Fuse at the source; a cable over its rating gets hot where it is hidden.'] : [],
    });
  },
});

interface Limit {
  readonly amps: number;
  readonly limitA: number;
  readonly says: string;
  readonly short: string;
  readonly load: string;
  readonly isCable?: true;
}

function limitsOf(supply: Supply, node: PowerNode | undefined, amps: { peakA: number; outletPeakA: number; outletUsualA: number }): Limit[] {
  return node?.line === undefined ? [] : [...outletLimits(node.line, amps), ...cableLimits(node.line, amps.peakA), ...socketLimits(supply, node, node.line, amps.peakA)];
}

const PEAK = 'all loads at their peak';
const ratingOf = ({ piece, id }: WiredLine['from'], key: 'maxA' | 'fuseA'): number | undefined => piece.part.figure(`ports/${id}/power/${key}`)?.value;

function outletLimits({ from }: WiredLine, { outletPeakA, outletUsualA }: { outletPeakA: number; outletUsualA: number }): Limit[] {
  const [ratedA, fuseA] = [ratingOf(from, 'maxA'), ratingOf(from, 'fuseA')];
  const outlet = socketName(from);
  const limits: Limit[] = [];
  if (ratedA !== undefined) limits.push({ amps: outletPeakA, limitA: ratedA, says: `rating of the ${outlet}`, short: `the ${outlet}`, load: PEAK });
  if (fuseA !== undefined) {
    const says = `80 % of the ${printAmount({ value: fuseA, unit: 'A' })} fuse of the ${outlet}`;
    limits.push({ amps: outletUsualA, limitA: fuseA * CONTINUOUS_SHARE_OF_FUSE.value, says, short: `the fuse of the ${outlet}`, load: 'usual load' });
  }
  return limits;
}

/** A cable's own rating; without one, what its gauge is usually run at. */
function cableLimits({ cable }: WiredLine, peakA: number): Limit[] {
  if (cable === undefined) return [];
  const ratedA = cable.figure('cable/maxA')?.value;
  const gauge = cable.facet('cable')?.awg;
  const limitA = ratedA ?? (gauge === undefined ? undefined : wireGauge(gauge)?.practiceA.high);
  if (limitA === undefined) return [];
  return [{ amps: peakA, limitA, says: ratedA === undefined ? `usual for gauge ${gauge ?? ''} of ${cable.name}` : `rating of ${cable.name}`, short: cable.name, load: PEAK, isCable: true }];
}

/** What a device draws for itself its own socket is made for; what it passes on is another matter. */
function socketLimits(supply: Supply, node: PowerNode, { to }: WiredLine, peakA: number): Limit[] {
  const ratedA = ratingOf(to, 'maxA');
  const passesOn = supply.nodes.some(({ parent }) => supply.nodes[parent] === node);
  return ratedA === undefined || !passesOn ? [] : [{ amps: peakA, limitA: ratedA, says: `rating of the ${socketName(to)}`, short: `the ${socketName(to)}`, load: PEAK }];
}

function otherCables(asking: Asking, { setup, glass }: SetupGlass, line: WiredLine, peakA: number): Mend[] {
  return cablesThatFit(asking.ledger, powerTrace(asking.ledger, setup, glass).wiring, line).flatMap((cable): Mend[] => {
    const limitA = cable.figure('cable/maxA')?.value ?? wireGauge(cable.facet('cable')?.awg ?? Number.NaN)?.practiceA.high;
    return limitA !== undefined && peakA <= limitA ? [{ says: `${cable.name} instead`, edit: cableEdit(line, cable), use: peakA / limitA }] : [];
  }).slice(0, 2);
}

function nodeOf(asking: Asking, whole: SetupGlass, { line }: LineSubject): { supply: Supply; at: number } | undefined {
  const place = powerTrace(asking.ledger, whole.setup, whole.glass).byLine.get(line);
  const supply = place === undefined ? undefined : supplyOf(asking, whole, place.supply.piece.ref);
  return supply === undefined || place === undefined ? undefined : { supply, at: place.at };
}
