import { rigJoints } from '../../../assembly/placing/rigJoints.ts';
import { judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const mates = question({
  id: 'space.mates',
  asks: 'Does every joint go together?',
  kind: 'immediate',
  explains:
    'Two points mate where their kinds go together (a thread with a thread or hole, a clamp with a rod), their classes agree (1/4-20 with 1/4-20, 15 mm with 15 mm) and one is male where the other is ' +
    'female. A joint of the glass that names a piece of another build counts only there. Joints whose points have no class are taken at their word.',
  sources: ['ISO 1222 (camera screws); common practice'],
  subjects: eachGlass,
  ask: ({ ledger }, { setup, glass }) => {
    const { joints, dangling } = rigJoints(ledger, setup, glass);
    if (joints.length === 0) return null;
    const bad = joints.filter(({ fault }) => fault !== undefined);
    const first = bad[0];
    const says = first === undefined ? '' : `${first.b.piece.name} does not go on ${first.a.piece.name}: ${first.fault}.`;
    return judgeYes({
      yes: bad.length === 0,
      says: { holds: `All ${joints.length} joints go together.`, fails: says },
      steps: bad.slice(1).map(({ a, b, fault }) => ({ says: `${b.piece.name} on ${a.piece.name}: ${fault}` })),
      notes: dangling.length === 0 ? [] : [`${dangling.length} of the joints of this glass are for other builds and count only there.`],
    });
  },
});
