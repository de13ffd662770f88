import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
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
