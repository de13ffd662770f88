import { Command } from 'commander';
import { Checker } from '../../check/Checker.ts';
import { questions } from '../../check/questions/index.generated.ts';
import { faultText } from '../../faults/Fault.ts';
import { applyEdit } from '../../shoot/edit/Edit.ts';
import { replacePart } from '../../shoot/edit/replacePart.ts';
import { addParts } from '../../shoot/edit/addParts.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { typicalPart, typicalParts } from '../../shoot/typical/typicalParts.ts';
import { writeShoot } from '../../shoot/write.ts';
import { summaryLine } from '../checkText.ts';
import { chosen } from '../chosen.ts';
import { loadShoot, writeWhole } from '../files.ts';
import { paintFor } from '../paint.ts';
import { Refusal, valueOrRefuse } from '../Refusal.ts';
import type { World } from '../World.ts';

export const summary = 'Puts one part in place of another, keeps what fits and lists what broke';

export function command(world: World): Command {
  return new Command('replace')
    .description(`${summary}. The builds concerned are kept as they were beside the changed ones.`)
    .argument('<file>', 'a *.shoot.json file')
    .argument('<old>', 'part or copy that drops out')
    .argument('<new>', 'part, copy or typical class that takes its place; a class joins the kit')
    .option('--out <file>', 'where to write; the file itself where not given')
    .action((file: string, oldName: string, newName: string, { out = file }: { out?: string }) => {
      const found = loadShoot(world, file);
      const oldId = chosen({ ...found.kit.parts, ...found.kit.copies }, oldName, 'part or copy');
      const { shoot, newId } = stocked(found, oldId, newName);
      const stock = { ...shoot.kit.parts, ...shoot.kit.copies };
      if (oldId === newId) throw new Refusal('', [{ path: '', message: `Both are ${stock[oldId]?.name ?? oldId}.`, cure: 'Name the part that takes its place.' }]);
      const { edit, broke } = replacePart(shoot, oldId, newId);
      if (edit.patches.length === 0) throw new Refusal(file, [{ path: '', message: `${stock[oldId]?.name ?? oldId} is not used in any build or glass.`, cure: 'Nothing was written.' }]);
      const { shoot: next } = valueOrRefuse(applyEdit(shoot, edit), file);
      writeWhole(out, writeShoot(next));
      const paint = paintFor(world);
      const lines = broke.length === 0 ? ['Every joint and line was kept.'] : ['What broke:', ...broke.map((fault) => `  ${faultText(fault)}`)];
      world.out(`${edit.says}. Written: ${out}\n${lines.join('\n')}\n\nbefore  ${summaryLine(new Checker(shoot, questions).answers(), paint)}\nafter   ${summaryLine(new Checker(next, questions).answers(), paint)}\n`);
    });
}

/** A typical class that the kit has not is taken into it first, as often as the old part is there. */
function stocked(shoot: Shoot, oldId: string, newName: string): { shoot: Shoot; newId: string } {
  const own = { ...shoot.kit.parts, ...shoot.kit.copies };
  const typical = Object.hasOwn(own, newName) ? undefined : typicalPart(newName);
  const old = shoot.kit.parts[oldId] ?? shoot.kit.parts[shoot.kit.copies?.[oldId]?.of ?? ''];
  if (typical === undefined) {
    const alike = Object.entries(typicalParts).filter(([, { kind }]) => kind === old?.kind);
    return { shoot, newId: chosen({ ...Object.fromEntries(alike), ...own }, newName, 'part, copy or typical class') };
  }
  const taken = addParts({ [newName]: { ...typical, ...(old?.count === undefined ? {} : { count: old.count }) } }, `${typical.name} from the typical classes`);
  return { shoot: valueOrRefuse(applyEdit(shoot, taken), newName).shoot, newId: newName };
}
