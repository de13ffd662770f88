import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import type { Shoot } from '../../../shoot/schema/shoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { payload } from './payload.ts';

const onHead = (payloadG: number) =>
  riggedShoot((draft) => {
    draft.kit.parts.head = { name: 'Head', kind: 'head', massG: 3000, carrier: { kind: 'head', payloadG } };
    draft.kit.parts.legs = { name: 'Legs', kind: 'legs', massG: 4000, carrier: { kind: 'legs', payloadG: 20_000 } };
    Object.assign(draft.builds.camera.pieces, { head: { of: 'head' }, legs: { of: 'legs' } });
  });

test('the head carries all but itself and the legs; the legs carry the head too', () => {
  // Added by hand from the example: body 1900, lens 290, block 620, focuser 540, monitor 330, pack 680, plate 700, two rods 190, motor 260.
  const rig = 1900 + 290 + 620 + 540 + 330 + 680 + 700 + 190 + 260;
  expect(askOne(payload, onHead(10_000), 'glass=normal|piece=camera/head').needs?.amount.value).toBeCloseTo(rig, 6);
  expect(askOne(payload, onHead(10_000), 'glass=normal|piece=camera/legs').needs?.amount.value).toBeCloseTo(rig + 3000, 6);
});

test('too light a head fails and says which', () => expect(askOne(payload, onHead(4000), 'piece=camera/head')).toMatchObject({ verdict: 'fails', says: 'The rig is too heavy for Head.' }));

test('a rig is not light enough while the mass of a piece on the head is wanted; that of the legs under it is not asked for', () => {
  const without = (...parts: string[]) => {
    const shoot = structuredClone(onHead(10_000)) as Draft;
    for (const part of parts) delete shoot.kit.parts[part].massG;
    return askOne(payload, shoot as Shoot, 'glass=normal|piece=camera/head');
  };
  expect(without('legs', 'head').verdict).toBe('good');
  expect(without('body', 'legs')).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing: [{ path: 'kit/parts/body/massG' }] });
  expect(without('body', 'focuser', 'plate').missing).toHaveLength(3);
});
