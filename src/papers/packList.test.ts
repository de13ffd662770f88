import { expect, test } from 'vitest';
import { testPress } from '../../test/press.ts';
import { type Draft, tinyShoot } from '../../test/tinyShoot.ts';
import { Papers } from './bundle.ts';

async function listOf(change: (draft: Draft) => void): Promise<string[]> {
  const papers = new Papers(tinyShoot(change), await testPress(), { kinds: ['pack-list'] });
  const files = (await Promise.all(papers.steps.map((step) => papers.make(step)))).flat();
  return new TextDecoder().decode(files.find(({ path }) => path === 'pack-list.csv')?.bytes).split(/\r?\n/);
}

const rowOf = (rows: readonly string[], id: string) => rows.find((row) => row.startsWith(`${id},`)) ?? '';

test('on a day that flies the list says where each thing goes: the body by hand, the screen in a case (what the question of the flight says)', async () => {
  const rows = await listOf((draft) => { draft.days.one.flies = true; });
  expect(rowOf(rows, 'body')).toContain('cabin, first assistant camera: 1');
  expect(rowOf(rows, 'pack-98')).toContain('cabin, first assistant camera: 3');
  expect(rowOf(rows, 'monitor-5')).toContain('case 1: 1');
});

test('on other days it does not', async () => expect((await listOf(() => undefined)).join('\n')).not.toMatch(/cabin, first|case 1/));
