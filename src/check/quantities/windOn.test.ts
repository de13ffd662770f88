import { fc, test as property } from '@fast-check/vitest';
import { expect } from 'vitest';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type Vector, cross, subtract, unit } from '../../assembly/placing/Transform.ts';
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
