import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { focus } from './focus.ts';

const seen = (viewer: object, piece: object = {}, job = 'pull focus') =>
  tinyShoot((draft) => {
    Object.assign(draft.needs.viewers['puller-sees'], { job, ...viewer });
    Object.assign(draft.builds.camera.pieces.monitor, piece);
  });
const blur = (viewer: object, piece: object = {}) => askOne(focus, seen(viewer, piece)).needs?.amount.value ?? Number.NaN;

test('the sensor height over the lines that arrive is the least: 23.8 mm over 1080', () => expect(blur({ distanceMm: 60 }, { zoom: 4 })).toBeGreaterThan(23.8 / 1080));
test('at arm\'s length the eye is the limit, and the larger punch-in is the cure', () => {
  const answer = askOne(focus, seen({ distanceMm: 800 }, { zoom: 2 }));
  expect(answer).toMatchObject({ verdict: 'fails', mends: [{ says: 'punch in 4× on 5-inch monitor' }] });
  expect(answer.needs?.from).toContain('limited by the eye');
});
test('a viewer measured at half the calculated blur sees twice as fine', () => expect(blur({ blurRatio: 0.5 })).toBeCloseTo(blur({}) / 2, 12));
test('a client is not asked', () => expect(askAll(focus, seen({}, {}, 'client'))).toEqual([]));
property.prop([fc.double({ min: 200, max: 3000, noNaN: true }), fc.constantFrom(1, 2, 3)])('nearer or punched in never sees worse', (distanceMm, zoom) => {
  expect(blur({ distanceMm }, { zoom: zoom + 1 })).toBeLessThanOrEqual(blur({ distanceMm }, { zoom }));
  expect(blur({ distanceMm: distanceMm * 0.8 }, { zoom })).toBeLessThanOrEqual(blur({ distanceMm }, { zoom }));
});
