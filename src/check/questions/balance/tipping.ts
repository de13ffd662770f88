import { weightN } from '../../../calc/mechanics/gravity.ts';
import { carrierKind, goesWith } from '../../../assembly/hold/carriers.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Mend, Side } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { allInBalance } from '../../quantities/allWeighed.ts';
import { isCamera, usesOf } from '../../quantities/buildsInUse.ts';
import { ESTIMATE } from '../../quantities/estimateNote.ts';
import { listed } from '../../quantities/listed.ts';
import { type Standing, legsOf, standingOf } from '../../quantities/standing.ts';
import { type Pushes, type TipCase, ballastFor, pushesAtMost, pushesOn, slopeWhateverWeighed, stanceOf, tipCases } from '../../quantities/tipOver.ts';
import { NOTHING_MUCH, windSays } from '../../quantities/windOn.ts';
import { question } from '../../question.ts';
import { type SetupGlass, buildsOf, eachSetup, glassesOf } from '../../subjects.ts';

/** A camera build in each setup, with the glass that tips it most easily; a station once. */
interface TippingSubject {
  readonly setup?: string;
  readonly build: string;
}

export const tipping = question<TippingSubject>({
  id: 'balance.tipping',
  asks: 'Does it stay on its feet?',
  kind: 'immediate',
  explains:
    'Legs and stands with all that is on them, against three things, each by itself: somebody who walks into the topmost cable; the strongest gust of the days on which it stands outdoors, on the outline of what is placed, from the worst side; a slope. ' +
    'The push that tips it is the weight times the distance of its centre inside the worst edge of the feet, over the height of the push; on a slope it tips where the centre comes over that edge. Sandbags count where they bear on the feet. ' +
    'On hard ground: on sand, gravel and ramps it tips sooner. The camera is taken level, as it is placed; panned, the worst edge counts all round. Pieces without a place are taken to sit on top of the legs. What the wind does to the legs themselves counts as far as their shape is entered. Legs in a build for the shoulder, the hands or a vehicle are carried as weight, and not asked about.',
  sources: ['statics of rigid bodies', '10° borrowed from IEC 62368-1, made for other equipment', 'drag: air of ISO 2533, a box 1.05', 'sandbags on stands: common practice'],
  subjects: (ledger) => eachSetup(ledger).flatMap(({ setup }) => buildsOf(ledger, setup).flatMap((build) => subjectsOf(ledger, setup, build))).filter(once),
  ask: (asking, { setup, build }) => {
    const uses = usesOf(asking.ledger, build).filter((use) => setup === undefined || use.setup === setup);
    const all = uses.flatMap((subject) => lookAt(asking, subject, build) ?? []);
    const text = all.find((one) => typeof one === 'string');
    if (text !== undefined) return cannotJudge(text);
    const looks = all.filter((one) => typeof one !== 'string');
    const worst = worstOf(asking, looks);
    if (worst === undefined) return null;
    return judged(worst, { name: nameAt(asking.ledger, 'builds', build), glass: setup === undefined || looks.length < 2 ? '' : `, with ${nameAt(asking.ledger, 'glasses', worst.glass)}` });
  },
});

function subjectsOf(ledger: Ledger, setup: string, build: string): TippingSubject[] {
  const [glass] = glassesOf(ledger, setup);
  const purpose = ledger.at(`builds/${build}/purpose`);
  if (glass === undefined || !legsOf(ledger, { setup, glass }, build).some((legs) => goesWith(purpose, carrierKind(legs) ?? ''))) return [];
  return isCamera(ledger, { setup, glass }, build) ? [{ setup, build }] : [{ build }];
}

/** A station comes up with every setup it is live in. */
const once = (one: TippingSubject, at: number, all: readonly TippingSubject[]): boolean => one.setup !== undefined || all.findIndex(({ setup, build }) => setup === undefined && build === one.build) === at;

/** With a bound on the wind in place of its push: no use is larger. */
interface Quick {
  readonly subject: SetupGlass;
  readonly standing: Standing;
  readonly pushes: Pushes;
  readonly cases: readonly [TipCase, ...TipCase[]];
}

function lookAt(asking: Asking, subject: SetupGlass, build: string): Quick | string | undefined {
  const standing = standingOf(asking, subject, build);
  if (standing === undefined || typeof standing === 'string') return standing;
  if (standing.feet.value < 3) return `${standing.legs.name} has fewer than three feet: it does not stand by itself.`;
  const pushes = pushesAtMost(asking, subject, standing);
  return { subject, standing, pushes, cases: tipCases(standing, pushes) };
}

