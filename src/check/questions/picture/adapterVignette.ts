import { opticalPath } from '../../../assembly/opticalPath.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeShare } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { nameAt } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { type CornerLight, cornerOf } from '../../quantities/cornerLight.ts';
import { deliveryFrame } from '../../quantities/deliveryFrame.ts';
import { fNumberAt, shotsWith, widestStop } from '../../quantities/lightThrough.ts';
import { lensOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass, glassesOf } from '../../subjects.ts';

export const adapterVignette = question({
  id: 'picture.adapterVignette',
  asks: 'Do block and focuser see past the taking lens?',
  kind: 'immediate',
  explains:
    'A taking lens too wide for its block, or for the focuser in front of it, sees the barrel in the corners. The beam of a corner of the delivered frame is followed from the pupil of the taking lens through the rear and the front glass ' +
    'of the block and the front rim of the focuser: how far off the middle it crosses each, and what share of it passes them all. It is judged at each stop the setup shoots with, the worst counts; ' +
    'stopping down narrows the beam, which helps a corner that is half seen and hurts one that is mostly cut. What the delivery crops away does not count; natural falloff comes on top. ' +
    'Thin elements; the rear glass is taken to lie as far ahead of the lens as entered, the focuser’s clear diameter to lie at its front.',
  sources: ['Derived from thin elements; shares by the overlap of beam and glass', 'common practice'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup, glass }) => opticalPath(ledger, setup, glass).block !== undefined),
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    const worst = worstCorner(asking, subject);
    if (path.block === undefined || worst === undefined) return null;
    const lens = lensOf(path, subject.glass).name;
    const least = asking.assume(picture.cornerShare);
    const wished = least.value;
    const narrowest = worst.rims.toSorted((a, b) => a.share - b.share)[0]?.name ?? path.block.name;
    const ahead = path.focuser === undefined ? path.block.name : `${path.block.name} and ${path.focuser.name}`;
    return judgeShare({
      got: worst.share,
      wished,
      needs: { amount: { value: wished, unit: 'share' }, from: `of the light at the corners of the frame ${origin(least)}` },
      has: { amount: { value: worst.share, unit: 'share' }, from: `of it at f/${printNumber(worst.fNumber)}`, word: 'gets' },
      says: {
        holds: `${ahead} ${path.focuser === undefined ? 'lets' : 'let'} the corners of ${lens} by.`,
        tight: `The ${narrowest} darkens the corners of ${lens}, just short of a vignette.`,
        fails: worst.share < 0.02 ? `${lens} is too wide: the ${narrowest} cuts the corners off.` : `${lens} is too wide: the ${narrowest} darkens the corners.`,
      },
      steps: stepsOf(asking, subject, worst),
      mends: worst.share < 1 - 0.9 * (1 - wished) ? asking.cures(() => mendsOf(asking, subject, worst, wished)) : [],
    });
  },
});

/** The darkest corner over the stops that are shot; wide open where nothing is. */
function worstCorner(asking: Asking, subject: SetupGlass, mode?: string): CornerLight | undefined {
  const shots = shotsWith(asking, subject).filter((shot) => asking.ledger.at(`shots/${shot}/tStop`) !== undefined);
  const stops = shots.length === 0 ? [widestStop(asking, subject).fNumber.value] : shots.map((shot) => fNumberAt(asking, { ...subject, shot }).value);
  const corner = cornerOf(asking, subject, { mode });
  const corners = corner === undefined ? [] : [...new Set(stops)].map((fNumber) => corner({ fNumber }));
  return corners.toSorted((a, b) => a.share - b.share)[0];
}

function stepsOf(asking: Asking, subject: SetupGlass, { rims, beamDiameterMm, share }: CornerLight): Step[] {
  const { sensorWidthMm, sensorHeightMm } = deliveryFrame(asking, subject).frame;
  const mm = (value: number) => printAmount({ value, unit: 'mm' });
  return [
    { says: `frame on the sensor ${mm(sensorWidthMm)} × ${mm(sensorHeightMm)}; the beam of a corner is ${mm(beamDiameterMm)} across at the taking lens` },
    ...rims.map((rim) => ({ says: `${rim.name}, ${mm(rim.clearMm)} clear: crossed ${mm(rim.offsetMm)} off the middle; by itself it lets by`, amount: { value: rim.share, unit: 'share' } as const })),
    { says: 'passes them all', amount: { value: share, unit: 'share' } },
  ];
}

