import { type SetupPiece, pieceSetting } from '../../../assembly/setupPieces.ts';
import { holdingEndurance } from '../../../calc/mechanics/holdingEndurance.ts';
import { weightN } from '../../../calc/mechanics/gravity.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { type BuildWeight, buildWeights, inWords, nothingWeighed, sumOf, weightSteps } from '../../quantities/buildWeight.ts';
import { ESTIMATE } from '../../quantities/estimateNote.ts';
import { countOf } from '../../quantities/kitCables.ts';
import { kitPacks } from '../../quantities/kitPacks.ts';
import { shootFigure, shotsOf } from '../../quantities/shootFigures.ts';
import { countOfLoad, weightNotes } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { eachSetup } from '../../subjects.ts';

export const weight = question<{ readonly setup: string }>({
  id: 'carry.weight',
  asks: 'Is the build light enough for who carries it?',
  kind: 'immediate',
  explains:
    'The mass of a shoulder or handheld build with the heaviest glass of its setup and the cables plugged into it (of one that leads away, what hangs from its plug), against the most that was wanted for it. No published kilogram limit exists for holding a camera: lifting rules cover lifting, so that no limit is made up. Where no wish was entered, the weight is shown and the verdict waits for one. ' +
    'For a camera in the hands a published endurance curve tells how long arms would bear it, a caution and no limit. Operators of heavy cameras show shoulder trouble several times as often as office staff; pain is a reason to stop.',
  sources: ['common practice; a wish of the shoot, not a limit', 'Rohmert 1960: endurance of a static hold, a caution'],
  subjects: (ledger) => eachSetup(ledger).filter(({ setup }) => wishOf(ledger, setup) !== undefined),
  ask: (asking, { setup }) => {
    const { ledger } = asking;
    const wish = wishOf(ledger, setup);
    if (wish === undefined) return null;
    const weights = buildWeights(ledger, setup, ledger.at(`setups/${setup}/camera`) as string);
    const [worst] = weights;
    if (worst === undefined || worst.weighed.length === 0) return cannotJudge(nothingWeighed(weights));
    const wanted = shootFigure(ledger, wish.path);
    const shared = {
      steps: [...weightSteps(ledger, weights), ...held(asking, setup, worst)],
      notes: ['For holding a camera no published limit exists. Pain is a reason to stop.', ESTIMATE, ...weightNotes(worst)],
    };
    const needs = { amount: { value: worst.massG, unit: 'g' as const }, from: `${countOfLoad(worst.weighed.length, worst)}, with ${nameAt(ledger, 'glasses', worst.glass)}`, word: 'weighs' };
    if (wanted === undefined) {
      const missing = [{ path: wish.path, says: `most weight wanted ${wish.says}` }];
      return {
        ...shared, needs, missing, verdict: 'unknown',
        says: `It weighs ${inWords(worst.massG)} ${wish.says}; how much is wanted there is not entered yet, and no limit is published.`,
      };
    }
    return allWeighed(judgeRatio({
      ...shared, needs, has: { amount: { value: wanted.value, unit: 'g' }, from: `most that is wanted ${wish.says}`, word: 'wanted' },
      says: { holds: `The build is light enough ${wish.says}.`, tight: `The build is only just light enough ${wish.says}.`, fails: `The build is heavier than is wanted ${wish.says}.` },
      mends: worst.massG > 0.9 * wanted.value ? mends(ledger, weights, wanted.value) : [],
    }), weights.flatMap(({ unweighed }) => unweighed));
  },
});

function wishOf(ledger: Ledger, setup: string): { path: string; says: string } | undefined {
  const purpose = ledger.at(`builds/${ledger.at(`setups/${setup}/camera`) as string}/purpose`);
  if (purpose === 'shoulder') return { path: 'needs/shoulderMassG', says: 'on a shoulder' };
  return purpose === 'handheld' ? { path: 'needs/handheldMassG', says: 'in the hands' } : undefined;
}

