import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { resolution } from './resolution.ts';

test('1080 lines sent to a panel of 720 are wasted on it, which is no failure', () => {
  expect(askOne(resolution, tinyShoot((draft) => { draft.kit.parts['monitor-5'].screen.heightPx = 720; }))).toMatchObject({ verdict: 'tight', needs: { amount: { value: 1080 } }, has: { amount: { value: 720 } } });
  expect(askOne(resolution, tinyShoot()).verdict).toBe('good');
});
