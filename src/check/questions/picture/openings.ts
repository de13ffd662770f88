import { opticalPath } from '../../../assembly/opticalPath.ts';
import { clearOpening } from '../../../calc/optics/clearOpening.ts';
import { roundOpening } from '../../../calc/optics/roundOpening.ts';
import { angleOfView } from '../../../calc/picture/angleOfView.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Judgement, Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { LARGEST_USE, judgeRatio, judgeShare } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { deliveryFrame } from '../../quantities/deliveryFrame.ts';
import { type EntrancePupils, entrancePupils } from '../../quantities/entrancePupils.ts';
import { type Opening, closeUpOfShot, openingsOf } from '../../quantities/openingsOf.ts';
import { lensOf, squeezeOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass, eachShot } from '../../subjects.ts';

export const openings = question({
  id: 'picture.openings',
  asks: 'Do box, filters and close-up lenses stay out of the picture?',
  kind: 'immediate',
  explains:
    'From each edge of the picture a beam as wide as the entrance pupil leaves the lens; what stands in front must let it by. An anamorphot has two pupils, the horizontal one much nearer the front: one distance for both would fail every good box. ' +
    'Behind a block the taking lens’s pupil is seen through it. Box stages, hood and filters must not touch a beam of the widest view: the frame with what is kept free around it, infinity, widest stop. ' +
    'Round glass (close-up lens, screwed filter) dims before it shows as an edge: of the beam of a frame corner it must leave the share that still passes as falloff. ' +
    'Distances are those entered, along the axis; where the box is placed on rods, see that they are true.',
  sources: ['Entrance pupil as the centre of view: Ray, Applied Photographic Optics', 'Pupils through a block: derived', 'common practice'],
  subjects: (ledger): OpeningSubject[] => [
    ...eachGlass(ledger).flatMap((subject) => openingsOf(ledger, subject).flatMap(({ ref }) => ref ?? []).filter(isFirst).map((piece) => ({ ...subject, piece }))),
    ...eachShot(ledger).filter(({ shot }) => ledger.at(`shots/${shot}/diopter`) !== undefined),
  ],
  ask: (asking, subject) => {
    if (opticalPath(asking.ledger, subject.setup, subject.glass).lens === undefined) return null;
    const own = subject.shot === undefined ? openingsOf(asking.ledger, subject).filter(({ ref }) => ref === subject.piece) : closeUpOfShot(asking.ledger, { ...subject, shot: subject.shot });
    const judged = own.flatMap((opening) => judgeOpening(asking, subject, opening) ?? []);
    return judged.toSorted((a, b) => (b.use ?? 0) - (a.use ?? 0))[0] ?? null;
  },
});

interface OpeningSubject extends SetupGlass {
  readonly piece?: string;
  readonly shot?: string;
}

const isFirst = (ref: string, at: number, all: readonly string[]): boolean => all.indexOf(ref) === at;

function judgeOpening(asking: Asking, subject: SetupGlass, opening: Opening): Judgement | undefined {
  const pupils = entrancePupils(asking, subject);
  const aheadMm = opening.aheadOf(asking, pupils.front);
  return opening.shape === 'round' ? judgeRound(asking, subject, opening, pupils, aheadMm) : judgeBox(asking, subject, opening, pupils, aheadMm);
}

/** Half angles of a frame as the glass sees it at infinity. */
function halfAngles(asking: Asking, subject: SetupGlass, area: 'frame' | 'guarded') {
  const lens = lensOf(opticalPath(asking.ledger, subject.setup, subject.glass), subject.glass);
  const focalLengthMm = asking.figure(lens.part, 'lens/focalLengthMm').value;
  const { sensorWidthMm, sensorHeightMm } = deliveryFrame(asking, subject)[area];
  const { horizontalDeg, verticalDeg } = angleOfView({ focalLengthMm, sensorWidthMm, sensorHeightMm, squeeze: squeezeOf(asking, subject).value });
  return { horizontalHalfAngleDeg: horizontalDeg / 2, verticalHalfAngleDeg: verticalDeg / 2 };
}

const beams = ({ horizontal, vertical }: EntrancePupils, aheadMm: number) => ({
  horizontalPupilMm: horizontal.diameterMm,
  horizontalPupilDistanceMm: Math.max(0, horizontal.behindFrontMm + aheadMm),
  verticalPupilMm: vertical.diameterMm,
  verticalPupilDistanceMm: Math.max(0, vertical.behindFrontMm + aheadMm),
});

