import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { type BatteryDay, type BatteryEvent, batteryDay, packsOfDay } from '../../quantities/batteryDay.ts';
import { dayPlan } from '../../quantities/dayPlan.ts';
import { chargersFor } from '../../quantities/kitPacks.ts';
import { shootFigure } from '../../quantities/shootFigures.ts';
import { question } from '../../question.ts';

export const day = question({
  id: 'power.day',
  asks: 'Do the packs last till wrap?',
  kind: 'immediate',
  explains:
    'The day is gone through shot by shot: usual loads all the time, packs changed between takes in time for the next, what comes off goes on charge where the day has mains. Setups follow each other, so that the same packs serve each in turn; places that want a pack at once share the stock by what they draw. ' +
    'Hours of the day that the shots do not take are spread before them as time to set up, with everything on.',
  sources: ['arithmetic over run times', 'the rule of changing: common practice'],
  subjects: (ledger) => ledger.keys('days').flatMap((id) => packsOfDay(ledger, id).map(({ part }) => ({ day: id, at: part.name }))),
  ask: (asking, subject) => {
    const { ledger } = asking;
    const pack = packsOfDay(ledger, subject.day).find(({ part }) => part.name === subject.at);
    if (pack === undefined) return null;
    const mains = ledger.at(`days/${subject.day}/mains`) === true;
    const found = batteryDay(asking, subject.day, pack.part.path, mains);
    if (found === undefined || found.hoursWanted === 0) return null;
    if (found.places > found.count) return judgeYes({ yes: false, says: { holds: '', fails: `${found.places} places want a ${pack.part.name} at once; there ${found.count === 1 ? 'is one' : `are ${found.count}`}.` } });
    const has = found.hoursWanted - found.hoursDark + found.hoursLeft;
    const lasts = found.hoursDark <= 0;
    return judgeRatio({
      needs: { amount: { value: found.hoursWanted, unit: 'h' }, from: `${found.places === 1 ? 'on' : `on, in ${found.places} places together`}; ${printNumber(found.wattHours)} Wh` },
      has: { amount: { value: has, unit: 'h' }, from: `${found.count} × ${pack.part.name}${mains ? `, ${found.chargerTurns} times on charge` : ', none charged meanwhile'}` },
      says: {
        holds: `${found.count} of ${pack.part.name} last till wrap, with ${changesText(found.changes)}.`,
        tight: `${found.count} of ${pack.part.name} just last till wrap.`,
        fails: `${found.count} of ${pack.part.name} do not last till wrap: ${hoursDark(found)}.`,
      },
      steps: timeline(ledger, found.events),
      mends: lasts ? [] : mends(asking, subject.day, found, mains),
      notes: notes(asking, subject.day, mains),
    });
  },
});

const changesText = (changes: number): string => (changes === 0 ? 'no change' : changes === 1 ? 'one change' : `${changes} changes`);

/** "2 h and 3 takes without power"; hours of several places are hours without a pack on each, and may be more than the day has. */
function hoursDark({ hoursDark: hours, takesLost, places }: BatteryDay): string {
  const time = printAmount({ value: hours, unit: 'h' });
  const takes = takesLost === 0 ? '' : takesLost === 1 ? 'one take' : `${takesLost} takes`;
  if (places === 1) return `${time}${takes === '' ? '' : ` and ${takes}`} without power`;
  return `its ${places} places are without power for ${time} between them${takes === '' ? '' : `, and ${takes} with them`}`;
}

const MOST_SHOWN = 12;

/** "after 2.3 h, before Along the planks: a pack is changed on Battery plate". */
function timeline(ledger: Ledger, events: readonly BatteryEvent[]): { says: string }[] {
  const shown = events.slice(0, MOST_SHOWN).map(({ atHours, kind, at, shot, offHoursLeft }) => {
    const what = kind === 'change' ? `a pack is changed on ${at}, ${offHoursLeft < 1 / 600 ? 'empty' : `${printNumber(offHoursLeft * 60, 2)} min left in it`}` : kind === 'died in a take' ? `a pack dies in a take on ${at}` : `no full pack is left for ${at}`;
    return { says: `after ${printAmount({ value: atHours, unit: 'h' })}, ${ledger.at(`shots/${shot}/name`) as string}: ${what}` };
  });
  return events.length > MOST_SHOWN ? [...shown, { says: `and ${events.length - MOST_SHOWN} more` }] : shown;
}

/** Beyond this it is another kind of pack that is wanted. */
const MOST_MORE = 8;

const useOf = ({ hoursWanted, hoursDark: dark, hoursLeft }: BatteryDay): number => hoursWanted / Math.max(1e-9, hoursWanted - dark + hoursLeft);

/** Chargers where the day has none running, and how many packs more would do. */
function mends(asking: Asking, dayId: string, found: BatteryDay, mains: boolean): Mend[] {
  const cures: Mend[] = [];
  const { bays } = chargersFor(asking.ledger, found.pack);
  if (!mains && bays > 0) {
    const charged = batteryDay(asking, dayId, found.pack.part.path, true);
    if (charged !== undefined && charged.hoursDark < found.hoursDark) {
      cures.push({ says: 'mains for the chargers all day', edit: { says: 'the day has mains', patches: [{ op: 'add', path: `days/${dayId}/mains`, value: true }] }, use: useOf(charged), costs: 'somebody minds them; not below 0 °C' });
    }
  }
  for (let more = 1; more <= MOST_MORE; more += 1) {
    const tried = batteryDay(asking, dayId, found.pack.part.path, mains, more);
    if (tried === undefined || tried.hoursDark > 0) continue;
    return [...cures, { says: `${more} more of ${found.pack.part.name}`, use: useOf(tried) }];
  }
  return [...cures, { says: 'larger packs, or more turns on a charger', costs: `${MOST_MORE} more of ${found.pack.part.name} would not do` }];
}

function notes(asking: Asking, dayId: string, mains: boolean): string[] {
  const cold = (shootFigure(asking.ledger, `days/${dayId}/temperatureC`)?.value ?? 20) < 0;
  const { overrunHours } = dayPlan(asking, dayId);
  return [
    ...(mains ? ['No charging below 0 °C or unattended.'] : ['The day states no mains, so nothing is charged.']),
    ...(cold ? ['Reckoned with packs as cold as the day; kept warm they last longer.'] : []),
    ...(overrunHours > 0 ? [`The shots take ${printAmount({ value: overrunHours, unit: 'h' })} longer than the day is.`] : []),
  ];
}
