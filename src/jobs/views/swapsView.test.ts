import { expect, test } from 'vitest';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { swapsView } from './swapsView.ts';

test('what moves with the lens is told from a place that one sees, in the units asked for', () => {
  const rowOf = (system: 'metric' | 'imperial') => swapsView(new Ledger(exampleShoot('demo')), 'jetty-sticks', system).rows.find(({ moves, says }) => moves && says.includes('rod'));
  const [metric, imperial] = [rowOf('metric'), rowOf('imperial')];
  expect(metric?.cells.filter((cell) => cell !== undefined)).not.toEqual([]);
  for (const cell of metric?.cells ?? []) if (cell !== undefined) expect(cell).toMatch(/^clamp [\d.]+\smm (behind|past) the rod’s front end$/);
  for (const cell of imperial?.cells ?? []) if (cell !== undefined) expect(cell).toMatch(/\s(in|″) (behind|past) the rod’s front end$/);
});
