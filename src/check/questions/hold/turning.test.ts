import { expect, test } from 'vitest';
import { askAll } from '../../../../test/ask.ts';
import { type Draft, exampleShoot } from '../../../../test/tinyShoot.ts';
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

test('a motor that pushes a block round in its seat: the block turns, and the least torque that turns the ring is the first cure', () => {
  const answer = askAll(turning, exampleShoot('demo')).find(({ key }) => key.includes('build=shoulder|joint=glasses/block-58/joints/block-seat'));
  expect(answer?.says).toBe('Old 2× block turns on 58 mm taking lens: the motor’s push beats the friction.');
  // The kit: all its 0.3 N·m at 16 mm push at the 57.6 mm of the ring, 1.08 N·m; with the limit of 0.2 N·m two thirds of that.
  expect(answer?.needs?.amount.value).toBeCloseTo((0.3 / 0.016) * 0.0576, 6);
  expect(answer?.mends?.[0]?.says).toMatch(/^Set the torque limit of Small motor to 0\.2\sN·m/);
  expect(answer?.mends?.[0]?.use).toBeCloseTo((0.2 / 0.016) * 0.0576 / 0.9, 6);
  expect(answer?.mends?.[1]?.says).toBe('A screw or a key in its seat: shape then holds it');
});

test('on a head the camera does not roll: what lies behind an upright screw does not turn it; on a shoulder it does, and the attitude is told', () => {
  // Statics: 1 kg, 150 mm to the side of the screw or behind it, jolts taken as 2: 2.94 N·m where the weight has that lever, else nothing.
  const behind = (purpose: string, at: readonly number[]) => monitorAnswer(withMonitor((draft) => {
    draft.builds.camera.purpose = purpose;
    draft.kit.parts['monitor-5'].points.foot.at = at;
    draft.assumptions = { 'mechanics.handlingFactor': 2, 'mechanics.knobForceN': 0.001 };
  }));
  const moment = 2 * 9.80665 * 0.15;
  expect(behind('tripod', [0, 0, 150])?.use).toBeLessThan(0.01);
  expect(behind('tripod', [150, 0, 0])).toMatchObject({ needs: { amount: { value: expect.closeTo(moment, 6) as number } }, says: expect.stringContaining('its own weight, looking straight up or down and with a jolt, beats') as string });
  expect(behind('shoulder', [0, 0, 150])).toMatchObject({ needs: { amount: { value: expect.closeTo(moment, 6) as number } }, says: expect.stringContaining('its own weight, held on its side and with a jolt, beats') as string });
});

test('no washer goes under what carries the picture', () => {
  const shoot = riggedShoot((draft) => {
    draft.builds.camera.purpose = 'shoulder';
    draft.kit.parts.body.massG = 9000;
  });
  const answer = askAll(turning, shoot).find(({ key }) => key.includes('joints/body-on-plate'));
  expect(answer?.verdict).toBe('fails');
  expect(answer?.mends?.map(({ says }) => says)).not.toContainEqual(expect.stringContaining('washer'));
  expect(monitorAnswer(withMonitor())?.mends?.map(({ says }) => says)).toContainEqual(expect.stringContaining('washer'));
});

test('what pins and rosettes are not trusted with is not promised to hold by shape', () => {
  const byShape = (massG: number) => monitorAnswer(withMonitor((draft) => (draft.kit.parts['monitor-5'].massG = massG)))?.mends?.find(({ says }) => says.includes('shape then holds it'));
  // 2 × 9.81 × 0.15 N·m for each kilogram: 30 N·m at 10.2 kg.
  expect(byShape(9000)?.use).toBe(0);
  expect(byShape(12_000)?.use).toBeUndefined();
  expect(byShape(12_000)?.says).toContain('not reckoned');
});

test('where another setup asks less of the joint, the one that asks most is named', () => {
  const all = askAll(turning, exampleShoot('demo')).filter(({ subject }) => subject.build === 'tripod');
  expect(all.find(({ key }) => key.includes('glasses/block-58/joints/block-seat'))?.says).toMatch(/beats the friction, in “Boathouse, sticks”\.$/);
  expect(all.find(({ verdict, says }) => verdict === 'fails' && says.includes('a touch on its edge'))?.says).toMatch(/beats the friction\.$/);
});

test('pins on one side only hold nothing, and it says so', () => {
  const answer = monitorAnswer(withMonitor((draft) => (draft.kit.parts.body.points.top.pins = true)));
  expect(answer?.notes).toContainEqual(expect.stringMatching(/has locating pins, .* no holes for them/));
});

test('what has no place is named as left out', () => {
  const loose = withMonitor((draft) => {
    draft.kit.parts.loose = { name: 'Loose box', kind: 'other', massG: 400 };
    draft.builds.camera.pieces.loose = { of: 'loose' };
  });
  expect(monitorAnswer(loose)?.notes).toContainEqual(expect.stringMatching(/^Has no place yet, and is left out: .*Loose box/));
});
