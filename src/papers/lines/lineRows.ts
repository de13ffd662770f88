import { lineFaults } from '../../assembly/lines/lineFaults.ts';
import { nets, radioMode } from '../../assembly/lines/nets.ts';
import { videoTrace } from '../../assembly/lines/videoTrace.ts';
import { type WiredLine, type WiredPort, wiring } from '../../assembly/lines/wiring.ts';
import { lineFlows } from '../../check/quantities/lineFlows.ts';
import { darkSentence, faultSentence, pictureName } from '../../check/quantities/lineWords.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type System, printAmount } from '../../units/print.ts';

/** One cable of a setup as it is written on paper and on the cable itself. */
export interface LineRow {
  /** P for power, V for picture, C for control, and a number: `P1`. */
  readonly number: string;
  readonly kind: 'power' | 'video' | 'control';
  readonly key: string;
  readonly cable: string;
  readonly from: LineEnd;
  readonly to: LineEnd;
  readonly lengthMm: number | undefined;
  /** Format, or volts and amps. */
  readonly carries: string;
  readonly faults: readonly string[];
  /** The glasses it is there with; all where empty. */
  readonly onlyWith: readonly string[];
}

export interface LineEnd {
  readonly piece: string;
  readonly socket: string;
  readonly connector: string;
}

/** What goes over the air. */
export interface AirRow {
  readonly carries: 'video' | 'control';
  readonly net: string;
  readonly from: string;
  readonly to: string;
  readonly mode: string;
}

const LETTERS = { power: 'P', video: 'V', control: 'C' } as const;
/** The order cables go in: power before picture. */
const ORDER = ['power', 'video', 'control'] as const;

/** The cables of a setup with all its glasses, numbered in the order they are plugged. A line that shares another's plug is not a cable. */
export function lineRows(ledger: Ledger, setup: string, glasses: readonly string[], system: System): LineRow[] {
  const found = new Map<string, { line: WiredLine; whole: SetupGlass; glasses: string[] }>();
  for (const glass of glasses) {
    for (const line of wiring(ledger, setup, glass).lines) {
      if (line.shared) continue;
      const key = line.path;
      const known = found.get(key);
      if (known === undefined) found.set(key, { line, whole: { setup, glass }, glasses: [glass] });
      else known.glasses.push(glass);
    }
  }
  const sorted = [...found.values()].toSorted((a, b) => ORDER.indexOf(a.line.from.port.kind) - ORDER.indexOf(b.line.from.port.kind));
  const count = { power: 0, video: 0, control: 0 };
  return sorted.map(({ line, whole, glasses: having }) => {
    const { kind } = line.from.port;
    count[kind] += 1;
    return { ...rowOf(ledger, line, whole, system), number: `${LETTERS[kind]}${count[kind]}`, onlyWith: having.length === glasses.length ? [] : having.map((glass) => (ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass) };
  });
}

function rowOf(ledger: Ledger, line: WiredLine, whole: SetupGlass, system: System): Omit<LineRow, 'number' | 'onlyWith'> {
  const wired = wiring(ledger, whole.setup, whole.glass);
  const leg = line.from.port.kind === 'video' ? videoTrace(ledger, whole.setup, whole.glass).at.get(line.to.key) : undefined;
  const dark = leg?.dark === undefined ? [] : [darkSentence(leg.dark)];
  return {
    kind: line.from.port.kind, key: line.key, cable: line.cable?.name ?? 'cable to find', from: endOf(line.from), to: endOf(line.to),
    lengthMm: line.cable?.figure('cable/lengthMm')?.value,
    carries: leg?.picture === undefined ? powerOf(ledger, line, whole, system) : `${pictureName(leg.picture)}, ${leg.picture.sampling}`,
    faults: [...new Set([...lineFaults(wired, line).map((fault) => faultSentence(line, fault)), ...dark])],
  };
}

const endOf = ({ piece, name, port }: WiredPort): LineEnd => ({ piece: piece.name, socket: name, connector: port.connector });

function powerOf(ledger: Ledger, line: WiredLine, whole: SetupGlass, system: System): string {
  const flow = lineFlows(ledger, whole).get(line.key);
  if (flow !== undefined) return `${printAmount({ value: flow.volts, unit: 'V' }, system)}, ${printAmount({ value: flow.amps, unit: 'A' }, system)}`;
  return line.from.port.kind === 'control' ? (line.to.port.control?.protocol ?? line.from.port.control?.protocol ?? '') : '';
}

/** What a setup sends by radio. */
export function airRows(ledger: Ledger, setup: string, glasses: readonly string[]): AirRow[] {
  const rows = glasses.flatMap((glass) => nets(ledger, setup, glass).flatMap(({ name, carries, transmitters, receivers }) => transmitters.flatMap((sender) =>
    receivers.filter((receiver) => receiver !== sender).map((receiver): AirRow => {
      const mode = radioMode(sender);
      return { carries, net: name, from: sender.name, to: receiver.name, mode: mode === undefined ? 'mode not set' : ((sender.part.read(`radio/modes/${mode}/name`) as string | undefined) ?? mode) };
    }),
  )));
  return [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()];
}
