import { opticalPath } from '../../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { type Breathing, breathing as measuredBreathing } from '../../../calc/optics/breathing.ts';
import { frontFocuserBreathing } from '../../../calc/optics/frontFocuserBreathing.ts';
import { thinLensBreathing } from '../../../calc/optics/thinLensBreathing.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { judgeRatio } from '../../judge.ts';
import type { Asking } from '../../Asking.ts';
import { shotName } from '../../nameAt.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { focuserToSensor } from '../../quantities/alongAxis.ts';
import { closeUpInUse, ownMark } from '../../quantities/closeUpInUse.ts';
import { distanceMarks } from '../../quantities/distanceMarks.ts';
import { entrancePupils } from '../../quantities/entrancePupils.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { type ShotDistances, shotDistances } from '../../quantities/shotDistances.ts';
import { lensOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { type ShotSubject, eachShot } from '../../subjects.ts';

/** From half of what disturbs on it is seen: a matter of taste, hence tight over so wide a span. */
const SEEN = 0.5;

export const breathing = question({
  id: 'picture.breathing',
  asks: 'Does the picture breathe over the rack?',
  kind: 'immediate',
  explains:
    'Focus changes the field a little: over a rack the whole picture swells or shrinks. The change between the farthest and the nearest of the shot is read off measured fields where there are any. ' +
    'Without them it is estimated: for a lens as a thin one that moves out as a whole (cinema lenses are built to breathe less), for a focuser in front from how far it stands ahead of the pupil, up and down, where it is most. ' +
    'In a rack nothing hides it; while focus follows a move, the move hides about half. How much is too much is taste: the limit is an assumption that the shoot can replace, and from half of it on the answer is tight.',
  sources: ['Thin-lens geometry: Ray, Applied Photographic Optics', 'front focuser: derived', 'common practice'],
  subjects: (ledger) => eachShot(ledger).filter(({ shot }) => ((ledger.at(`shots/${shot}/subject`) as readonly unknown[] | undefined)?.length ?? 0) > 1),
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    if (path.lens === undefined || outOfReach(asking, subject)) return null;
    const asked = shotDistances(asking, subject.shot);
    if (asked.nearMm === asked.farMm) return null;
    const { change, from } = path.focuser === undefined ? ofLens(asking, subject, lensOf(path, subject.glass), asked) : ofFocuser(asking, subject, path.focuser, asked);
    const isRack = asking.ledger.at(`shots/${subject.shot}/motion`) === 'rack';
    const disturbs = asking.assume(isRack ? picture.breathingRack : picture.breathingFollow);
    const tighter = change < 0 ? 'tightens' : 'widens';
    const shot = shotName(asking.ledger, subject.shot);
    return judgeRatio({
      needs: { amount: { value: Math.abs(change), unit: 'share' }, from, word: 'changes by' },
      has: { amount: { value: disturbs.value, unit: 'share' }, from: `change that disturbs ${isRack ? 'in a rack' : 'while focus follows'} ${origin(disturbs)}`, word: 'disturbs at' },
      goodUpTo: SEEN,
      says: {
        holds: `${shot} does not breathe enough to see.`,
        tight: `${shot} breathes a little: the picture ${tighter} as focus comes closer.`,
        fails: `${shot} breathes enough to disturb: the picture ${tighter} as focus comes closer.`,
      },
      notes: Math.abs(change) > SEEN * disturbs.value ? ['A slower rack, a smaller step in distance or a cut hides it; finishing can take it out by a moving blow-up where pixels are to spare.'] : [],
    });
  },
});

interface Change extends Pick<Breathing, 'change'> {
  readonly from: string;
}

function ofLens(asking: Asking, subject: ShotSubject, lens: SetupPiece, { nearMm, farMm }: ShotDistances): Change {
  const closeUp = closeUpInUse(asking, subject);
  const [fromDistanceMm, toDistanceMm] = [ownMark(closeUp, farMm) ?? Infinity, ownMark(closeUp, nearMm) ?? Infinity];
  const marks = distanceMarks(lens.part, 'lens/breathing', 'fieldShare').map(({ distanceMm, value }) => ({ distanceMm, fieldShare: value }));
  const inside = (mm: number) => marks.some(({ distanceMm }) => distanceMm <= mm) && marks.some(({ distanceMm }) => distanceMm >= mm);
  if (inside(fromDistanceMm) && inside(toDistanceMm)) return { change: measuredBreathing({ marks, fromDistanceMm, toDistanceMm }).change, from: `from the fields entered for ${lens.name}` };
  const focalLengthMm = asking.figure(lens.part, 'lens/focalLengthMm').value;
  return { change: thinLensBreathing({ focalLengthMm, fromDistanceMm, toDistanceMm }).change, from: `${lens.name} taken as a thin lens: an upper estimate` };
}

function ofFocuser(asking: Asking, subject: ShotSubject, focuser: SetupPiece, { nearMm, farMm }: ShotDistances): Change {
  const { vertical, front } = entrancePupils(asking, subject);
  const length = focuser.part.figure('lengthMm');
  if (length === undefined) throw new NotEntered([{ path: `${focuser.part.path}/lengthMm`, says: `length along the axis of ${focuser.name}` }]);
  const { change } = frontFocuserBreathing({
    pupilToFocuserMm: vertical.behindFrontMm + length.value / 2,
    focuserToSensorMm: focuserToSensor(asking, subject, focuser).value,
    fromDistanceMm: farMm,
    toDistanceMm: nearMm,
  });
  return { change, from: `up and down, ${focuser.name} ahead of the pupil of ${front.name}: an estimate` };
}
