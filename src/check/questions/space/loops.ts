import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';
import { settingWords, stopWords, unitOf } from '../../settingWords.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { printAmount } from '../../../units/print.ts';

export const loops = question({
  id: 'space.loops',
  asks: 'Does the rig close where it holds a piece twice?',
  kind: 'immediate',
  explains:
    'A lens held by its mount and by a support, a block held by the lens and by a collar on rods: the second joint must meet the first. The settings that are left to be found (slides, heights, turns) are moved ' +
    'within their ranges until all loops meet as well as they can, over several starts. The search is local: where nothing was found, that is said, and not that it is impossible.',
  sources: ['least squares with bounds (Nocedal and Wright, Numerical Optimization); common practice'],
  subjects: (ledger) => eachGlass(ledger).flatMap(({ setup, glass }) => placeSetup(ledger, setup, glass).loops.map(({ joint }) => ({ setup, glass, joint: joint.path }))),
  ask: (asking, { setup, glass, joint: path }) => {
    const { loops: all, settings } = placeSetup(asking.ledger, setup, glass);
    const loop = all.find(({ joint }) => joint.path === path);
    if (loop === undefined) return null;
    const { joint, misfitMm, misfitDeg, closes, canMove } = loop;
    const allowed = asking.assume(space.loopMisfitMm);
    const turned = closes ? misfitMm : Math.max(misfitMm, misfitDeg);
    const stops = stopWords(loop);
    return judgeRatio({
      needs: { amount: { value: turned, unit: 'mm' }, from: `${printAmount({ value: misfitMm, unit: 'mm' })} and ${printAmount({ value: misfitDeg, unit: 'deg' })} left between ${joint.b.piece.name} and ${joint.a.piece.name}` },
      has: { amount: { value: allowed.value, unit: 'mm' }, from: `what a hand closes ${origin(allowed)}` },
      says: {
        holds: `${joint.b.piece.name} meets ${joint.a.piece.name}.`,
        fails: !canMove
          ? `${joint.b.piece.name} does not meet ${joint.a.piece.name}, and nothing between them can be set.`
          : `No setting was found at which ${joint.b.piece.name} meets ${joint.a.piece.name}${stops.length === 0 ? '' : `: ${stops.join('; ')}`}.`,
      },
      steps: settings.map((setting) => ({ says: settingWords(setting), amount: { value: setting.value, unit: unitOf(setting.key) } })),
    });
  },
});
