import { describe, expect, test } from 'vitest';
import { coax, dc, outlet, pack, receiver, screen, sdi, transmitter, wiredShoot } from '../../test/wiredShoot.ts';
import { Ledger } from '../shoot/ledger/Ledger.ts';
import { linesText } from './linesText.ts';
import { paintFor } from './paint.ts';

const MODES = { fast: { name: 'fast', delayMs: 2, widthPx: 1280, heightPx: 720 } };
const text = (change?: Parameters<typeof wiredShoot>[1], columns = 120): string => {
  const shoot = wiredShoot({
    parts: {
      tx: transmitter(MODES), rx: receiver(MODES), screen: screen({ 'sdi-in': sdi('in'), 'dc-in': dc() }), small: screen({ 'dc-in': dc({ highV: 9 }) }, { name: 'Small screen', screen: undefined }), coax: coax(500), pack: pack(),
      regulator: { name: 'Regulator', kind: 'regulator', ports: { in: dc(), out: outlet('in', { outputV: 8 }) } },
    },
    pieces: { tx: { of: 'tx', net: 'a' }, rx: { of: 'rx', net: 'a' }, screen: { of: 'screen' }, small: { of: 'small' }, regulator: { of: 'regulator' }, pack: { of: 'pack' } },
    lines: { a: ['body/sdi-out', 'tx/sdi-in', 'coax'], b: ['rx/sdi-out', 'screen/sdi-in', 'coax'], c: ['pack/tap-1', 'screen/dc-in'], d: ['pack/tap-2', 'small/dc-in'] },
  }, (draft) => {
    delete draft.kit.parts.small.screen;
    draft.needs.viewers = { one: { who: 'puller', job: 'pull focus', screen: 'camera/screen', distanceMm: 500 } };
    change?.(draft);
  });
  return linesText(new Ledger(shoot), { setup: 'sticks', glass: 'normal' }, { paint: paintFor({ colour: false, unicode: true }), columns });
};

describe('a setup as text', () => {
  test('stages with format and delay so far: 40 at the camera, 2 on the air, 22 in the screen', () => {
    expect(text()).toMatch(/Screen: first assistant camera \(pull focus\)\n +Body, SDI output +1920 × 1080 at 25, 4:2:2 10 bit +40\s*ms\n[\s\S]*over the air: Transmitter to Receiver, fast +1280 × 720[^\n]* 42\s*ms\n[\s\S]*on the panel +64\s*ms, 1\.6 frames/u);
  });
  test('packs with volts, amps and hours; what must not be plugged in says so', () => {
    expect(text()).toMatch(/Pack   14\.4\s*V, 0\.9\d*\s*A, 13\s*W, \d/u);
    expect(text()).toContain('not to be plugged in: wrong voltage');
    expect(text()).toMatch(/without power: Body\n/);
  });
  test('what hangs behind a regulator stands below it, at its voltage', () => {
    const regulated = text((draft) => { Object.assign(draft.builds.camera.lines, { d: { from: 'pack/tap-2', to: 'regulator/in' }, e: { from: 'regulator/out', to: 'small/dc-in' } }); });
    expect(regulated).toMatch(/tap 2 → Regulator[^\n]*\n {6}power output → Small screen +no cable chosen, made 8\s*V/u);
  });
  test('a picture that does not come says why, and an unknown delay leaves the sum open', () => {
    expect(text((draft) => { draft.kit.parts.body.body.modes['open-gate'].outputs['sdi-out'] = { live: false }; })).toContain('The SDI output of Body is dead in this mode.');
    expect(text((draft) => { delete draft.kit.parts.tx.radio.modes.fast.delayMs; delete draft.kit.parts.rx.radio.modes.fast.delayMs; })).toMatch(/62\s*ms and more/u);
  });
  test.each([60, 80])('it fits %d columns, with nothing left out', (columns) => {
    const words = (of: string) => of.split(/[\s·]+/u).filter((word) => word !== '').toSorted();
    expect(Math.max(...text(undefined, columns).split('\n').map(({ length }) => length))).toBeLessThanOrEqual(columns);
    expect(words(text(undefined, columns))).toEqual(words(text()));
  });
  test('a missing draw is named, and the rest is still printed', () => {
    expect(text((draft) => { draft.kit.parts.screen.draw = undefined; delete draft.kit.parts.screen.draw; })).toContain('not entered: power in use of Screen');
  });
});
