import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, exampleShoot, tinyShoot } from '../../../../test/tinyShoot.ts';
import { shake } from './shake.ts';

const at = (change: (draft: Draft) => void) => askOne(shake, riggedShoot(change), 'glass=normal');
const torque = (torqueNm: number) => at((draft) => (draft.kit.parts.focuser.focus.ringTorqueNm = torqueNm));
const readout = (ms: number) => at((draft) => {
  for (const mode of Object.values<Draft>(draft.kit.parts.body.body.modes)) mode.rollingShutterMs = ms;
});

test('twice the push swings twice as far, and bends the picture twice as much', () => {
  const [one, two] = [torque(0.1), torque(0.2)];
  expect((two.needs?.amount.value ?? 0) / (one.needs?.amount.value ?? 1)).toBeCloseTo(2, 9);
  expect(two.notes).toContain('Estimate, not a load rating.');
});

test('a sensor read all at once bends nothing; half a swing in the readout bends by the whole swing', () => {
  expect(readout(0).use).toBe(0);
  const [slow, whole] = [readout(8), readout(1e4)];
  // Derived (mechanics.rollingShutterWobble): never more than twice the swing to either side.
  expect(slow.needs?.amount.value).toBeLessThanOrEqual(whole.needs?.amount.value ?? 0);
});

test('what carrying the drive by the glass promises is of the size that the demo’s own rod on the block gives', () => {
  const shoot = exampleShoot('demo');
  const [main, riding] = ['jetty-shoulder', 'jetty-shoulder-riding'].map((setup) => askOne(shake, shoot, `setup=${setup}|glass=block-58`));
  const promised = main?.mends?.[0]?.use ?? 0;
  expect(main?.mends?.[0]?.says).toContain('rides with the glass');
  // Both next to nothing beside the motor on the main rods; never nothing at all, as its own seat gives.
  expect([promised, riding?.use ?? 0].every((use) => use > 0.001 && use < 0.05 * (main?.use ?? 0))).toBe(true);
});

test('a camera that does not say how long it reads is not judged, and the figure is named', () => {
  const answer = at((draft) => {
    for (const mode of Object.values<Draft>(draft.kit.parts.body.body.modes)) delete mode.rollingShutterMs;
  });
  expect(answer.verdict).toBe('unknown');
  expect(JSON.stringify(answer.missing)).toContain('rollingShutterMs');
});

test('without a drive it does not arise', () => expect(askAll(shake, tinyShoot())).toEqual([]));
