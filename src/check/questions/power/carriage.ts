import { pack as energyOf } from '../../../calc/power/pack.ts';
import { CARRIAGE_EDITION, CARRIAGE_OPEN, carriageClass } from '../../../standards/carriageLimits.ts';
import type { PartView } from '../../../shoot/ledger/PartView.ts';
import { judgeYes } from '../../judge.ts';
import { countOf } from '../../quantities/kitCables.ts';
import { kitPacks } from '../../quantities/kitPacks.ts';
import { question } from '../../question.ts';

export const carriage = question({
  id: 'power.carriage',
  asks: 'May the packs travel by air?',
  kind: 'immediate',
  explains:
    'On days that travel by air every pack of the kit is put into its class by volts times ampere-hours as marked, and its number held against what one person may carry, times the crew. Packs with outlets of their own may count as power banks, of which fewer are allowed: the rules are open, ask the airline. ' +
    'Airlines and carriers may be stricter; damaged packs do not travel.',
  sources: [CARRIAGE_EDITION],
  subjects: (ledger) => ledger.keys('days').filter((day) => ledger.at(`days/${day}/flies`) === true).flatMap((day) => kitPacks(ledger).map(({ part }) => ({ day, at: part.name }))),
  ask: (asking, subject) => {
    const pack = kitPacks(asking.ledger).find(({ part }) => part.name === subject.at)?.part;
    if (pack === undefined) return null;
    const { nominalV, capacityAh } = asking.figures(pack, { nominalV: 'pack/nominalV', capacityAh: 'pack/capacityAh' });
    const { wattHours } = energyOf({ nominalV: nominalV.value, capacityAh: capacityAh.value });
    const limit = carriageClass(wattHours);
    const people = Math.max(1, asking.ledger.keys('crew').length);
    const count = countOf(pack);
    const mayCarry = limit.spares * people;
    const bank = hasOutlets(pack);
    const bankLimit = CARRIAGE_OPEN.powerBanks.mostEach * people;
    const open = bank && count > bankLimit;
    return judgeYes({
      yes: count <= mayCarry,
      caution: limit.approval || bank,
      says: {
        holds: `${pack.name} may travel in the cabin.`,
        tight: limit.approval ? `${pack.name} travels only with the approval of the airline.` : `${pack.name} may travel in the cabin; its outlets may make it a power bank.`,
        fails: limit.spares === 0 ? `${pack.name} may not travel with a passenger.` : `${count} of ${pack.name} are more than the crew may carry.`,
      },
      needs: { amount: { value: count, unit: 'count' }, from: `packs of ${wattHours.toFixed(2)} Wh`, word: 'packs' },
      has: { amount: { value: mayCarry, unit: 'count' }, from: `${limit.spares} a person, ${people} in the crew; class ${limit.name}`, word: 'allowed' },
      mends: count > mayCarry && mayCarry > 0 ? [{ says: `leave ${count - mayCarry} behind, or send them as declared cargo` }] : [],
      notes: [limit.says, ...(bank ? [CARRIAGE_OPEN.powerBanks.says] : []), ...(open ? [`As power banks the crew could carry ${bankLimit}.`] : []), `By ${CARRIAGE_EDITION}; airline and carrier decide. Damaged packs do not travel.`],
    });
  },
});

/** A pack with sockets of its own that give a supply, beside its plate. */
function hasOutlets(pack: PartView): boolean {
  if (pack.read('pack/outlets') === true) return true;
  const ports = Object.values((pack.read('ports') ?? {}) as Readonly<Record<string, { kind: string; way: string }>>);
  return ports.some(({ kind, way }) => kind === 'power' && way !== 'in');
}
