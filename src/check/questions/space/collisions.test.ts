import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { collisions } from './collisions.ts';
import { order } from './order.ts';

/** The taking lens without length or shape: nobody knows where it ends. */
const shapeless = (change: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft) => {
    const lens = draft.kit.parts['taking-58'];
    delete lens.lengthMm;
    delete lens.solids;
    delete lens.points;
    delete draft.glasses.normal.joints;
    change(draft);
  });

test('a lens of which nobody entered the length stands in nothing: its length is asked for', () => {
  const missing = [{ path: 'kit/parts/taking-58/lengthMm', says: expect.stringContaining('length along the axis of') as string }];
  expect(askOne(collisions, shapeless())).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing });
  expect(askAll(order, shapeless()).filter(({ verdict }) => verdict === 'good')).toEqual([]);
  expect(askOne(collisions, shapeless((draft) => { draft.kit.parts['taking-58'].lengthMm = 62; })).unknown).toBeUndefined();
});

test.each(['gimbal', 'cage', 'collar'] as const)('a %s without a shape swallows nothing: it is not guessed, and that is said', (kind) => {
  const held = (solids: object) => riggedShoot((draft) => {
    draft.kit.parts.around = {
      name: 'Frame', kind, massG: 1500, ...solids,
      points: { on: { kind: 'thread', class: '3/8-16', sex: 'male', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] } },
    };
    draft.kit.parts.plate.points.under = { kind: 'hole', class: '3/8-16', sex: 'female', at: [0, -42, 0], out: [0, -1, 0], up: [0, 0, 1] };
    draft.builds.camera.pieces.around = { of: 'around' };
    draft.builds.camera.joints.around = { a: 'plate/under', b: 'around/on' };
  });
  const answer = askOne(collisions, held({}));
  expect(answer.verdict).toBe('good');
  expect(answer.notes).toEqual(['Frame goes round other pieces, and its shape is not entered: it was not looked at.', expect.stringMatching(/^Has no place yet, and is left out: .*5-inch monitor/)]);
  // Where its shape is entered it counts as any other.
  expect(askOne(collisions, held({ solids: [{ shape: 'box', sizeMm: [300, 400, 200] }] })).verdict).toBe('fails');
});
