import { carrierKind, carriersFor, goesWith } from '../../../assembly/hold/carriers.ts';
import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import type { Judgement, Mend, Missing } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeYes } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { buildsInUse, usesOf } from '../../quantities/buildsInUse.ts';
import { listed } from '../../quantities/listed.ts';
import { nothingBears } from '../../quantities/nothingBears.ts';
import { jointsOn, takeOff } from '../../quantities/takeOff.ts';
import { question } from '../../question.ts';

/** Of these a build stands on one. */
const ONLY_ONE = ['head', 'shoulder pad', 'gimbal'];

export const stands = question<{ readonly build: string }>({
  id: 'hold.stands',
  asks: 'Is it plain what it stands on?',
  kind: 'immediate',
  explains:
    'Forces, sag and swings are reckoned from what holds the build: a head on its legs, a pad on a shoulder with hands on the grips, a mount, a gimbal, a stand; or nothing, where it is held free in the hands. The purpose of the build says which. Where none of its pieces is such a carrier, it is asked for: until then the build is reckoned as if its root were held. ' +
    'Two heads, or legs under a build for the shoulder, contradict the purpose: only what fits it is then reckoned with, and the rest is carried as weight.',
  sources: ['common practice'],
  subjects: (ledger) => buildsInUse(ledger).map((build) => ({ build })),
  ask: (asking, { build }) => {
    const { ledger } = asking;
    const purpose = ledger.at(`builds/${build}/purpose`) as string;
    const [use] = usesOf(ledger, build);
    if (carriersFor(purpose) === undefined || use === undefined) return null;
    const own = [...setupPieces(ledger, use.setup, use.glass).values()].filter((piece) => piece.build === build);
    const carriers = own.filter((piece) => carrierKind(piece) !== undefined);
    const strange = carriers.filter((piece) => !goesWith(purpose, carrierKind(piece) ?? ''));
    const missing = nothingBears(ledger, build, own);
    if (missing !== undefined) return nothing(nameAt(ledger, 'builds', build), purpose, missing, strange);
    return carriers.length === 0 ? null : carried(asking, purpose, carriers, strange);
  },
});

function nothing(name: string, purpose: string, missing: Missing & { readonly finding: string }, strange: readonly SetupPiece[]): Judgement {
  const { finding, ...entry } = missing;
  return {
    says: `${name} ${finding}`, verdict: 'unknown', missing: [entry],
    steps: strange.map(({ name: piece }) => ({ says: `${piece} does not go with a build for ${PURPOSES[purpose] ?? purpose}: carried as weight` })),
    notes: ['Held free in the hands, or in a way that none of these is: give the build the purpose "handheld" or "other".'],
  };
}

function carried({ ledger }: Asking, purpose: string, carriers: readonly SetupPiece[], strange: readonly SetupPiece[]): Judgement {
  const doubled = ONLY_ONE.map((kind) => carriers.filter((piece) => carrierKind(piece) === kind && !strange.includes(piece))).filter((same) => same.length > 1);
  const [twice] = doubled;
  const forPurpose = `a build for ${PURPOSES[purpose] ?? purpose}`;
  return judgeYes({
    yes: true,
    caution: strange.length > 0 || twice !== undefined,
    says: {
      holds: `${listed(told(carriers))} ${carriers.length === 1 ? 'carries' : 'carry'} it, as ${forPurpose} asks.`,
      tight: twice === undefined ? `${listed(told(strange))} ${strange.length === 1 ? 'does' : 'do'} not go with ${forPurpose}.` : `${listed(told(twice))} cannot ${twice.length === 2 ? 'both' : 'all'} carry it at once.`,
      fails: '',
    },
    steps: carriers.map((piece) => ({ says: `${piece.name}: ${carrierKind(piece) ?? ''}${strange.includes(piece) ? ', carried as weight' : ''}` })),
    mends: mends(ledger, doubled, strange),
  });
}

const PURPOSES: Readonly<Record<string, string>> = {
  shoulder: 'the shoulder', handheld: 'the hands', tripod: 'a tripod', gimbal: 'a gimbal', vehicle: 'a vehicle', 'focus station': 'a focus station', 'viewing station': 'a viewing station',
};

const COUNTS: readonly string[] = ['', '', 'two', 'three', 'four'];

/** Names for a sentence that begins with them; parts of one name are counted. */
function told(pieces: readonly SetupPiece[]): string[] {
  const counts = new Map<string, number>();
  for (const { name } of pieces) counts.set(name, (counts.get(name) ?? 0) + 1);
  const words = [...counts].map(([name, count]) => (count === 1 ? name : `${COUNTS[count] ?? String(count)} of ${name}`));
  return words.map((one, at) => (at === 0 ? one.charAt(0).toUpperCase() + one.slice(1) : one));
}

/** Each trouble mended by itself; the other, where there is one, is left. */
function mends(ledger: Ledger, doubled: readonly (readonly SetupPiece[])[], strange: readonly SetupPiece[]): Mend[] {
  const troubles = [...doubled.map((same) => spare(ledger, same)), ...(strange.length > 0 ? [strange] : [])];
  return troubles.map((pieces) => {
    const names = pieces.map(({ name }) => name);
    const twin = doubled.some((same) => same.some((piece) => !pieces.includes(piece) && names.includes(piece.name)));
    const says = `Take ${twin ? `one ${names[0] ?? ''}` : listed(names)} off`;
    const held = pieces.some((piece) => jointsOn(ledger, piece) > 1);
    return {
      says, use: troubles.length > 1 ? 1 : 0,
      ...(held ? { costs: 'join what it held to what is left' } : {}),
      edit: { says, patches: takeOff(ledger, pieces) },
    };
  });
}

/** Of several that do the same, all but the one that most is joined to. */
const spare = (ledger: Ledger, same: readonly SetupPiece[]): SetupPiece[] => same.toSorted((one, other) => jointsOn(ledger, other) - jointsOn(ledger, one)).slice(1);
