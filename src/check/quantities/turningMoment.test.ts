import { expect, test } from 'vitest';
import { jointHold } from '../../assembly/hold/jointHold.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { askAll } from '../../../test/ask.ts';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import type { Draft } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { turning } from '../questions/hold/turning.ts';
import { turningMoment } from './turningMoment.ts';

/** A screen of 400 × 300 × 20 mm over a screw that points up, out in a wind of 10 m/s with gusts of 1.5 times that. */
function inTheWind(change: (draft: Draft) => void = () => undefined) {
  return riggedShoot((draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, -20], out: [0, 1, 0], up: [0, 0, 1] };
    draft.kit.parts['monitor-5'].points = { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, -150, 0], out: [0, -1, 0], up: [0, 0, 1] } };
    draft.kit.parts['monitor-5'].solids = [{ shape: 'box', sizeMm: [400, 300, 20] }];
    draft.builds.camera.joints.monitor = { a: 'body/top', b: 'monitor/foot' };
    draft.days = { out: { name: 'The moor', windMps: 10 } };
    draft.assumptions = { 'mechanics.gustFactor': 1.5 };
    for (const shot of Object.values<Draft>(draft.shots)) Object.assign(shot, { day: 'out', place: 'exterior' });
    change(draft);
  });
}

function windOnMonitor(shoot: ReturnType<typeof inTheWind>) {
  const ledger = new Ledger(shoot);
  const placement = placeSetup(ledger, 'sticks', 'normal');
  const model = [...placement.model.tree, ...placement.model.loops].find(({ joint }) => joint.path.endsWith('/monitor'))!;
  const found = turningMoment(new Asking(ledger), { setup: 'sticks', glass: 'normal' }, jointHold(model, placement));
  return { wind: found?.cases.find(({ by }) => by === 'wind'), notes: found?.notes };
}

test('a screen as a sail: ½ρv²·Cd·A at a quarter of its width beside the screw (EN 1991-1-4, 7.4.3)', () => {
  // Square on: 0.12 m² × 1.05 × ½ × 1.225 × 15² = 17.36 N, at 100 mm. At 22.5° it shows 300 × (400·cos + 20·sin) and is as wide: the larger of the two.
  const width = 400 * Math.cos(Math.PI / 8) + 20 * Math.sin(Math.PI / 8);
  const moment = (wide: number) => 0.5 * 1.225 * 15 ** 2 * 1.05 * wide * 0.3e-3 * (wide / 4) * 1e-3;
  expect(windOnMonitor(inTheWind()).wind?.momentNm).toBeCloseTo(Math.max(moment(400), moment(width)), 3);
});

test('indoors there is no wind, and without a day that states one outdoors it is assumed', () => {
  expect(windOnMonitor(inTheWind((draft) => Object.values<Draft>(draft.shots).forEach((shot) => (shot.place = 'interior')))).wind).toBeUndefined();
  expect(windOnMonitor(inTheWind((draft: Draft) => delete draft.days.out.windMps)).wind?.says).toContain('no wind is entered');
  expect(windOnMonitor(inTheWind((draft) => (draft.days.out.windMps = 0))).wind).toBeUndefined();
});

test('a vehicle adds the speed it is driven at, and says so where none is entered', () => {
  const vehicle = (drivingMps?: number) => windOnMonitor(inTheWind((draft) => {
    draft.builds.camera.purpose = 'vehicle';
    for (const shot of Object.values<Draft>(draft.shots)) if (drivingMps !== undefined) shot.drivingMps = drivingMps;
  }));
  // Twice the speed of the air, four times the push.
  expect((vehicle(15).wind?.momentNm ?? 0) / (vehicle().wind?.momentNm ?? 1)).toBeCloseTo(4, 6);
  expect(vehicle(15).notes).toEqual([]);
  expect(vehicle().notes).toEqual([expect.stringContaining('not entered')]);
});

test('a gale turns it, and the answer names the wind', () => {
  const answer = askAll(turning, inTheWind((draft) => (draft.days.out.windMps = 28))).find(({ key }) => key.includes('joints/monitor'));
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringContaining('the wind') as string });
});
