import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { exampleShoot, tinyShoot } from '../../test/tinyShoot.ts';
import { type Edit, applyEdit } from '../shoot/edit/Edit.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { Checker } from './Checker.ts';
import { judgeYes } from './judge.ts';
import { question } from './question.ts';
import { questions } from './questions/index.generated.ts';
import { restsOn } from './restsOn.ts';

/** Paths of numbers in a shoot that may be scaled without breaking a reference. A copy's own figures have paths for keys: they are not reached by one. */
function numberPaths(value: unknown, path: string, found: string[] = []): string[] {
  if (typeof value === 'number' && !/\/(version|count|order|atS)$/.test(path)) found.push(path);
  else if (typeof value === 'object' && value !== null) for (const [key, inner] of Object.entries(value)) if (!key.includes('/')) numberPaths(inner, path === '' ? key : `${path}/${key}`, found);
  return found;
}

const valueAt = (shoot: Shoot, path: string): unknown => path.split('/').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], shoot);
const demo = exampleShoot('demo');
const paths = numberPaths(demo, '');

property.prop([fc.array(fc.tuple(fc.integer({ min: 0, max: paths.length - 1 }), fc.constantFrom(0.5, 0.9, 1.1, 2)), { minLength: 1, maxLength: 3 })], { numRuns: 5 })(
  'after any edits, the kept answers equal those of a fresh check',
  (changes) => {
    const checker = new Checker(demo, questions);
    checker.answers();
    let shoot = demo;
    for (const [at, factor] of changes) {
      const path = paths[at] ?? '';
      const old = valueAt(shoot, path) as number;
      const edit: Edit = { says: 'scale', patches: [{ op: 'replace', path, value: Number.isInteger(old) ? Math.max(1, Math.round(old * factor)) : old * factor }] };
      const next = applyEdit(shoot, edit);
      if (!next.ok) continue;
      shoot = next.value.shoot;
      checker.update(shoot);
      checker.answers();
    }
    expect(checker.answers()).toEqual(new Checker(shoot, questions).answers());
  },
);

test('an edit asks again only what it touched', () => {
  let asked = 0;
  const watched = question({
    id: 'picture.watched', asks: 'Is it watched?', kind: 'immediate', explains: '', sources: [],
    subjects: (ledger) => ledger.keys('kit/parts').map((at) => ({ at })),
    ask: ({ ledger }, { at }) => {
      asked += 1;
      return judgeYes({ yes: ledger.at(`kit/parts/${at}/massG`) !== 0, says: { holds: 'yes', fails: 'no' } });
    },
  });
  const shoot = tinyShoot();
  const checker = new Checker(shoot, [watched]);
  const all = checker.answers().length;
  expect(asked).toBe(all);
  const edited = applyEdit(shoot, { says: 'heavier', patches: [{ op: 'replace', path: 'kit/parts/body/massG', value: 2500 }] });
  if (!edited.ok) throw new Error('the edit has faults');
  checker.update(edited.value.shoot);
  expect(checker.answers()).toHaveLength(all);
  expect(asked).toBe(all + 1);
});

test('one answer that goes wrong is unknown with its message, and takes nothing else down', () => {
  const broken = question({
    id: 'picture.broken', asks: 'Does it break?', kind: 'immediate', explains: '', sources: [],
    subjects: () => [{ at: 'one' }, { at: 'two' }, { at: 'three' }],
    ask: (_asking, { at }) => {
      if (at === 'one') throw new TypeError('inside out');
      return at === 'two' ? { verdict: 'good', says: 'fine', use: Number.NaN } : judgeYes({ yes: true, says: { holds: 'fine', fails: '' } });
    },
  });
  expect(new Checker(tinyShoot(), [broken]).answers()).toMatchObject([
    { verdict: 'unknown', unknown: 'could not judge', says: expect.stringContaining('inside out') as string },
    { verdict: 'unknown', unknown: 'could not judge' },
    { verdict: 'good' },
  ]);
});

test('a studied question is pending until it is studied, and pending again when what it read has changed', () => {
  const studied = question({
    id: 'focus.slow', asks: 'Is it slow?', kind: 'studied', explains: '', sources: [],
    subjects: () => [{}],
    ask: ({ ledger }) => judgeYes({ yes: ledger.at('title') !== '', says: { holds: 'yes', fails: 'no' } }),
  });
  const shoot = tinyShoot();
  const checker = new Checker(shoot, [studied]);
  expect(checker.answers()).toMatchObject([{ verdict: 'pending' }]);
  expect(checker.study('focus.slow')).toMatchObject({ verdict: 'good' });
  expect(checker.answers()).toMatchObject([{ verdict: 'good' }]);
  checker.update({ ...shoot, title: 'another' });
  expect(checker.answers()).toMatchObject([{ verdict: 'pending' }]);
});

test('an answer rests on the figures it read, with basis and bounds, defaults included', () => {
  const checker = new Checker(tinyShoot(), questions);
  const answer = checker.answers().find(({ question: id }) => id === 'picture.coverage');
  const rests = restsOn(checker.ledger, answer?.key ?? '');
  expect(rests.find(({ path }) => path === 'kit/parts/taking-58/lens/imageCircleMm')).toMatchObject({ value: 43.3, basis: 'sheet', unit: 'mm' });
});

test('every question explains itself in words and names its sources', () => {
  expect(questions.length).toBeGreaterThan(0);
  for (const { id, asks, explains, sources } of questions) {
    expect(asks, id).toMatch(/\?$/);
    expect(explains.length, id).toBeGreaterThan(80);
    expect(sources.length, id).toBeGreaterThan(0);
  }
});

test('no id of a part or piece shows in what an answer says', () => {
  for (const answer of new Checker(demo, questions).answers()) {
    for (const id of ['monitor-op', 'link-tx', 'pack-147', 'set-75-old', 'motor-small', 'body-a', 'op-monitor']) expect(answer.says).not.toContain(id);
  }
});
