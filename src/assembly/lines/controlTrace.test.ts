import { expect, test } from 'vitest';
import { wiredShoot } from '../../../test/wiredShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { controlPaths } from './controlTrace.ts';

const control = (way: 'in' | 'out', protocol: string) => ({ kind: 'control', way, connector: '7-pin round', control: { protocol } });
const radio = (role: 'transmits' | 'receives') => ({ role, carries: 'control', bandMHz: 2400, modes: { normal: { name: 'normal', delayMs: 9 } } });
const parts = {
  motor: { name: 'Motor', kind: 'motor', ports: { bus: control('in', 'a') }, motor: { stallTorqueNm: 0.3, noLoadRpm: 190, gear: { module: 0.8, teeth: 40 }, delayMs: 6 } },
  rx: { name: 'Receiver', kind: 'controller', ports: { motor: control('out', 'a'), other: control('out', 'b') }, radio: radio('receives') },
  hand: { name: 'Hand', kind: 'hand unit', radio: radio('transmits'), handWheel: { turnDeg: 320, delayMs: 5 } },
};

function path(rx: object, hand: object, from = 'rx/motor', lines = true) {
  const shoot = wiredShoot({ parts, pieces: { motor: { of: 'motor' }, rx: { of: 'rx', ...rx }, hand: { of: 'hand', ...hand } }, ...(lines ? { lines: { bus: [from, 'motor/bus'] as const } } : {}) });
  return controlPaths(new Ledger(shoot), 'sticks', 'normal')[0];
}

test('from the hand over the air to the motor', () => {
  const found = path({ net: 'f' }, { net: 'f' });
  expect(found?.legs.map(({ kind, piece }) => [kind, piece.id])).toEqual([['hand', 'hand'], ['air', 'rx'], ['cable', 'motor']]);
  expect(found?.hand?.id).toBe('hand');
});

test.each([
  ['no cable', path({ net: 'f' }, { net: 'f' }, 'rx/motor', false), 'not connected'],
  ['no net', path({}, { net: 'f' }), 'no net'],
  ['another net', path({ net: 'g' }, { net: 'f' }), 'no transmitter'],
  ['another protocol', path({ net: 'f' }, { net: 'f' }, 'rx/other'), 'protocol'],
])('%s', (_, found, expected) => expect(found?.broken?.kind).toBe(expected));
