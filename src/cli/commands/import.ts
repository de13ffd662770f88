import { Command } from 'commander';
import { applyEdit } from '../../shoot/edit/Edit.ts';
import { addParts } from '../../shoot/edit/addParts.ts';
import { importKitCsv } from '../../shoot/import/importKitCsv.ts';
import { columnsOf } from '../../shoot/import/columns.ts';
import { writeShoot } from '../../shoot/write.ts';
import { loadShoot, readText, writeWhole } from '../files.ts';
import { Refusal, valueOrRefuse } from '../Refusal.ts';
import { EXIT, type World } from '../World.ts';

export const summary = 'Takes parts from a CSV table into a shoot’s kit';

export function command(world: World): Command {
  return new Command('import')
    .description(`${summary}. One bad row loses no other; the exit code is 2 where any was left out.`)
    .argument('[table]', 'a CSV file with a header row')
    .option('--into <file>', 'the shoot file that takes the parts')
    .option('--columns [kind]', 'list the columns a table may have')
    .action((table: string | undefined, { into, columns }: { into?: string; columns?: string | true }) => {
      if (columns !== undefined) return world.out(columnsText(columns === true ? '' : columns));
      if (table === undefined || into === undefined) throw new Refusal('', [{ path: '', message: 'Two files are needed.', cure: 'setworthy import kit.csv --into day.shoot.json' }]);
      importTable(world, table, into);
    });
}

function importTable(world: World, table: string, into: string): void {
  const shoot = loadShoot(world, into);
  const { parts, faults } = importKitCsv(readText(table), [...Object.keys(shoot.kit.parts), ...Object.keys(shoot.kit.copies ?? {})]);
  for (const { row, column, message, cure } of faults) world.err(`${table}: row ${row}${column === undefined ? '' : `, column ${column}`}: ${message}${cure === undefined ? '' : ` ${cure}`}\n`);
  if (faults.length > 0) world.exitCode = EXIT.badInput;
  const ids = Object.keys(parts);
  if (ids.length === 0) return world.out('No part was taken in; nothing was written.\n');
  const { shoot: next } = valueOrRefuse(applyEdit(shoot, addParts(parts, `${ids.length} parts from a table`)), table);
  writeWhole(into, writeShoot(next));
  world.out(`${ids.length} ${ids.length === 1 ? 'part' : 'parts'} taken into ${into}: ${ids.join(', ')}\n`);
}

function columnsText(facet: string): string {
  const columns = [...columnsOf().values()].filter(({ path }) => facet === '' || path.startsWith(`${facet}/`) || !path.includes('/'));
  const widest = Math.max(...columns.map(({ path }) => path.length));
  return `${columns.map(({ path, holds, unit, says }) => `${path.padEnd(widest)}  ${[unit === '' ? holds : `${holds} in ${unit}`, says].filter((word) => word !== '').join('; ')}`).join('\n')}\n`;
}
