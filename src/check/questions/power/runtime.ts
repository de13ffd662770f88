import { printAmount, printNumber } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { power as assumed } from '../../../standards/assumptions/power.ts';
import { judgeRatio } from '../../judge.ts';
import { batteryRun } from '../../quantities/batteryRun.ts';
import { shotTimes } from '../../quantities/dayPlan.ts';
import { shotsOf } from '../../quantities/shootFigures.ts';
import { eachSupply, supplyOf } from '../../quantities/supplies.ts';
import { withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import type { PackState } from '../../quantities/packState.ts';
import { kitPacks } from '../../quantities/kitPacks.ts';
import { packState } from '../../quantities/packState.ts';
import { runtime as hoursOf } from '../../../calc/power/runtime.ts';

export const runtime = question({
  id: 'power.runtime',
  asks: 'How long does each pack run, and does it last a whole shot?',
  kind: 'immediate',
  explains:
    'From full to cut-off under load, at the coldest of the setup\'s days: the voltage falls with the charge, the pack\'s resistance takes its part, and constant-power devices draw the more for it. It ends at the pack\'s cut-off, or when the first device drops out. ' +
    'Held against the longest shot with all its takes, so that changes fall between shots; shorter than that is tight, shorter than one take fails. Usual loads all the time: a day with long waits on standby runs longer.',
  sources: ['constant power from an open-circuit voltage behind a resistance', 'cold: the pack\'s own figures or wide estimates'],
  subjects: eachSupply,
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const supply = supplyOf(asking, whole, subject.piece);
    if (supply === undefined) return null;
    const run = batteryRun(asking, whole, supply);
    if (run.loadW <= 0) return null;
    const wanted = longestShot(asking, whole.setup);
    const { pack } = run;
    const needs = { amount: { value: wanted.hours, unit: 'h' as const }, from: wanted.from };
    const has = { amount: { value: run.hours, unit: 'h' as const }, from: `${pack.part.name} at ${printAmount({ value: pack.temperatureC, unit: '°C' })}, ${printNumber(run.loadW)} W` };
    const judged = judgeRatio({
      needs, has,
      says: {
        holds: `A ${pack.part.name} on ${supply.piece.name} lasts ${hoursText(run.hours)}.`,
        tight: `A ${pack.part.name} on ${supply.piece.name} lasts ${hoursText(run.hours)}: just one long shot.`,
        fails: `A ${pack.part.name} on ${supply.piece.name} lasts only ${hoursText(run.hours)}.`,
      },
      steps: [
        { says: 'drawn by the devices', amount: { value: run.loadW - run.lossW, unit: 'W' } },
        { says: 'lost in cables and regulators', amount: { value: run.lossW, unit: 'W' } },
        { says: run.endedBy === undefined ? 'ends at the pack\'s cut-off' : `ends when ${run.endedBy.name} drops out, at the pack`, amount: { value: run.endV, unit: 'V' } },
        { says: 'charge left then', amount: { value: run.endSoc, unit: 'share' } },
      ],
      mends: run.hours >= wanted.hours ? [] : largerPacks(asking, pack, run, wanted.hours),
      notes: [...pack.assumed, ...(pack.temperatureC < 0 ? ['Packs kept warm until they go on last longer. No charging below 0 °C.'] : [])],
    });
    return softened(judged, run.hours, wanted.takeHours);
  },
});

/** A pack that outlasts a take can be changed between takes: that is a nuisance, no failure. */
function softened(judged: Judgement, hours: number, takeHours: number): Judgement {
  if (judged.verdict !== 'fails' || hours < takeHours) return judged;
  return { ...judged, verdict: 'tight', says: judged.says.replace(/\.$/, ', and must be changed between takes.') };
}

const hoursText = (hours: number): string => (hours === Infinity ? 'without end' : hours >= 1 ? `${printNumber(hours, 2)} h` : `${Math.round(hours * 60)} min`);

/** The longest shot of a setup with all its takes, and its take. */
function longestShot(asking: Asking, setup: string): { hours: number; takeHours: number; from: string } {
  const times = shotsOf(asking.ledger, setup).map((shot) => ({ ...shotTimes(asking, shot), name: asking.ledger.at(`shots/${shot}/name`) as string }));
  const longest = times.toSorted((a, b) => b.hours - a.hours)[0];
  if (longest !== undefined) return { hours: longest.hours, takeHours: Math.max(...times.map(({ takeHours }) => takeHours)), from: `longest shot with its takes, ${longest.name}` };
  const [takes, take, reset] = [assumed.takes, assumed.takeMin, assumed.resetMin].map((one) => asking.assume(one).value);
  const takeHours = (take ?? 2) / 60;
  return { hours: (takes ?? 1) * (takeHours + (reset ?? 5) / 60), takeHours, from: 'a shot with its takes (assumed)' };
}

/** Larger packs of the kit on the same mount. */
function largerPacks(asking: Asking, now: PackState, run: ReturnType<typeof batteryRun>, wantedHours: number): Mend[] {
  return kitPacks(asking.ledger)
    .filter(({ part, mounts }) => part.path !== now.part.path && mounts.some((mount) => kitPacks(asking.ledger).find((one) => one.part.path === now.part.path)?.mounts.includes(mount)))
    .flatMap(({ part }): Mend[] => {
      const other = packState(asking, part, now.temperatureC);
      if (other.fullV > now.fullV * 1.05 || other.wattHours <= now.wattHours) return [];
      const { hours } = hoursOf({ openCircuitV: other.openCircuitV.map(([soc, volts]): [number, number] => [soc, volts]), capacityAh: other.capacityAh, internalOhm: other.internalOhm, loadW: run.loadW, cutoffV: Math.max(other.cutoffV, run.endedBy === undefined ? 0 : run.endV) });
      return [{ says: `${part.name} in its place: ${hoursText(hours)}`, use: wantedHours / hours }];
    })
    .slice(0, 2);
}
