import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { sound } from './sound.ts';

const heard = (cameraMs: number, soundMs: number | undefined) =>
  tinyShoot((draft) => {
    draft.needs.viewers['puller-sees'].hearsSound = true;
    if (soundMs !== undefined) draft.needs.soundDelayMs = soundMs;
    draft.kit.parts.body.body.modes['open-gate'].outputs['sdi-out'].delayMs = cameraMs;
  });

test.each([
  ['38 ms early is not noticed', 20, 4, 'good'], ['78 ms early is noticed', 60, 4, 'tight'], ['98 ms early is not accepted', 80, 4, 'fails'],
  ['98 ms late is not noticed', 20, 140, 'good'], ['158 ms late is noticed', 20, 200, 'tight'], ['190 ms late is not accepted', 20, 232, 'fails'],
])('%s (ITU-R BT.1359-1: noticed from 45 early and 125 late, accepted to 90 and 185 ms; screen 22 ms)', (_, cameraMs, soundMs, verdict) => expect(askOne(sound, heard(cameraMs, soundMs)).verdict).toBe(verdict));
test('without a delay of the sound it is asked for; who hears nothing is not asked', () => {
  expect(askOne(sound, heard(40, undefined))).toMatchObject({ unknown: 'not entered' });
  expect(askAll(sound, tinyShoot())).toEqual([]);
});
