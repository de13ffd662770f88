import { opticalPath } from '../../../assembly/opticalPath.ts';
import { seatsOf } from '../../../assembly/coarseShape.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { apply, compose, inverse } from '../../../assembly/placing/Transform.ts';
import { pointFrame } from '../../../assembly/placing/jointFrame.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const matteBox = question({
  id: 'space.matteBox',
  asks: 'Is the matte box square on the lens, close to its front, and does a stage hold each filter?',
  kind: 'immediate',
  explains:
    'The middle of the box must lie on the axis, or its edges cut one side of the picture first. A box on rods must leave the front of the lens a little room, and more where the front travels, but not so much that light from behind ' +
    'falls on the filters. Each pane of filter needs a stage that holds it. Measured from the rear of the box as it is placed to the front of the outermost barrel; whether its openings cut the picture is asked elsewhere.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: (asking, { setup, glass }) => {
    const path = opticalPath(asking.ledger, setup, glass);
    const box = path.matteBox;
    const barrel = path.stack.filter(({ part }) => part.has('lens') || part.has('block') || part.has('focuser')).at(-1);
    if (box === undefined || barrel === undefined) return null;
    const stages = box.part.ledger.keys(`${box.part.path}/matteBox/openings`).filter((id) => ['filter', 'turning filter'].includes(box.part.read(`matteBox/openings/${id}/holds`) as string));
    const panes = path.filters.filter(({ part }) => part.figure('filter/widthMm') !== undefined);
    if (panes.length > stages.length) {
      const left = panes[stages.length]?.name ?? 'a filter';
      return judgeYes({ yes: false, says: { holds: '', fails: `${box.name} has no stage left for ${left}.` }, steps: [{ says: 'stages that hold a filter', amount: { value: stages.length, unit: 'count' } }] });
    }
    const { places } = placeSetup(asking.ledger, setup, glass);
    const [lensAt, boxAt] = [places.get(barrel.ref), places.get(box.ref)];
    const [front, rear] = [seatsOf(barrel.part).front, seatsOf(box.part).rear];
    const frame = front === undefined ? undefined : pointFrame(front);
    if (lensAt === undefined || boxAt === undefined || frame === undefined || rear?.at === undefined) return null;
    const [x, y, gap] = apply(inverse(compose(lensAt, frame)), apply(boxAt, rear.at));
    const beside = Math.hypot(x, y);
    const steps = [{ says: 'beside the axis', amount: { value: beside, unit: 'mm' as const } }, { says: 'ahead of the front', amount: { value: gap, unit: 'mm' as const } }];
    const onRods = box.part.read('matteBox/fit') === 'rods';
    const travel = onRods && path.focusedBy?.ref === barrel.ref ? Math.max(0, barrel.part.figure('front/travelMm')?.value ?? 0) : 0;
    if (onRods && gap < travel) {
      return judgeYes({ yes: false, says: { holds: '', fails: `The front of ${barrel.name} runs into ${box.name}${travel > 0 ? ' as it travels' : ''}.` }, steps });
    }
    const allowed = asking.assume(beside > OFF_AXIS_MM || !onRods ? space.boxOffAxisMm : space.boxGapMm);
    const asked = beside > OFF_AXIS_MM || !onRods ? beside : gap;
    return judgeRatio({
      needs: { amount: { value: asked, unit: 'mm' }, from: asked === beside ? 'between the middle of the box and the axis' : 'between the front and the box' },
      has: { amount: { value: allowed.value, unit: 'mm' }, from: 'that does no harm (assumed)' },
      says: {
        holds: `${box.name} sits right on ${barrel.name}.`,
        fails: asked === beside ? `${box.name} sits beside the axis of ${barrel.name}.` : `${box.name} stands so far ahead of ${barrel.name} that light gets in between.`,
      },
      steps,
    });
  },
});

/** Below this the box is taken to be on the axis. */
const OFF_AXIS_MM = 0.5;