/** How long arms bear it, for a camera in the hands. On a shoulder only what does not balance comes to the hands: asked where that is. */
function held(asking: Asking, setup: string, { massG }: BuildWeight): Step[] {
  const { ledger } = asking;
  const minutes = shotsOf(ledger, setup).flatMap((shot) => shootFigure(ledger, `shots/${shot}/holdMin`)?.value ?? []);
  const holdMin = Math.max(0, ...minutes);
  const longest: Step[] = holdMin > 0 ? [{ says: 'the longest shot holds it for', amount: { value: holdMin, unit: 'min' } }] : [];
  if (ledger.at(`builds/${ledger.at(`setups/${setup}/camera`) as string}/purpose`) !== 'handheld') return longest;
  const share = weightN(massG) / asking.assume(mechanics.handStrengthN).value;
  const { enduranceMin } = holdingEndurance({ forceShare: Math.min(1, share), holdMin });
  const tires: Step = share >= 1 ? { says: 'more than two hands hold up at most' } : Number.isFinite(enduranceMin)
    ? { says: 'held still without a rest, arms tire after', amount: { value: enduranceMin, unit: 'min' } }
    : { says: `${printNumber(100 * share, 2)} % of what two hands hold up at most: the endurance curve sets no end below 15 %, later studies do` };
  return [tires, ...longest, ...(holdMin > enduranceMin ? [{ says: 'longer than arms bear it: shorter takes, a rest, or something that carries it' }] : [])];
}

/** What would take weight off, the greatest relief first. */
function mends(ledger: Ledger, weights: readonly BuildWeight[], wantedG: number): Mend[] {
  const [worst, lightest] = [weights[0] as BuildWeight, weights.at(-1) as BuildWeight];
  const use = (lessG: number) => (worst.massG - lessG) / wantedG;
  const other = worst.massG - lightest.massG;
  return [
    ...packsOff(ledger, worst).flatMap(({ says, lessG, costs, edit }) => ({ says, use: use(lessG), costs, ...(edit === undefined ? {} : { edit }) })),
    ...(other > 0 ? [{ says: `Shoot it with ${nameAt(ledger, 'glasses', lightest.glass)}: ${inWords(other)} less`, use: use(other), costs: 'another lens' }] : []),
  ].toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0));
}

interface Relief {
  readonly says: string;
  readonly lessG: number;
  readonly costs: string;
  readonly edit?: NonNullable<Mend['edit']>;
}

/** All packs on a belt, or lighter ones of the kit on their plates. */
function packsOff(ledger: Ledger, { weighed }: BuildWeight): Relief[] {
  const plates = weighed.flatMap(({ piece }) => {
    const on = (pieceSetting(piece, 'packs') ?? []).map((id) => new PartView(ledger, id));
    const massG = on.reduce((sum, pack) => sum + (pack.figure('massG')?.value ?? 0), 0);
    return massG === 0 ? [] : { piece, on, massG };
  });
  const names = plates.flatMap(({ on }) => on.map(({ name }) => name));
  const allG = sumOf(plates);
  const packs = names.length === 1 ? names[0] : `the ${names.length} packs`;
  const belt: Relief[] = allG === 0 ? [] : [{ says: `Carry ${packs} on a belt: ${inWords(allG)} less`, lessG: allG, costs: 'cables to the camera; it balances otherwise' }];
  return [...belt, ...plates.flatMap((plate) => lighterPack(ledger, plate) ?? [])];
}

function lighterPack(ledger: Ledger, { piece, on, massG }: { piece: SetupPiece; on: readonly PartView[]; massG: number }): Relief | undefined {
  const mount = piece.part.read('batteryPlate/mount') as string | undefined;
  const fitting = kitPacks(ledger).flatMap(({ part, mounts }) => {
    const lessG = massG - (part.figure('massG')?.value ?? Infinity) * on.length;
    return mount !== undefined && mounts.includes(mount) && countOf(part) >= on.length && lessG > 0 ? { part, lessG } : [];
  });
  const best = fitting.toSorted((a, b) => b.lessG - a.lessG)[0];
  if (best === undefined) return undefined;
  const says = `Put ${best.part.name} on ${piece.name}: ${inWords(best.lessG)} less`;
  return { says, lessG: best.lessG, costs: 'another time till the change', edit: { says, patches: [{ op: 'replace', path: `${piece.path}/packs`, value: on.map(() => best.part.id) }] } };
}
