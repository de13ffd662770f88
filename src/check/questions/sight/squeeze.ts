import { pieceSetting } from '../../../assembly/setupPieces.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printNumber } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { describeFigure } from '../../describeFigure.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { setOn } from '../../quantities/lineEdits.ts';
import { type Seen, seenBy } from '../../quantities/seenBy.ts';
import { unseen } from '../../quantities/unseen.ts';
import { squeezeOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { eachViewer, glassesOf } from '../../subjects.ts';

export const squeeze = question({
  id: 'sight.squeeze',
  asks: 'Does each viewer see the picture de-squeezed?',
  kind: 'immediate',
  explains:
    'The screen must offer the squeeze of the glass and be set to it, unless the picture comes de-squeezed already. A setting near it leaves faces broad or thin by the ratio; a twentieth is seen. ' +
    'Asked for every glass of the setup at once: where they differ, no one setting serves them all, and the screen is a step of the lens swap.',
  sources: ['common practice'],
  subjects: eachViewer,
  ask: (asking, subject) => {
    const blind = unseen(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    if (seen === undefined || (seen.leg?.desqueezedBy.length ?? 0) > 0) return null;
    const wanted = new Map<number, string[]>();
    for (const glass of glassesOf(asking.ledger, subject.setup)) {
      const { value } = squeezeOf(asking, { setup: subject.setup, glass });
      wanted.set(value, [...(wanted.get(value) ?? []), asking.ledger.at(`glasses/${glass}/name`) as string]);
    }
    const set = pieceSetting(seen.screen, 'squeeze') ?? 1;
    const [worst] = [...wanted.keys()].toSorted((a, b) => offBy(b, set) - offBy(a, set));
    if (worst === undefined) return null;
    const offered = offeredBy(asking, seen, worst);
    return wanted.size > 1 ? several(seen, wanted, set, asking) : one(asking, seen, { wanted: worst, set, offered });
  },
});

/** How far the picture is off its shape: 0.1 is a tenth too broad or too thin. */
const offBy = (wanted: number, set: number): number => Math.max(wanted, set) / Math.min(wanted, set) - 1;

function offeredBy(asking: Asking, { screen }: Seen, wanted: number): readonly number[] {
  const offered = screen.part.facet('screen')?.squeezes;
  if (offered === undefined && wanted !== 1) throw new NotEntered([describeFigure(screen.part, 'screen/squeezes')]);
  asking.ledger.at(`${screen.part.path}/screen/squeezes`);
  return [1, ...(offered ?? [])];
}

function one(asking: Asking, seen: Seen, { wanted, set, offered }: { wanted: number; set: number; offered: readonly number[] }): Judgement {
  const seenStretch = asking.assume(picture.stretchSeen);
  const nearest = offered.toSorted((a, b) => offBy(wanted, a) - offBy(wanted, b))[0] ?? 1;
  const { screen } = seen;
  const says = set === 1 ? `${screen.name} shows a squeezed picture` : `${screen.name} is set to ${printNumber(set)}×, the glass squeezes ${printNumber(wanted)}×`;
  const offers = offBy(wanted, nearest) <= seenStretch.value ? '' : `; it offers nothing nearer than ${printNumber(nearest)}×`;
  return judgeRatio({
    needs: { amount: { value: offBy(wanted, set), unit: 'share' }, from: `stretch left: ${printNumber(wanted)}× of the glass against ${printNumber(set)}× on the screen`, word: 'off by' },
    has: { amount: { value: seenStretch.value, unit: 'share' }, from: `stretch that is seen in a face ${origin(seenStretch)}`, word: 'seen from' },
    says: { holds: `${screen.name} shows the picture de-squeezed.`, tight: `${screen.name} is nearly right: ${printNumber(set)}× for ${printNumber(wanted)}×.`, fails: `${says}${offers}.` },
    mends: nearest === set ? [] : [setTo(seen, nearest, offBy(wanted, nearest) / seenStretch.value)],
  });
}

function setTo({ screen }: Seen, to: number, use: number): Mend {
  const says = `set ${screen.name} to ${printNumber(to)}×`;
  return { says, edit: setOn(screen, 'squeeze', to, says), use };
}

/** Glasses of different squeeze: no setting serves them all. */
function several(seen: Seen, wanted: ReadonlyMap<number, readonly string[]>, set: number, asking: Asking): Judgement {
  const offered = [...wanted.keys()].map((value) => ({ value, has: offeredBy(asking, seen, value).some((one) => offBy(value, one) <= asking.assume(picture.stretchSeen).value) }));
  const lacking = offered.filter(({ has }) => !has);
  const list = [...wanted].map(([value, names]) => `${printNumber(value)}× for ${names.join(', ')}`);
  return judgeYes({
    yes: lacking.length === 0,
    caution: true,
    says: {
      holds: '',
      tight: `${seen.screen.name} must be set anew at some lens swaps: the glasses squeeze ${[...wanted.keys()].map((value) => `${printNumber(value)}×`).join(' and ')}.`,
      fails: `${seen.screen.name} does not offer ${lacking.map(({ value }) => `${printNumber(value)}×`).join(' or ')}.`,
    },
    steps: [...list.map((says) => ({ says })), { says: set === 1 ? 'no squeeze is set now' : `set to ${printNumber(set)}× now` }],
  });
}