function judgeBox(asking: Asking, subject: SetupGlass, opening: Opening & { shape: 'box' }, pupils: EntrancePupils, aheadMm: number): Judgement {
  const angles = halfAngles(asking, subject, 'guarded');
  const need = clearOpening({ ...beams(pupils, aheadMm), ...angles });
  const ways = opening.turnable ? [opening, { widthMm: opening.heightMm, heightMm: opening.widthMm }] : [opening];
  const depth = (way: { widthMm: number; heightMm: number }) => Math.max(need.widthMm / way.widthMm, need.heightMm / way.heightMm);
  const best = ways.toSorted((a, b) => depth(a) - depth(b))[0] ?? opening;
  const across = need.widthMm / best.widthMm >= need.heightMm / best.heightMm;
  const what = opening.name;
  const lens = lensOf(opticalPath(asking.ledger, subject.setup, subject.glass), subject.glass).name;
  return judgeRatio({
    needs: { amount: { value: across ? need.widthMm : need.heightMm, unit: 'mm' }, from: `${across ? 'wide' : 'high'}, clear for ${lens}` },
    has: { amount: { value: across ? best.widthMm : best.heightMm, unit: 'mm' }, from: `${across ? 'wide' : 'high'}, ${what}` },
    says: { holds: `${capital(what)} stays out of the picture of ${lens}.`, tight: `${capital(what)} only just stays out of the picture of ${lens}.`, fails: `${capital(what)} is in the picture of ${lens}, ${across ? 'at the sides' : 'at top and bottom'}.` },
    steps: [...stepsOf(pupils, aheadMm, angles), { says: 'clear height needed', amount: { value: need.heightMm, unit: 'mm' } }, { says: 'clear width needed', amount: { value: need.widthMm, unit: 'mm' } }],
    mends: need.widthMm > best.widthMm || need.heightMm > best.heightMm ? nearer(pupils, aheadMm, angles, best) : [],
  });
}

/** How far ahead it may stand at most. */
function nearer(pupils: EntrancePupils, aheadMm: number, angles: { horizontalHalfAngleDeg: number; verticalHalfAngleDeg: number }, { widthMm, heightMm }: { widthMm: number; heightMm: number }): Mend[] {
  const most = ({ behindFrontMm, diameterMm }: EntrancePupils['vertical'], clearMm: number, halfDeg: number) => (clearMm - diameterMm) / (2 * Math.tan((halfDeg * Math.PI) / 180)) - behindFrontMm;
  const atMost = Math.min(most(pupils.horizontal, widthMm, angles.horizontalHalfAngleDeg), most(pupils.vertical, heightMm, angles.verticalHalfAngleDeg));
  if (atMost <= 0) return [{ says: 'Take it off for this lens' }];
  return [{ says: `Bring it ${printAmount({ value: aheadMm - atMost, unit: 'mm' })} nearer the lens`, costs: 'only where rods or clamp let it', use: 1 }, { says: 'Take it off for this lens' }];
}

function judgeRound(asking: Asking, subject: SetupGlass, opening: Opening & { shape: 'round' }, pupils: EntrancePupils, aheadMm: number): Judgement {
  const angles = halfAngles(asking, subject, 'frame');
  const { share, offsetXMm, offsetYMm } = roundOpening({ ...beams(pupils, aheadMm), ...angles, clearDiameterMm: opening.clearMm });
  const least = asking.assume(picture.cornerShare);
  const wished = least.value;
  const lens = lensOf(opticalPath(asking.ledger, subject.setup, subject.glass), subject.glass).name;
  const judged = judgeShare({
    got: share,
    wished,
    needs: { amount: { value: wished, unit: 'share' }, from: `light at the corners of the frame ${origin(least)}` },
    has: { amount: { value: share, unit: 'share' }, from: `passes ${opening.name}, ${printAmount({ value: opening.clearMm, unit: 'mm' })} clear`, word: 'gets' },
    says: { holds: `${opening.name} lets the corners of ${lens} by.`, tight: `${opening.name} darkens the corners of ${lens}.`, fails: `${opening.name} is too small for ${lens}: the corners go dark.` },
    steps: [...stepsOf(pupils, aheadMm, angles), { says: 'the beam of a corner crosses it off the middle by', amount: { value: Math.hypot(offsetXMm, offsetYMm), unit: 'mm' } }],
  });
  return { ...judged, use: Math.min(judged.use ?? 0, LARGEST_USE) };
}

function stepsOf({ horizontal, vertical, front }: EntrancePupils, aheadMm: number, { horizontalHalfAngleDeg, verticalHalfAngleDeg }: { horizontalHalfAngleDeg: number; verticalHalfAngleDeg: number }): Step[] {
  const mm = (value: number) => printAmount({ value, unit: 'mm' });
  return [
    { says: `ahead of the front of ${front.name}`, amount: { value: aheadMm, unit: 'mm' } },
    { says: `pupil across: ${mm(horizontal.behindFrontMm)} behind that front, ${mm(horizontal.diameterMm)} wide; half angle ${printNumber(horizontalHalfAngleDeg)}°` },
    { says: `pupil up and down: ${mm(vertical.behindFrontMm)} behind it, ${mm(vertical.diameterMm)} high; half angle ${printNumber(verticalHalfAngleDeg)}°` },
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
