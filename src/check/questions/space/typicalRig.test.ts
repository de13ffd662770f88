import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { checkShoot } from '../../../shoot/read.ts';
import { typicalPart } from '../../../shoot/typical/typicalParts.ts';
import { collisions } from './collisions.ts';
import { gearReach } from './gearReach.ts';
import { mates } from './mates.ts';
import { order } from './order.ts';
import { rodLength } from './rodLength.ts';

/** A tripod build of typical parts, as one would join it: cage, baseplate, rods, a motor on a clamp, a monitor on an arm, packs behind, on wedge, plate, head and legs. */
function typicalRig(body: string, lens: string, risen: boolean) {
  const pieces = {
    body, cage: 'cage', base: 'baseplate-15', 'rod-left': 'rod-15-300', 'rod-right': 'rod-15-300', clamp: 'rod-clamp', motor: 'motor-medium', arm: 'arm', monitor: 'monitor-5', packs: 'plate-single', wedge: 'dovetail', quick: 'quick-plate', head: 'head-medium', legs: 'legs-tall', handle: 'side-grip', ...(risen ? { riser: 'riser' } : {}),
  };
  const glass = { lens, focuser: 'variable-diopter', block: 'block-2x' };
  const used = [...new Set([...Object.values(pieces), ...Object.values(glass), 'pack-14v-98'])];
  const joint = (a: string, b: string, settings?: object) => ({ a, b, ...(settings === undefined ? {} : { settings }) });
  const shoot = {
    format: 'setworthy shoot', version: 0, title: 'Joined', needs: { delivery: { aspect: 2.39, widthPx: 3840 } },
    kit: { parts: Object.fromEntries(used.map((id) => [id, { ...typicalPart(id), count: 2 }])) },
    builds: {
      camera: {
        name: 'Camera', purpose: 'tripod', root: 'legs', camera: 'body', pieces: Object.fromEntries(Object.entries(pieces).map(([id, of]) => [id, id === 'packs' ? { of, packs: ['pack-14v-98'] } : { of }])),
        joints: {
          body: joint('cage/body', 'body/base'), ...(risen ? { cage: joint('riser/top', 'cage/base'), riser: joint('base/top', 'riser/base') } : { cage: joint('base/top', 'cage/base') }), 'rod-left': joint('base/rod-left', 'rod-left/back'), 'rod-right': joint('base/rod-right', 'rod-right/back'),
          clamp: joint('rod-left/along', 'clamp/rod', { slideMm: { auto: 'perLens' }, turnDeg: { auto: 'perLens', low: -120, high: 120 } }), motor: joint('clamp/top', 'motor/foot'),
          arm: joint('cage/front', 'arm/foot'), monitor: joint('arm/top', 'monitor/foot'), packs: joint('cage/back', 'packs/front'), handle: joint('cage/left', 'handle/foot'),
          base: joint('wedge/top', 'base/base'), wedge: joint('quick/top', 'wedge/base'), quick: joint('head/top', 'quick/base'), head: joint('legs/top', 'head/base'),
          mesh: { ...joint('focuser/gear', 'motor/gear'), mesh: true },
        },
      },
    },
    glasses: { first: { name: 'First', stack: ['lens', 'block', 'focuser'], pieces: Object.fromEntries(Object.entries(glass).map(([id, of]) => [id, { of }])) } },
    setups: { first: { name: 'First', camera: 'camera', glasses: ['first'], mode: 'open-gate', frameRateHz: 25 } },
  };
  const read = checkShoot(shoot);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

test.each([['body-full-frame', 'lens-58', false], ['body-mirrorless-full-frame', 'lens-85', true]] as const)('a rig of typical parts goes together and stands somewhere: %s, %s, riser %s', (body, lens, risen) => {
  const shoot = typicalRig(body, lens, risen);
  expect(placeSetup(new Ledger(shoot), 'first', 'first').unplaced).toEqual([]);
  // 15 mm rods run 85 mm below the axis (common practice).
  const places = placeSetup(new Ledger(shoot), 'first', 'first').places;
  expect(Math.abs((places.get('camera/rod-left')?.t[1] ?? 0) + 85)).toBeLessThan(1);
  expect(askOne(mates, shoot)).toMatchObject({ verdict: 'good' });
  for (const question of [gearReach, rodLength, order]) expect(askAll(question, shoot).map(({ verdict, says }) => [verdict, says])).toEqual(askAll(question, shoot).map(({ says }) => ['good', says]));
  // Its shapes are guesses: they may be near, and fail nothing.
  expect(askOne(collisions, shoot).verdict).not.toBe('fails');
  expect(askOne(collisions, shoot).steps).toEqual([]);
});