/** Another glass of the setup behind the same block, or another mode of the body; each tried. */
function mendsOf(asking: Asking, subject: SetupGlass, worst: CornerLight, wished: number): Mend[] {
  const { ledger } = asking;
  const path = opticalPath(ledger, subject.setup, subject.glass);
  const useOf = (corner: CornerLight) => (1 - corner.share) / (1 - wished);
  const tried = <T>(things: readonly T[], corner: (thing: T) => CornerLight | undefined) =>
    things.flatMap((thing) => {
      const found = orNothing(() => corner(thing));
      return found === undefined || useOf(found) > 1 ? [] : [{ thing, use: useOf(found) }];
    });
  const blockPart = path.block?.part.id;
  const glasses = glassesOf(ledger, subject.setup).filter((glass) => glass !== subject.glass && opticalPath(ledger, subject.setup, glass).block?.part.id === blockPart);
  const shots = shotsWith(asking, subject);
  const longer = tried(glasses, (glass) => worstCorner(asking, { setup: subject.setup, glass })).map(({ thing, use }) => ({
    says: `Shoot with ${nameAt(ledger, 'glasses', thing)} instead`,
    ...(shots.length === 0 ? {} : { edit: { says: `${nameAt(ledger, 'glasses', thing)} instead`, patches: shots.map((shot) => ({ op: 'replace' as const, path: `shots/${shot}/glass`, value: thing })) } }),
    costs: 'a narrower view, from farther back',
    use,
  }));
  const modes = path.body === undefined ? [] : ledger.keys(`${path.body.part.path}/body/modes`).filter((mode) => `body/modes/${mode}` !== path.mode);
  const setup = nameAt(ledger, 'setups', subject.setup);
  const smaller = tried(modes, (mode) => worstCorner(asking, subject, `body/modes/${mode}`)).map(({ thing, use }) => {
    const modeName = String(path.body?.part.read(`body/modes/${thing}/name`));
    return {
      says: `Record ${setup} in ${modeName}`,
      edit: { says: `${setup} in ${modeName}`, patches: [{ op: 'replace' as const, path: `setups/${subject.setup}/mode`, value: thing }] },
      costs: 'for every lens of the setup; a narrower view, fewer pixels',
      use,
    };
  });
  return [...longer.toSorted((a, b) => b.use - a.use).slice(0, 2), ...smaller, ...shortest(asking, subject, worst, wished)];
}

/** The shortest taking lens that sees past, were its pupil as deep as this one's: by halving, up to four times as long. */
function shortest(asking: Asking, subject: SetupGlass, worst: CornerLight, wished: number): Mend[] {
  const lens = opticalPath(asking.ledger, subject.setup, subject.glass).lens;
  if (lens === undefined) return [];
  const own = asking.figure(lens.part, 'lens/focalLengthMm').value;
  const corner = cornerOf(asking, subject);
  const shareAt = (focalLengthMm: number) => corner?.({ fNumber: worst.fNumber, focalLengthMm }).share ?? 0;
  let [tooShort, enough] = [own, own * 4];
  if (shareAt(enough) < wished) return [];
  while (enough - tooShort > 0.5) {
    const middle = (tooShort + enough) / 2;
    if (shareAt(middle) < wished) tooShort = middle;
    else enough = middle;
  }
  const from = Math.ceil(enough);
  return [{ says: `A taking lens from about ${from} mm on, or a smaller frame on the sensor`, costs: 'for a pupil as deep as in this lens', use: (1 - shareAt(from)) / (1 - wished) }];
}

function orNothing<T>(tryIt: () => T): T | undefined {
  try {
    return tryIt();
  } catch (thrown) {
    if (thrown instanceof NotEntered) return undefined;
    throw thrown;
  }
}