interface Look {
  readonly glass: string;
  readonly standing: Standing;
  readonly pushes: Pushes;
  /** Worst first. */
  readonly cases: readonly [TipCase, ...TipCase[]];
}

/** Outlines are dear: only those are drawn whose bound is above the worst found so far, and that not only by something else than the wind. */
function worstOf(asking: Asking, looks: readonly Quick[]): Look | undefined {
  return looks.toSorted((a, b) => b.cases[0].use - a.cases[0].use).reduce<Look | undefined>((worst, quick) => {
    if (worst !== undefined && quick.cases[0].use <= worst.cases[0].use) return worst;
    const look = isCalm(quick) ? { ...quick, glass: quick.subject.glass } : drawn(asking, quick);
    return worst === undefined || look.cases[0].use > worst.cases[0].use ? look : worst;
  }, undefined);
}

const isCalm = ({ cases: [worst, ...others] }: Quick): boolean => worst.by !== 'wind' && others.every(({ by, use }) => by !== 'wind' || use <= NOTHING_MUCH);

function drawn(asking: Asking, { subject, standing, pushes: atMost }: Quick): Look {
  const pushes = pushesOn(asking, subject, standing, atMost);
  return { glass: subject.glass, standing, pushes, cases: tipCases(standing, pushes) };
}

function judged(look: Look, { name, glass }: { name: string; glass: string }): Judgement {
  const { standing, pushes, cases } = look;
  const [worst] = cases;
  const { massG, ballastG, centreMm, aheadMm, footRadius, feet } = standing;
  const sand = ballastG > 0 ? ` and ${printAmount({ value: ballastG, unit: 'g' })} of sandbags` : '';
  return whateverWeighed(look, judgeRatio({
    needs: needs(worst, pushes),
    has: { amount: { value: worst.capacity, unit: worst.unit }, from: `${printAmount({ value: massG, unit: 'g' })}${sand} on ${feet.value} feet, ${printAmount({ value: footRadius.value, unit: 'mm' })} out ${origin(footRadius)}${glass}`, word: 'tips at' },
    says: { holds: `${name} stays on its feet.`, tight: `${name} only just stays on its feet${AGAINST[worst.by]}.`, fails: fails(worst, name) },
    steps: [
      { says: `centre of mass above the floor, ${printAmount({ value: aheadMm, unit: 'mm' })} out from the middle`, amount: { value: centreMm / 1000, unit: 'm' } },
      ...cases.map((one) => ({ says: `${STEP[one.by](one, pushes)}; it tips at`, amount: { value: one.capacity, unit: one.unit } })),
    ],
    mends: worst.use > 0.9 ? mends(standing, pushes, worst.use > 1 ? 1 : 0.9) : [],
    notes: [`${ESTIMATE} Hard, level ground.`, 'Sandbags on every stand; outdoors, and above people, a qualified grip decides.', ...standing.notes],
  }));
}

/** What has no mass leaves it open whether it stands, unless it stands however heavy that is. */
function whateverWeighed({ standing, pushes: { slope } }: Look, judgement: Judgement): Judgement {
  const { unweighed } = standing;
  if (unweighed.length === 0 || judgement.verdict === 'fails') return judgement;
  const names = listed(unweighed.map(({ piece }) => piece.name));
  if (slopeWhateverWeighed(standing) < slope.value) return allInBalance(judgement, unweighed.map(({ piece }) => piece));
  return { ...judgement, notes: [...(judgement.notes ?? []), `However much ${names} may weigh, between the feet as ${unweighed.length === 1 ? 'it is' : 'they are'}: it only helps against a push, and a slope does not tip it.`] };
}

const AGAINST = { tug: ' when somebody walks into a cable', wind: ' in the wind', slope: ' on a slope' } as const;

function fails({ by, capacity }: TipCase, name: string): string {
  if (capacity <= 0) return `${name} falls over by itself: the weight stands outside its feet.`;
  return { tug: `${name} tips over when somebody walks into a cable.`, wind: `The wind tips ${name} over.`, slope: `${name} tips over on a slope.` }[by];
}

const inM = (mm: number): string => printAmount({ value: mm / 1000, unit: 'm' });
const STEP: Readonly<Record<TipCase['by'], (one: TipCase, pushes: Pushes) => string>> = {
  tug: ({ demand, atHeightMm }, { snag }) => `a tug of ${printAmount({ value: demand, unit: 'N' })} ${snag.says}, ${inM(atHeightMm)} up`,
  wind: ({ demand, atHeightMm }, { wind }) => `wind with ${wind?.atMost === true ? 'at most ' : ''}${printAmount({ value: demand, unit: 'N' })} at ${inM(atHeightMm)}`,
  slope: ({ demand }) => `a slope of ${printAmount({ value: demand, unit: 'deg' })}`,
};

