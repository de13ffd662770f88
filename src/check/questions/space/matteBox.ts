import { type OpticalPath, opticalPath } from '../../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { seatsOf } from '../../../assembly/coarseShape.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { apply, compose, inverse } from '../../../assembly/placing/Transform.ts';
import { pointFrame } from '../../../assembly/placing/jointFrame.ts';
import { space } from '../../../standards/assumptions/space.ts';
import type { Judgement } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { origin } from '../../origin.ts';
import { lengthsMustBeThere } from '../../quantities/lengthsWanted.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const matteBox = question({
  id: 'space.matteBox',
  asks: 'Is the matte box square on the lens, close to its front, and does a stage hold each filter?',
  kind: 'immediate',
  explains:
    'The middle of the box must lie on the axis, or its edges cut one side of the picture first. A box on rods must leave the front of the lens a little room, and more where the front travels, but not so much that light from behind ' +
    'falls on the filters. Each pane of filter needs a stage that holds it. Measured from the rear of the box as it is placed to the front of the outermost barrel; whether its openings cut the picture is asked elsewhere.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    const box = path.matteBox;
    const barrel = path.stack.filter(({ part }) => part.has('lens') || part.has('block') || part.has('focuser')).at(-1);
    if (box === undefined || barrel === undefined) return null;
    return unheld(path, box) ?? placed(asking, subject, box, barrel, path.focusedBy?.ref === barrel.ref);
  },
});

/** A pane that no stage is left for. */
function unheld({ filters }: OpticalPath, box: SetupPiece): Judgement | undefined {
  const holds = (id: string): boolean => ['filter', 'turning filter'].includes(box.part.read(`matteBox/openings/${id}/holds`) as string);
  const stages = box.part.ledger.keys(`${box.part.path}/matteBox/openings`).filter(holds).length;
  const left = filters.filter(({ part }) => part.figure('filter/widthMm') !== undefined)[stages];
  if (left === undefined) return undefined;
  return judgeYes({ yes: false, says: { holds: '', fails: `${box.name} has no stage left for ${left.name}.` }, steps: [{ says: 'stages that hold a filter', amount: { value: stages, unit: 'count' } }] });
}

/** Below this the box is taken to be on the axis. */
const OFF_AXIS_MM = 0.5;

function placed(asking: Asking, subject: SetupGlass, box: SetupPiece, barrel: SetupPiece, focuses: boolean): Judgement | null {
  const stands = seatSeen(asking, subject, box, barrel);
  if (stands === undefined) return null;
  const { besideMm, gapMm } = stands;
  const steps = [{ says: 'beside the axis', amount: { value: besideMm, unit: 'mm' as const } }, { says: 'ahead of the front', amount: { value: gapMm, unit: 'mm' as const } }];
  const onRods = box.part.read('matteBox/fit') === 'rods';
  const travel = onRods && focuses ? Math.max(0, barrel.part.figure('front/travelMm')?.value ?? 0) : 0;
  if (onRods && gapMm < travel) {
    return judgeYes({ yes: false, says: { holds: '', fails: `The front of ${barrel.name} runs into ${box.name}${travel > 0 ? ' as it travels' : ''}.` }, steps });
  }
  const aside = !onRods || besideMm > OFF_AXIS_MM;
  const harmless = asking.assume(aside ? space.boxOffAxisMm : space.boxGapMm);
  return judgeRatio({
    needs: { amount: { value: aside ? besideMm : gapMm, unit: 'mm' }, from: aside ? 'between the middle of the box and the axis' : 'between the front and the box' },
    has: { amount: { value: harmless.value, unit: 'mm' }, from: `that does no harm ${origin(harmless)}` },
    says: {
      holds: `${box.name} sits right on ${barrel.name}.`,
      fails: aside ? `${box.name} sits beside the axis of ${barrel.name}.` : `${box.name} stands so far ahead of ${barrel.name} that light gets in between.`,
    },
    steps,
  });
}

/** Where the rear of the box lies, seen from the front of the barrel; `undefined` where either is not placed. */
function seatSeen({ ledger }: Asking, { setup, glass }: SetupGlass, box: SetupPiece, barrel: SetupPiece): { besideMm: number; gapMm: number } | undefined {
  const { places } = placeSetup(ledger, setup, glass);
  const [lensAt, boxAt] = [places.get(barrel.ref), places.get(box.ref)];
  if (lensAt !== undefined && boxAt !== undefined) lengthsMustBeThere(ledger, { setup, glass });
  const [front, rear] = [seatsOf(barrel.part).front, seatsOf(box.part).rear?.at];
  const frame = front === undefined ? undefined : pointFrame(front);
  if (lensAt === undefined || boxAt === undefined || frame === undefined || rear === undefined) return undefined;
  const [x, y, gapMm] = apply(inverse(compose(lensAt, frame)), apply(boxAt, rear));
  return { besideMm: Math.hypot(x, y), gapMm };
}
