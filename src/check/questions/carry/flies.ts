import { assume } from '../../../shoot/ledger/figures.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { carry } from '../../../standards/assumptions/carry.ts';
import { BAGGAGE_CAUTIONS, CABIN_BAG, HOLD_PIECE } from '../../../standards/baggageRules.ts';
import { CARRIAGE_EDITION } from '../../../standards/carriageLimits.ts';
import { printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import { counted } from '../../counted.ts';
import { cannotJudge, judgeYes } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { inWords } from '../../quantities/buildWeight.ts';
import { type FlightItem, flightKit, flightTools } from '../../quantities/flightKit.ts';
import { type FlightLot, type FlightPlan, caseLift, flightPlan, lotWords, massOf, planFlight } from '../../quantities/flightPlan.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';

export const flies = question<{ readonly day: string }>({
  id: 'carry.flies',
  asks: 'How does the kit fly, and who carries what?',
  kind: 'immediate',
  explains:
    'On days that travel by air the whole kit is shared out: packs into the cabin, as many of each class as a person may carry; then cards, bodies and glass into the cabin while there is room; the rest into cases for the hold, like with like: as few as one person can lift into a car each, as long as no more come with the tickets; else as light as those that come with them can be, or, where they are not enough, as few as can be. Everybody in the crew is taken to travel and to carry. It is done by mass; edges are looked at where shapes are entered, volume is not: foam and air take room too. ' +
    'Cases and bags are assumed to weigh something themselves. Whether the packs may travel at all is asked of the packs. Airlines differ: ask yours, and weigh the cases.',
  sources: [HOLD_PIECE.source, CABIN_BAG.source, BAGGAGE_CAUTIONS.tools.source, CARRIAGE_EDITION, 'common practice'],
  subjects: (ledger) => ledger.keys('days').filter((day) => ledger.at(`days/${day}/flies`) === true).map((day) => ({ day })),
  ask: ({ ledger }) => {
    const plan = flightPlan(ledger);
    if (plan === undefined) return null;
    if (plan.totalG === 0) return cannotJudge(`No part of the kit has a mass entered: ${listed(plan.unweighed.map(({ name }) => name))}.`);
    const { cases, included } = plan;
    const stays = plan.tooHeavy.map(({ name }) => name);
    const snag = snagOf(plan);
    const tickets = plan.people === 1 ? 'one ticket' : `${plan.people} tickets`;
    return judgeYes({
      yes: stays.length === 0 && !plan.freight, caution: snag !== undefined,
      says: {
        holds: 'The kit flies with the baggage that comes with the tickets.',
        tight: snag ?? '',
        fails: plan.freight ? 'The kit is freight, not baggage.' : `Too heavy for any piece of baggage: ${listed(stays)}.`,
      },
      needs: { amount: { value: plan.freight ? plan.atLeast : cases.length, unit: 'count' }, from: casesWords(plan), word: 'cases' },
      has: { amount: { value: included, unit: 'count' }, from: `come with ${tickets}${plan.nobodyEntered ? ', nobody being entered in the crew' : ''} ${origin(assume(ledger, carry.casesEach))}`, word: 'included' },
      steps: steps(plan),
      mends: snag === undefined && stays.length === 0 ? [] : mends(ledger, plan),
      notes: notes(ledger, plan),
    });
  },
});

/** What stands in the way, the worst of it: the title names one thing. */
function snagOf({ inHold, bags, cases, included, oversize }: FlightPlan): string | undefined {
  const over = bags.filter((bag) => bag.over);
  if (over.length > 0) return `The packs alone are more than ${listed(over.map(({ person }) => person))} may carry into the cabin.`;
  if (inHold.length > 0) return `Not all that breaks finds room in the cabin: ${listed(inHold.map(lotWords))} in the hold.`;
  const heavy = cases.filter((one) => one.heavy);
  if (heavy.length > 0) return `Cases heavier than a ticket allows: ${listed(heavy.flatMap(({ lots }) => lots.map(lotWords)))}.`;
  if (cases.length > included) return 'The kit flies with more cases than come with the tickets.';
  return oversize.length === 0 ? undefined : `Larger than a usual piece of baggage: ${listed(oversize.map(({ name }) => name))}.`;
}

const casesWords = ({ cases, atLeast, fewest, freight }: FlightPlan): string => {
  if (freight) return 'at least, by mass';
  if (cases.length > fewest) return `in the hold, the lighter to lift; by mass ${fewest} would do`;
  return cases.length === atLeast ? 'in the hold, by mass; it cannot be fewer' : `in the hold, by mass; perhaps ${atLeast}`;
};

/** All of it, as somebody packs by it. Names hold commas of their own. */
const contents = (lots: readonly FlightLot[]): string => lots.map(lotWords).join(' · ');

function steps({ bags, cases, packsLeft, totalG }: FlightPlan): Step[] {
  return [
    ...packSteps(bags),
    ...bags.map(({ person, lots, massG }) => ({ says: `${person}, in the cabin: ${contents(lots)}`, amount: { value: massG, unit: 'g' as const } })),
    ...cases.map(({ lots, massG }, at) => ({ says: `case ${at + 1}, in the hold: ${contents(lots)}`, amount: { value: massG, unit: 'g' as const } })),
    ...(packsLeft.length === 0 ? [] : [{ says: `with nobody, see the packs: ${contents(packsLeft)}` }]),
    { says: 'the kit without bags and cases', amount: { value: totalG, unit: 'g' } },
  ];
}

/** Packs by class, over all bags; how many each person may carry is in the packs' own answer. */
function packSteps(bags: FlightPlan['bags']): Step[] {
  const counts = new Map<string, number>();
  for (const { of, count } of bags.flatMap(({ lots }) => lots)) {
    const name = of.carriage?.name ?? 'whose energy is not entered';
    if (of.goes === 'pack') counts.set(name, (counts.get(name) ?? 0) + count);
  }
  return [...counts].map(([name, count]) => ({ says: `packs ${name}, all as spares in the cabin`, amount: { value: count, unit: 'count' } }));
}

function mends(ledger: Ledger, plan: FlightPlan): Mend[] {
  const crowded = plan.bags.some(({ over }) => over) || plan.inHold.some(({ of }) => !of.tooLargeForCabin);
  const more = plan.cases.length - plan.included;
  const tickets: Mend[] = more <= 0 ? [] : [{ says: `Book ${counted(more, 'more case')} before the day`, costs: 'dearer at the counter' }];
  return [withoutSpares(ledger, plan), crowded || more > 0 ? oneMore(ledger, plan) : undefined, more > 0 ? heavyCases(ledger, plan) : undefined, ...tickets, byFreight(plan)].filter((mend) => mend !== undefined);
}

/** What is wanted beyond what is plugged in at once. */
const SPARES_WANTED: readonly string[] = ['battery', 'charger', 'media', 'cable'];

function withoutSpares(ledger: Ledger, plan: FlightPlan): Mend | undefined {
  const idle = ({ part, goes, count, used }: FlightItem) => (goes === 'pack' || SPARES_WANTED.includes(part.kind) ? 0 : Math.max(0, count - used));
  const items = flightKit(ledger);
  const left = items.filter((item) => idle(item) > 0).map(({ name }) => name);
  const kept = items.map((item) => ({ ...item, count: item.count - idle(item) })).filter(({ count }) => count > 0);
  const after = planFlight(ledger, { items: kept, caseG: assume(ledger, carry.caseG).value, people: plan.people });
  if (left.length === 0 || !isBetter(after, plan)) return undefined;
  return { says: `Leave at home what no setup uses (${listed(left)}): ${outcome(after)}`, costs: 'no spares of these' };
}

function oneMore(ledger: Ledger, plan: FlightPlan): Mend | undefined {
  const after = planFlight(ledger, { items: flightKit(ledger), caseG: assume(ledger, carry.caseG).value, people: plan.people + 1 });
  return isBetter(after, plan) ? { says: `One more to travel with it: ${outcome(after)}`, costs: 'a ticket' } : undefined;
}

function heavyCases(ledger: Ledger, plan: FlightPlan): Mend | undefined {
  const after = planFlight(ledger, { items: flightKit(ledger), caseG: HOLD_PIECE.mostG, people: plan.people });
  if (after.cases.length >= plan.cases.length) return undefined;
  return { says: `Pack cases of up to ${inWords(HOLD_PIECE.mostG)}: ${outcome(after)}`, costs: 'paid as heavy baggage, and two people to lift each' };
}

function byFreight({ tooHeavy, freight }: FlightPlan): Mend | undefined {
  if (tooHeavy.length === 0 && !freight) return undefined;
  const costs = 'days ahead, with customs papers abroad';
  return { says: freight ? 'Send it as air freight' : `Send ${listed(tooHeavy.map(({ name }) => name))} as air freight, or hire there`, costs };
}

const isBetter = (after: FlightPlan, before: FlightPlan): boolean =>
  after.cases.length - after.included < before.cases.length - before.included || massOf(after.inHold) < massOf(before.inHold) || after.tooHeavy.length < before.tooHeavy.length ||
  after.bags.filter(({ over }) => over).length < before.bags.filter(({ over }) => over).length || (before.freight && !after.freight);

const outcome = ({ cases, included, inHold, atLeast, freight }: FlightPlan): string => {
  if (freight) return `still ${atLeast} cases at least`;
  const glass = inHold.length === 0 ? '' : `, ${listed(inHold.map(lotWords), 3)} in the hold`;
  return `${counted(cases.length, 'case')}, ${included} included${glass}`;
};

function notes(ledger: Ledger, plan: FlightPlan): string[] {
  const items = flightKit(ledger);
  const radios = items.filter(({ part }) => part.has('radio')).map(({ name }) => name);
  const tools = flightTools(ledger);
  return [
    ...(plan.unweighed.length === 0 ? [] : [`Weighs nothing here, and needs room too: ${contents(plan.unweighed.map(lotOf))}.`]),
    ...liftNote(ledger, plan),
    'Shared out by mass: foam and air may want more cases than that.',
    BAGGAGE_CAUTIONS.equipment.says,
    `${BAGGAGE_CAUTIONS.tools.says}${tools.length === 0 ? '' : ` This kit asks for ${listed(tools)}.`}`,
    ...(radios.length === 0 ? [] : [`${BAGGAGE_CAUTIONS.radios.says} Here: ${radios.join(', ')}.`]),
    BAGGAGE_CAUTIONS.fluids.says, BAGGAGE_CAUTIONS.airline.says,
  ];
}

const lotOf = (item: FlightPlan['unweighed'][number]): FlightLot => ({ of: item, eachG: 0, count: item.count });

/** What the heaviest case is to the back of whoever loads the car, and what lighter ones would cost. */
function liftNote(ledger: Ledger, { cases, included, forOnePerson }: FlightPlan): string[] {
  const heaviestG = Math.max(0, ...cases.map(({ massG }) => massG));
  const { index, limitG } = caseLift(ledger, Math.max(1, heaviestG));
  if (heaviestG === 0 || !Number.isFinite(index)) return [];
  const byWhat = 'from the floor into a car (NIOSH lifting equation)';
  if (index <= 1) return [`The heaviest case, ${inWords(heaviestG)}, is within what one person should lift ${byWhat}: ${inWords(limitG)}.`];
  const more = forOnePerson - Math.max(included, cases.length);
  const lighter = forOnePerson <= cases.length ? '' : ` Light enough for one person they would be ${forOnePerson}${more > 0 ? `, ${more} more than ${included >= cases.length ? 'come with the tickets' : 'these'}` : ''}.`;
  const tooHeavy = [...new Set(cases.filter(({ lots, massG }) => lots.length === 1 && lots[0]?.count === 1 && massG > limitG).flatMap(({ lots }) => lots.map(lotWords)))];
  const alone = tooHeavy.length === 0 ? '' : ` Too heavy for one person whatever else is in the case: ${tooHeavy.join(' · ')}.`;
  return [`The heaviest case, ${inWords(heaviestG)}, is ${printNumber(index, 2)} times what one person should lift ${byWhat}: two people.${lighter}${alone}`];
}