function needs({ by, demand, unit, atHeightMm }: TipCase, { tug, snag, wind, slope }: Pushes): Side {
  const from = {
    tug: () => `a tug ${snag.says}, ${inM(atHeightMm)} up ${origin(tug)}`,
    wind: () => (wind === undefined ? '' : `wind at ${inM(atHeightMm)}: ${windSays(wind.air, wind.areaMm2)}`),
    slope: () => `a slope on which it should still stand ${origin(slope)}`,
  }[by]();
  return { amount: { value: demand, unit }, from, word: by === 'slope' ? 'slope' : 'push' };
}

/** Each tried with the same sums; those that the legs' figures do not allow are left out. */
function mends(standing: Standing, pushes: Pushes, target: number): Mend[] {
  const useOf = (stance: Partial<ReturnType<typeof stanceOf>>): number => tipCases(standing, pushes, { ...stanceOf(standing), ...stance })[0].use;
  return [...sandbag(standing, ballastFor(standing, pushes, target), useOf), ...lower(standing, target, useOf), ...wider(standing, useOf)];
}

type UseOf = (stance: Partial<ReturnType<typeof stanceOf>>) => number;

/** Four large sacks: more nobody lays round a stand. Common practice. */
const SACKS_G = 60_000;

function sandbag({ legs, ballastG }: Standing, leastG: number, useOf: UseOf): Mend[] {
  const wholeG = Math.ceil(leastG / 1000 - 1e-9) * 1000;
  const says = `Sandbags of ${printAmount({ value: wholeG, unit: 'g' })}${ballastG > 0 ? ' in all' : ''} on the feet of ${legs.name}, evenly`;
  const pullN = Math.ceil(weightN(leastG) / 10 - 1e-9) * 10;
  // A tonne on the feet is no cure: the figures are amiss, or the build is.
  if (wholeG > 1e6) return [];
  return [
    { says, edit: { says, patches: [{ op: 'add', path: `${legs.path}/ballastG`, value: wholeG }] }, use: useOf({ ballastG: wholeG }), costs: wholeG > SACKS_G ? 'more than sandbags are good for: lower it, or take wider legs' : 'to carry; on the feet, not hung so that they swing' },
    { says: `A strap from under the middle to a peg or ring in the ground, drawn to ${printAmount({ value: pullN, unit: 'N' })}`, use: useOf({ ballastG: ballastG + Math.max(0, pullN / weightN(1) - ballastG) }), costs: 'it stands where the peg is' },
  ];
}

/** A stand goes down on its column; the feet of legs come in as they are shortened, at the same spread. */
function lower({ legs, height, footRadius, ballastG }: Standing, target: number, useOf: UseOf): Mend[] {
  const lowest = legs.part.figure('carrier/lowestHeightMm');
  if (lowest === undefined || lowest.value >= height.value) return [];
  const feetAt = (heightMm: number): number => (legs.part.read('carrier/kind') === 'legs' ? footRadius.value * (heightMm / height.value) : footRadius.value);
  const useAt = (heightMm: number): number => useOf({ heightMm, footRadiusMm: feetAt(heightMm), ballastG });
  if (useAt(lowest.value) >= useAt(height.value)) return [];
  let [low, high] = [lowest.value, height.value];
  if (useAt(low) > target) high = low;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (useAt(middle) > target) high = middle;
    else low = middle;
  }
  const toMm = Math.max(lowest.value, Math.floor(low / 10) * 10);
  return [{ says: `Set ${legs.name} ${inM(toMm)} high instead of ${inM(height.value)}${toMm === lowest.value ? ', as low as it goes' : ''}`, use: useAt(toMm), costs: 'a lower camera or screen' }];
}

function wider({ legs, footRadius }: Standing, useOf: UseOf): Mend[] {
  const widest = legs.part.figure('carrier/widestFootRadiusMm');
  if (widest === undefined || widest.value <= footRadius.value) return [];
  return [{ says: `Spread the feet of ${legs.name} to ${printAmount({ value: widest.value, unit: 'mm' })} from the middle, as far as they go`, use: useOf({ footRadiusMm: widest.value }), costs: 'feet to stumble over; it stands a little lower' }];
}
