import { lineFaults } from '../../assembly/lines/lineFaults.ts';
import type { WiredLine, Wiring } from '../../assembly/lines/wiring.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';

/** The cables of the kit: parts only, a copy is one of them. */
export function kitCables(ledger: Ledger): readonly PartView[] {
  return ledger.cell('kit cables', () => ledger.keys('kit/parts').filter((id) => ledger.at(`kit/parts/${id}/cable`) !== undefined).map((id) => new PartView(ledger, id)));
}

/** How many of a part there are. */
export const countOf = (part: PartView): number => (part.copyPath === undefined ? ((part.read('count') as number | undefined) ?? 1) : 1);

/** How many lines of a setup are made of each part; what shares a plug counts once, and copies count to their part. */
export function cablesUsed({ lines }: Wiring): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { cable, shared } of lines) if (cable !== undefined && !shared) used.set(cable.path, (used.get(cable.path) ?? 0) + 1);
  return used;
}

/** Cables that are not all in use and fit a line at both ends, shortest first. */
export function cablesThatFit(ledger: Ledger, wiring: Wiring, line: WiredLine): PartView[] {
  const used = cablesUsed(wiring);
  return kitCables(ledger)
    .filter((cable) => cable.path !== line.cable?.path && countOf(cable) > (used.get(cable.path) ?? 0))
    .filter((cable) => lineFaults(wiring, { ...line, cable }).every(({ kind }) => kind === 'socket taken'))
    .toSorted((a, b) => lengthOf(a) - lengthOf(b));
}

export const lengthOf = (cable: PartView): number => cable.figure('cable/lengthMm')?.value ?? 0;

/** Makes a line of another cable. */
export function cableEdit(line: WiredLine, cable: PartView): Edit {
  const path = `${line.path}/cable`;
  return { says: `${cable.name} from ${line.from.piece.name} to ${line.to.piece.name}`, patches: [{ op: line.cable === undefined ? 'add' : 'replace', path, value: cable.id }] };
}
