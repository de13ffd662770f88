import * as z from 'zod';
import { calculator } from '../calculator.ts';
import { between, flag, inputs, nonNegative, positive, text, whole } from '../inputs.ts';
import { curveInput } from './curveInput.ts';
import { simulateDay, type DayOfPacks } from './day/simulateDay.ts';

const packKind = z.strictObject({
  name: text('name of the pack; several of a kind are numbered'),
  count: whole(1, 'count', 'how many of these there are').max(1000),
  openCircuitV: curveInput,
  capacityAh: positive('Ah', 'charge from full to empty at the temperature of the day'),
  internalOhm: nonNegative('ohm', 'resistance, leads included, at the temperature of the day'),
  cutoffV: nonNegative('V', 'loaded voltage at which the pack or the device shuts off'),
  charge: between(0, 1, 'share', 'state of charge in the morning').default(1),
  chargeHours: positive('h', 'time on the charger from empty to full').optional(),
});

const segment = z.strictObject({
  hours: positive('h', 'how long it lasts').max(1000),
  loadW: nonNegative('W', 'power at the pack; 0 for off'),
  take: flag('a take: no pack is changed'),
  chargerOn: flag('the charger has mains').default(true),
});

/** A day on battery packs: when each change comes, what is left in the pack that comes off, how long it is dark, and what fails. */
export const dayOfPacks = calculator(
  {
    name: 'power.dayOfPacks',
    sentence: 'The day of a camera or station on one pack at a time: changes outside takes, charger turns, and where it goes dark.',
    inputs: inputs({
      packs: z.array(packKind).min(1).max(1000).readonly().meta({ unit: '', description: 'the packs there are, alike or mixed' }),
      segments: z.array(segment).min(1).max(10_000).readonly().meta({ unit: '',
        description: 'the day in order: stretches of one load, takes and the time between' }),
      darkPerChangeS: nonNegative('s', 'from pack off to picture back at a change: hands, boot, link, motor map; 0 with hot swap').max(86_400),
      reserveMin: nonNegative('min', 'running time that must be left in a pack at the end of a take').max(1440),
      chargerBays: whole(0, 'count', 'packs that charge at once; 0 for no charger').max(1000),
    }),
    results: {
      events: 'changes, packs that died in a take, and times with no pack left: at which hour, hours left in the pack taken off, minutes dark',
      changes: 'count',
      darkMin: 'min, all times without power that was wanted',
      takesLost: 'count of takes in which it went dark',
      chargerTurns: 'count of times a pack went on charge',
      packsUsed: 'count of packs that were on at some time',
      hoursLeftAtWrap: 'h that all packs together could go on at the last load; null: for ever, there was none',
    },
    formula:
      'Packs discharge as in power.runtime. A pack is changed as late as the takes allow: between takes, in time for the next, when it would not ' +
      'reach the end of the next takes with the reserve and another lasts longer. The one that lasts longest comes on. Charging is counted as even',
    source: 'Arithmetic over power.runtime; the rule of changing is common practice. No charging below 0 °C, and none unwatched',
    examples: [
      {
        given: {
          packs: [{ name: 'pack', count: 3, openCircuitV: [[0, 10], [1, 10]], capacityAh: 10, internalOhm: 0, cutoffV: 5 }],
          segments: [{ hours: 4, loadW: 50, take: false }], darkPerChangeS: 0, reserveMin: 0, chargerBays: 0,
        },
        gives: { changes: '1', darkMin: '0', takesLost: '0', packsUsed: '2', hoursLeftAtWrap: '2.000' },
        source: 'derived: 100 Wh at 50 W last 2 h; two packs are used up by 4 h, one is whole',
      },
    ],
  },
  (given): DayOfPacks => simulateDay(given),
);
