import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { exampleShoot, tinyShoot } from '../../../test/tinyShoot.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { IDENTITY, type Vector, cross, rotate, subtract, unit } from '../../assembly/placing/Transform.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { airPast, windMoment, windMomentAtMost, windOn } from './windOn.ts';

const asking = new Asking(new Ledger(exampleShoot('demo', () => undefined)));
const subject = { setup: 'jetty-sticks', glass: 'set-50' };
const all = [...placeSetup(asking.ledger, subject.setup, subject.glass).places.keys()].filter((ref) => ref.startsWith('tripod/'));
const direction = fc.tuple(...[1, 1, 1].map(() => fc.double({ min: -1, max: 1, noNaN: true }))).map(([x = 0, y = 0, z = 0]): Vector => unit([x, y, z], [0, 1, 0]));

property.prop([fc.subarray(all, { minLength: 1 }), direction, fc.integer({ min: -300, max: 300 })])('the quick bound is never less than what the outline gives, whatever the pieces and the line they turn about', (refs, axis, up) => {
  const air = airPast(asking, subject.setup);
  if (air === undefined) throw new Error('the demo has wind on the jetty');
  const lever = (place: Vector) => cross(axis, subtract(place, [0, up, 0]));
  const some = new Set(refs);
  const exact = windOn(asking, subject, { air, refs: some, key: refs.join() }).map((push) => windMoment(push, lever));
  expect(windMomentAtMost(asking, subject, { air, refs: some, lever }).momentNm * (1 + 1e-9)).toBeGreaterThanOrEqual(Math.max(0, ...exact));
});

test('two sails on a line askew have no arm but their width: the bound holds there too', () => {
  const shoot = tinyShoot((draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] };
    draft.kit.parts.sails = {
      name: 'Sails', kind: 'other', massG: 100, points: { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } },
      solids: [-300, 300].map((far) => ({ shape: 'box', sizeMm: [40, 40, 1], atMm: [far, far, 0] })),
    };
    draft.builds.camera.pieces.sails = { of: 'sails' };
    draft.builds.camera.joints = { ...draft.builds.camera.joints, sails: { a: 'body/top', b: 'sails/foot' } };
  });
  const own = new Asking(new Ledger(shoot));
  const use = { setup: 'sticks', glass: 'normal' };
  const places = placeSetup(own.ledger, use.setup, use.glass).places;
  const at = places.get('camera/sails')?.t;
  if (at === undefined) throw new Error('the sails have no place');
  const along = unit(rotate(places.get('camera/sails')?.r ?? IDENTITY.r, [1, 1, 0]), [0, 1, 0]);
  const lever = (place: Vector) => cross(along, subtract(place, at));
  const air = { speedMps: 10, says: '' };
  const refs = new Set(['camera/sails']);
  const worst = Math.max(...windOn(own, use, { air, refs, key: 'sails' }).map((push) => windMoment(push, lever)));
  // By hand, EN 1991-1-4: a quarter of the 640 mm of width beside the middle, on a line at 45°: 113 mm, on ½·1.225·10²·1.05·3200 mm².
  expect(worst).toBeCloseTo(0.5 * 1.225 * 100 * 1.05 * 3.2e-3 * 0.16 * Math.SQRT1_2, 3);
  expect(windMomentAtMost(own, use, { air, refs, lever }).momentNm).toBeGreaterThanOrEqual(worst);
});
