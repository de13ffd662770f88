import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { exampleShoot, tinyShoot } from '../../test/tinyShoot.ts';
import { Checker } from '../check/Checker.ts';
import { questions } from '../check/questions/index.generated.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { writeShoot } from '../shoot/write.ts';
import { withEntries } from './changedEntries.ts';
import { entering } from './place.ts';
import { ShootKeeper } from './ShootKeeper.ts';
import { studyEach } from './studyEach.ts';

const opened = (shoot: Shoot): ShootKeeper => {
  const keeper = new ShootKeeper();
  expect(keeper.open(writeShoot(shoot)).ok).toBe(true);
  return keeper;
};

const PLACES = [
  ['kit/parts/taking-58/lens/imageCircleMm', 30, 60], ['kit/parts/body/draw/typicalW', 5, 60], ['shots/portrait/tStop', 1.4, 16], ['days/one/temperatureC', -20, 40], ['kit/parts/focuser/focus/throwDeg', 90, 300], ['needs/viewers/puller-sees/distanceMm', 200, 3000],
] as const;
const change = fc.tuple(fc.constantFrom(...PLACES), fc.double({ min: 0, max: 1, noNaN: true })).map(([[path, low, high], share]) => ({ path, value: low + (high - low) * share }));

property.prop([fc.array(change, { minLength: 1, maxLength: 8 })], { numRuns: 20 })('what the page keeps by changes alone is what a fresh check of the same shoot says; undone, all is as it was', (changes) => {
  const start = tinyShoot();
  const keeper = opened(start);
  const before = keeper.text();
  let shoot = keeper.shoot;
  const answers = new Map(new Checker(shoot, questions).answers().map((answer) => [answer.key, answer.verdict]));
  for (const { path, value } of changes) {
    const edited = keeper.edit({ says: path, patches: entering(shoot, path, value) });
    if (!edited.ok) continue;
    shoot = withEntries(shoot, edited.value.entries);
    for (const key of edited.value.gone) answers.delete(key);
    for (const answer of edited.value.answers) answers.set(answer.key, answer.verdict);
  }
  expect(shoot).toEqual(keeper.shoot);
  expect([...answers].sort()).toEqual(new Checker(keeper.shoot, questions).answers().map((answer): [string, string] => [answer.key, answer.verdict]).sort());
  while (keeper.undo().ok) { /* Until there is nothing to undo. */ }
  expect(keeper.text()).toBe(before);
});

test('the edits of one drag are undone in one step, and done again in one', () => {
  const keeper = opened(tinyShoot());
  const path = 'shots/portrait/tStop';
  for (const value of [3, 4, 5]) expect(keeper.edit({ says: 'stop', patches: entering(keeper.shoot, path, value) }, 'one drag').ok).toBe(true);
  keeper.undo();
  expect(keeper.shoot.shots?.['portrait']?.tStop).toBe(2.8);
  keeper.redo();
  expect(keeper.shoot.shots?.['portrait']?.tStop).toBe(5);
});

test('an edit that would break the file is refused with its place, and changes nothing', () => {
  const keeper = opened(tinyShoot());
  const before = keeper.text();
  expect(keeper.edit({ says: 'no', patches: [{ op: 'replace', path: 'shots/portrait/setup', value: 'nowhere' }] })).toMatchObject({ ok: false, faults: [{ path: 'shots/portrait/setup' }] });
  expect(keeper.text()).toBe(before);
  expect(keeper.undo().ok).toBe(false);
});

describe('studied answers', () => {
  const studied = (): { keeper: ShootKeeper; revision: number; key: string; adopt: () => boolean } => {
    const keeper = opened(exampleShoot('demo'));
    const { shoot, keys, revision } = keeper.study();
    const key = keys[0] ?? '';
    let found: Parameters<ShootKeeper['adopt']>[0] | undefined;
    studyEach(shoot, [key], (one) => { found = one; });
    return { keeper, revision, key, adopt: () => found !== undefined && keeper.adopt(found, revision) !== undefined };
  };

  test('are taken in, and hold until what they read changes', () => {
    const { keeper, key, adopt } = studied();
    expect(adopt()).toBe(true);
    expect(keeper.pending()).not.toContain(key);
    const shot = /shot=([^|]+)/.exec(key)?.[1] ?? '';
    keeper.edit({ says: 'stop', patches: [{ op: 'replace', path: `shots/${shot}/tStop`, value: 11 }] });
    expect(keeper.pending()).toContain(key);
  });

  test('are not taken in where what they read has changed meanwhile', () => {
    const { keeper, key, adopt } = studied();
    const shot = /shot=([^|]+)/.exec(key)?.[1] ?? '';
    keeper.edit({ says: 'stop', patches: [{ op: 'replace', path: `shots/${shot}/tStop`, value: 11 }] });
    expect(adopt()).toBe(false);
  });
});

test('an edit that changes nothing leaves nothing to undo', () => {
  const keeper = opened(tinyShoot());
  const same = { says: 'the same again', patches: [{ op: 'replace', path: 'title', value: keeper.shoot.title }] } as const;
  expect(keeper.edit(same)).toMatchObject({ ok: true, value: { history: {} } });
  expect(keeper.undo().ok).toBe(false);
});
