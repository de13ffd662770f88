import { Command } from 'commander';
import { faultText } from '../../faults/Fault.ts';
import { applyEdit } from '../../shoot/edit/Edit.ts';
import { addParts } from '../../shoot/edit/addParts.ts';
import { importKitCsv } from '../../shoot/import/importKitCsv.ts';
import { columnsOf } from '../../shoot/import/columns.ts';
import { columnsOfKind } from '../../shoot/import/columnsOfKind.ts';
import { KINDS } from '../../shoot/schema/part.ts';
import { looksMeasured, readMeasured, takeMeasured } from '../../shoot/import/measured.ts';
import { writeShoot } from '../../shoot/write.ts';
import { looksLikeEdid } from '../../shoot/edid/looksLikeEdid.ts';
import { takingEdid } from '../../jobs/importParts.ts';
import { chosen } from '../chosen.ts';
import { loadShoot, readWhole, textOf, writeWhole } from '../files.ts';
import { Refusal, valueOrRefuse } from '../Refusal.ts';
import { EXIT, type World } from '../World.ts';
import { wrap } from '../wrap.ts';

export const summary = 'Takes parts from a CSV table or a screen’s EDID, or what a phone page gave back, into a shoot';

export function command(world: World): Command {
  return new Command('import')
    .description(`${summary}. One bad row loses no other; the exit code is 2 where any was left out.`)
    .argument('[table]', 'a CSV file with a header row, an EDID (bytes or hex text), or the file a phone page gave back')
    .option('--into <file>', 'the shoot file that takes it in')
    .option('--columns [kind]', 'list the columns a table may have, for a kind of part or a group of columns')
    .action((table: string | undefined, { into, columns }: { into?: string; columns?: string | true }) => {
      if (columns !== undefined) return world.out(columnsText(columns === true ? '' : columns));
      if (table === undefined || into === undefined) throw new Refusal('', [{ path: '', message: 'Two files are needed.', cure: 'setworthy import kit.csv --into day.shoot.json' }]);
      const bytes = readWhole(table);
      if (looksLikeEdid(bytes)) return importScreen(world, { file: table, bytes, into });
      const text = textOf(bytes, table);
      if (looksMeasured(text)) importMeasured(world, { file: table, text, into });
      else importTable(world, { table, text, into });
    });
}

/** Measured figures and ticks from a phone page. */
function importMeasured(world: World, { file, text, into }: { file: string; text: string; into: string }): void {
  const shoot = loadShoot(world, into);
  const given = valueOrRefuse(readMeasured(text), file);
  if (given.shoot !== shoot.title) world.err(`${file}: It was made for "${given.shoot}"; this shoot is "${shoot.title}".\n`);
  const { shoot: next, figures, ticks, faults } = takeMeasured(shoot, given);
  for (const fault of faults) world.err(`${file}: ${faultText(fault)}\n`);
  if (faults.length > 0) world.exitCode = EXIT.badInput;
  if (figures + ticks === 0) return world.out('Nothing was taken in; nothing was written.\n');
  writeWhole(into, writeShoot(next));
  world.out(`${figures} measured ${figures === 1 ? 'figure' : 'figures'} and ${ticks} ${ticks === 1 ? 'tick' : 'ticks'} taken into ${into}\n`);
}

/** A screen as it describes itself. */
function importScreen(world: World, { file, bytes, into }: { file: string; bytes: Uint8Array; into: string }): void {
  const shoot = loadShoot(world, into);
  const { edit, faults } = takingEdid(shoot, bytes);
  for (const fault of faults) world.err(`${file}: ${faultText(fault)}\n`);
  if (edit === undefined) {
    world.exitCode = EXIT.badInput;
    return world.out('No screen was taken in; nothing was written.\n');
  }
  writeWhole(into, writeShoot(valueOrRefuse(applyEdit(shoot, edit), file).shoot));
  world.out(`${edit.says} taken into ${into}. Enter its size, delay, squeezes and power: an EDID does not hold them all.\n`);
}

function importTable(world: World, { table, text, into }: { table: string; text: string; into: string }): void {
  const shoot = loadShoot(world, into);
  const { parts, faults } = importKitCsv(text, [...Object.keys(shoot.kit.parts), ...Object.keys(shoot.kit.copies ?? {})]);
  for (const { row, column, message, cure } of faults) world.err(`${table}: row ${row}${column === undefined ? '' : `, column ${column}`}: ${message}${cure === undefined ? '' : ` ${cure}`}\n`);
  if (faults.length > 0) world.exitCode = EXIT.badInput;
  const ids = Object.keys(parts);
  const leftOut = new Set(faults.filter(({ row }) => row > 1).map(({ row }) => row)).size;
  if (leftOut > 0) world.err(`${leftOut === 1 ? 'One row was' : `${leftOut} rows were`} left out; mend and import ${leftOut === 1 ? 'it' : 'them'} again.\n`);
  if (ids.length === 0) return world.out('No part was taken in; nothing was written.\n');
  const { shoot: next } = valueOrRefuse(applyEdit(shoot, addParts(parts, `${ids.length} parts from a table`)), table);
  writeWhole(into, writeShoot(next));
  world.out(`${ids.length} ${ids.length === 1 ? 'part' : 'parts'} taken into ${into}: ${ids.join(', ')}\n`);
}

function columnsText(wanted: string): string {
  const all = [...columnsOf().values()];
  const groups = [...new Set(all.flatMap(({ path }) => (path.includes('/') ? (path.split('/', 1)[0] ?? []) : [])))];
  if (wanted !== '') chosen(Object.fromEntries([...groups, ...KINDS].map((one) => [one, {}])), wanted, 'kind of part or group of columns');
  const shown: readonly string[] = wanted === '' ? groups : [...groups.filter((one) => one === wanted), ...(columnsOfKind(wanted) ?? [])];
  const columns = all.filter(({ path }) => !path.includes('/') || shown.some((group) => path.startsWith(`${group}/`)));
  const others = groups.filter((one) => !shown.includes(one));
  const hints = [
    ...(shown.length === 0 ? [`Of a ${wanted} nothing else is asked in a table.`] : []),
    ...(wanted === '' ? [`Groups, as a part needs them: ${groups.join(', ')}.`] : [`Other groups, as a part needs them: ${others.join(', ')}.`]),
    'Ports, points and modes do not fit in a table: name a class under "typical" (setworthy new --classes lists them), or enter them in the file.',
  ];
  const widest = Math.max(...columns.map(({ path }) => path.length));
  return `${columns.map(({ path, holds, unit, says }) => `${path.padEnd(widest)}  ${[unit === '' ? holds : `${holds} in ${unit}`, says].filter((word) => word !== '').join('; ')}`).join('\n')}\n\n${hints.map((hint) => wrap(hint, 100)).join('\n')}\n`;
}
