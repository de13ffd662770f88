import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { coax, receiver, screen, sdi, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { delay } from './delay.ts';

const MODES = { fast: { name: 'fast', delayMs: 2, widthPx: 1280, heightPx: 720 }, detailed: { name: 'detailed', delayMs: 95 } };
const scene = (job: string, change: Parameters<typeof wiredShoot>[1] = () => undefined) =>
  wiredShoot({
    parts: { tx: transmitter(MODES), rx: receiver(MODES), screen: screen({ 'sdi-in': sdi('in') }), coax: coax(500) },
    pieces: { tx: { of: 'tx', net: 'a', mode: 'detailed' }, rx: { of: 'rx', net: 'a', mode: 'detailed' }, screen: { of: 'screen' } },
    lines: { a: ['body/sdi-out', 'tx/sdi-in', 'coax'], b: ['rx/sdi-out', 'screen/sdi-in', 'coax'] },
  }, (draft) => {
    draft.needs.viewers = { one: { who: 'puller', job, screen: 'camera/screen', distanceMm: 500 } };
    change(draft);
  });

test('40 at the camera, 95 on the air, 22 in the screen: 157 ms is late for a puller, not for a director (common practice)', () => {
  expect(askOne(delay, scene('pull focus'))).toMatchObject({ verdict: 'fails', needs: { amount: { value: 157 } } });
  expect(askOne(delay, scene('direct'))).toMatchObject({ verdict: 'good' });
});
test('the fast mode is the cure; it sets every radio on the net, and the sum is as promised', () => {
  const shoot = scene('pull focus');
  const mend = askOne(delay, shoot).mends?.[0];
  expect(mend).toMatchObject({ says: 'the mode fast on Transmitter, for all its receivers', use: 0.64, costs: 'everybody on it then sees 720 lines' });
  const edited = mend?.edit === undefined ? undefined : applyEdit(shoot, mend.edit);
  expect(edited?.ok === true && askOne(delay, edited.value.shoot)).toMatchObject({ use: 0.64, verdict: 'good' });
});
test('every delay that is missing is named at once, with the way to measure it', () => {
  const answer = askOne(delay, scene('direct', (draft) => {
    delete draft.kit.parts.body.body.modes['open-gate'].outputs['sdi-out'].delayMs;
    delete draft.kit.parts.screen.screen.delayMs;
  }));
  expect(answer.missing?.map(({ says }) => says)).toEqual(['delay from sensor to output of Body', 'delay from its input to light of Screen']);
  expect(answer.missing?.[0]?.measure).toContain('stopwatch');
});
