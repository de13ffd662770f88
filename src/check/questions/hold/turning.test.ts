import { expect, test } from 'vitest';
import { askAll } from '../../../../test/ask.ts';
import { type Draft } from '../../../../test/tinyShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { turning } from './turning.ts';

/** A monitor of a kilogram on one screw, 150 mm out from the body’s top. */
function withMonitor(change: (draft: Draft) => void = () => undefined) {
  return riggedShoot((draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, -20], out: [0, 1, 0], up: [0, 0, 1] };
    draft.kit.parts['monitor-5'].massG = 1000;
    draft.kit.parts['monitor-5'].points = { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [150, 0, 0], out: [0, -1, 0], up: [0, 0, 1], contactMm: [4, 15] } };
    draft.kit.parts['monitor-5'].solids = [{ shape: 'box', sizeMm: [120, 80, 20], atMm: [0, 0, 0] }];
    draft.builds.camera.joints.monitor = { a: 'body/top', b: 'monitor/foot', torqueNm: 2 };
    change(draft);
  });
}

const monitorAnswer = (shoot: ReturnType<typeof withMonitor>) => askAll(turning, shoot).find(({ key }) => key.includes('joints/monitor'));

test('slip moment of the screw: 2 N·m on 1/4 in at nut factor 0.2 gives 1575 N and slips at μ·F·r', () => {
  // Derived in the handbook of check values: at μ 0.15, 4 and 15 mm, 2.495 N·m; other frictions scale it.
  const answer = monitorAnswer(withMonitor((draft) => (draft.assumptions = { 'mechanics.faceFriction': 0.15, 'mechanics.nutFactor': 0.2 })));
  expect(answer?.has?.amount.value).toBeCloseTo(2.495, 2);
});

test('weight times arm is the least that is asked of it, and it says what it is not', () => {
  const answer = monitorAnswer(withMonitor());
  expect(answer?.needs?.amount.value).toBeGreaterThanOrEqual(1 * 9.80665 * 0.15 * 0.99);
  expect(answer?.notes).toContain('Estimate, not a load rating.');
});

test('locating pins on both sides: held by shape, and not asked about', () => {
  const pinned = withMonitor((draft) => {
    draft.kit.parts.body.points.top.pins = true;
    draft.kit.parts['monitor-5'].points.foot.pins = true;
  });
  expect(monitorAnswer(pinned)).toBeUndefined();
});
