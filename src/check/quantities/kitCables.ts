import { lineFaults } from '../../assembly/lines/lineFaults.ts';
import type { WiredLine, Wiring } from '../../assembly/lines/wiring.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';

/** A cable of the kit, with what it is picked by. */
interface KitCable {
  readonly part: PartView;
  readonly carries: string;
  readonly lengthMm: number;
  readonly count: number;
}

/** The cables of the kit, shortest first: parts only, a copy is one of them. */
function kitCables(ledger: Ledger): readonly KitCable[] {
  return ledger.cell('kit cables', () =>
    ledger
      .keys('kit/parts')
      .flatMap((id) => {
        const made = ledger.at(`kit/parts/${id}/cable`) as { carries: string } | undefined;
        if (made === undefined) return [];
        const part = new PartView(ledger, id);
        return { part, carries: made.carries, lengthMm: part.figure('cable/lengthMm')?.value ?? 0, count: countOf(part) };
      })
      .toSorted((a, b) => a.lengthMm - b.lengthMm),
  );
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
  const now = line.cable?.path;
  const { kind, shares } = line.from.port;
  return kitCables(ledger)
    .filter(({ part, carries, count }) => (carries === kind || shares !== undefined || carries === 'control') && part.path !== now && count > (used.get(part.path) ?? 0))
    .filter(({ part }) => lineFaults(wiring, { ...line, cable: part }).every(({ kind: fault }) => fault === 'socket taken'))
    .map(({ part }) => part);
}

/** Makes a line of another cable. */
export function cableEdit(line: WiredLine, cable: PartView): Edit {
  const path = `${line.path}/cable`;
  return { says: `${cable.name} from ${line.from.piece.name} to ${line.to.piece.name}`, patches: [{ op: line.cable === undefined ? 'add' : 'replace', path, value: cable.id }] };
}
