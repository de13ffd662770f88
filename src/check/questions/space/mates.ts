import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { rigJoints } from '../../../assembly/placing/rigJoints.ts';
import { printAmount } from '../../../units/print.ts';
import { judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { settingWords, unitOf } from '../../settingWords.ts';
import { eachGlass } from '../../subjects.ts';

export const mates = question({
  id: 'space.mates',
  asks: 'Does every joint go together?',
  kind: 'immediate',
  explains:
    'Two points mate where their kinds go together (a thread with a thread or hole, a clamp with a rod), their classes agree (1/4-20 with 1/4-20, 15 mm with 15 mm) and one is male where the other is ' +
    'female; and a setting must lie within the range of its point. A joint of the glass that names a piece of another build counts only there. Joints whose points have no class are taken at their word.',
  sources: ['ISO 1222 (camera screws); common practice'],
  subjects: eachGlass,
  ask: ({ ledger }, { setup, glass }) => {
    const { joints, dangling } = rigJoints(ledger, setup, glass);
    if (joints.length === 0) return null;
    const { beyond } = placeSetup(ledger, setup, glass);
    const bad = joints.filter(({ fault }) => fault !== undefined);
    const faults = [
      ...bad.map(({ a, b, fault }) => `${b.piece.name} does not go on ${a.piece.name}: ${fault}`),
      ...beyond.map(({ joint, key, value, low, high }) => {
        const print = (one: number) => printAmount({ value: one, unit: unitOf(key) });
        return `The ${settingWords({ joint, key })} is set to ${print(value)}, and goes from ${print(low)} to ${print(high)}`;
      }),
    ];
    return judgeYes({
      yes: faults.length === 0,
      says: { holds: `All ${joints.length} joints go together.`, fails: `${faults[0] ?? ''}.` },
      steps: faults.slice(1).map((says) => ({ says })),
      mends: bad.flatMap(({ mateFault }) => (mateFault?.cure === undefined ? [] : [{ says: mateFault.cure }])),
      notes: dangling.length === 0 ? [] : [`${dangling.length} of the joints of this glass are for other builds and count only there.`],
    });
  },
});
