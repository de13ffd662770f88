import { judgeRatio, judgeYes } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { batteryRun } from '../../quantities/batteryRun.ts';
import { changeDark } from '../../quantities/changeDark.ts';
import { dayPlan, shotTimes } from '../../quantities/dayPlan.ts';
import { daysOf, shotsOf } from '../../quantities/shootFigures.ts';
import { eachSupply, supplyOf } from '../../quantities/supplies.ts';
import { withGlass } from '../../quantities/wired.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';
import { power as assumed } from '../../../standards/assumptions/power.ts';
import { printAmount } from '../../../units/print.ts';
import type { Asking } from '../../Asking.ts';

export const change = question({
  id: 'power.change',
  asks: 'What goes dark when a pack is changed, and is it back before the next take?',
  kind: 'immediate',
  explains:
    'Without hot swap everything on the pack goes off: hands need their time, then devices start, a transmitter listens for radar and links again, a motor that forgot its map is calibrated on the lens. The slowest of them counts, against the shortest time between takes. ' +
    'Asked where a pack does not last the whole of the setup\'s longest day.',
  sources: ['the devices\' own figures', 'common practice'],
  subjects: eachSupply,
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const supply = supplyOf(asking, whole, subject.piece);
    if (supply === undefined || batteryRun(asking, whole, supply).hours >= hoursOn(asking, whole.setup)) return null;
    const { seconds, dark, steps } = changeDark(asking, whole, supply);
    if (seconds === 0) return judgeYes({ yes: true, says: { holds: `Packs on ${supply.piece.name} are changed without anything going dark.`, fails: '' }, steps });
    const between = shortestReset(asking, whole.setup);
    const names = listed(dark.map(({ name }) => name));
    return judgeRatio({
      needs: { amount: { value: seconds, unit: 's' }, from: 'from pack off to everything back' },
      has: { amount: { value: between.seconds, unit: 's' }, from: between.from },
      says: {
        holds: `A change on ${supply.piece.name} darkens ${names}, and all are back between takes.`,
        fails: `A change on ${supply.piece.name} darkens ${names} for longer than the time between takes.`,
      },
      steps,
      notes: ['Change between setups, and say so before: video off first, then the pack.'],
    });
  },
});

/** Hours that the setup is on, on its longest day. */
function hoursOn(asking: Asking, setup: string): number {
  const hours = daysOf(asking.ledger, setup).map((day) => dayPlan(asking, day).stretches.reduce((sum, one) => (one.setup === setup ? sum + one.hours : sum), 0));
  return hours.length === 0 ? asking.assume(assumed.workHours).value : Math.max(...hours);
}

function shortestReset(asking: Asking, setup: string): { seconds: number; from: string } {
  const stated = shotsOf(asking.ledger, setup).map((shot) => ({ hours: shotTimes(asking, shot).resetHours, name: asking.ledger.at(`shots/${shot}/name`) as string }));
  const shortest = stated.toSorted((a, b) => a.hours - b.hours)[0];
  if (shortest === undefined) {
    const usual = asking.assume(assumed.resetMin);
    return { seconds: usual.value * 60, from: `${printAmount({ value: usual.value, unit: 'min' })} between takes ${origin(usual)}` };
  }
  return { seconds: shortest.hours * 3600, from: `shortest time between takes, ${shortest.name}` };
}
