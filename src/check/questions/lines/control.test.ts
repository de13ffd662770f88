import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { wiredShoot } from '../../../../test/wiredShoot.ts';
import { control } from './control.ts';

const scene = (lines: Record<string, readonly [string, string]>) =>
  wiredShoot({
    parts: {
      motor: { name: 'Motor', kind: 'motor', ports: { bus: { kind: 'control', way: 'in', connector: '7-pin round' } }, motor: { stallTorqueNm: 0.3, noLoadRpm: 190, gear: { module: 0.8, teeth: 40 } } },
      hand: { name: 'Hand unit', kind: 'hand unit', ports: { out: { kind: 'control', way: 'out', connector: '7-pin round' } }, handWheel: { turnDeg: 320 } },
    },
    pieces: { motor: { of: 'motor' }, hand: { of: 'hand' } }, lines,
  });

test('a hand on a cable turns the motor', () => expect(askOne(control, scene({ a: ['hand/out', 'motor/bus'] }))).toMatchObject({ verdict: 'good', says: 'Hand unit turns Motor.' }));
test('a motor without its cable', () => expect(askOne(control, scene({}))).toMatchObject({ verdict: 'fails', says: 'Nothing controls Motor: no control cable is plugged in.' }));
