import { lineFaults } from '../../assembly/lines/lineFaults.ts';
import { portNames } from '../../assembly/lines/portNames.ts';
import type { WiredLine, WiredPort, Wiring } from '../../assembly/lines/wiring.ts';
import type { Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Port } from '../../shoot/schema/electrics.ts';
import { mating } from '../../standards/connectors.ts';
import type { Mend } from '../answer.ts';
import { countOf } from './kitCables.ts';
import { freeName } from './lineEdits.ts';

/**
 * A splitter of the kit in an outlet that is taken: the plug that is there goes into its first way, `line` into its second. What
 * hangs on the outlet then adds up, which the question on current judges.
 */
export function splitterMends(ledger: Ledger, wired: Wiring, outlet: WiredPort, held: WiredLine, line: WiredLine, isNew: boolean): Mend[] {
  const { build } = outlet.piece;
  if (outlet.piece.fromGlass || line.to.piece.build !== build || held.to.piece.build !== build) return [];
  return splitters(ledger, wired).flatMap((part): Mend[] => {
    const ports = (part.read('ports') ?? {}) as Readonly<Record<string, Port>>;
    const input = Object.entries(ports).find(([, port]) => port.kind === 'power' && port.way === 'in' && mating(outlet.port, port).fits === 'yes');
    const ways = Object.entries(ports).filter(([, port]) => port.kind === 'power' && port.way === 'out' && port.connector === outlet.port.connector && port.sex === outlet.port.sex);
    const [first, second] = ways;
    if (input === undefined || first === undefined || second === undefined) return [];
    const names = portNames(ports);
    const way: WiredPort = { key: `${build}/new/${second[0]}`, piece: outlet.piece, id: second[0], port: second[1], name: names[second[0]] ?? second[0] };
    if (lineFaults(wired, { ...line, from: way }).some(({ kind }) => kind !== 'socket taken')) return [];
    const id = freeName(ledger, build, part.id);
    const end = line.turned ? 'to' : 'from';
    const patches: Patch[] = [
      { op: 'add', path: `builds/${build}/pieces/${id}`, value: { of: part.id } },
      { op: 'add', path: `builds/${build}/lines/${id}`, value: { from: `${outlet.piece.id}/${outlet.id}`, to: `${id}/${input[0]}`, direct: true } },
      { op: 'replace', path: `${held.path}/${held.turned ? 'to' : 'from'}`, value: `${id}/${first[0]}` },
      isNew
        ? { op: 'add', path: `builds/${build}/lines/${line.path}`, value: { from: `${id}/${second[0]}`, to: `${line.to.piece.id}/${line.to.id}`, ...(line.cable === undefined ? {} : { cable: line.cable.id }) } }
        : { op: 'replace', path: `${line.path}/${end}`, value: `${id}/${second[0]}` },
    ];
    return [{ says: `${part.name} in the ${outlet.name} of ${outlet.piece.name}`, edit: { says: `${part.name} in ${outlet.piece.name}`, patches }, costs: 'both loads on one outlet' }];
  });
}

/** Splitters of the kit that are not all in use. */
function splitters(ledger: Ledger, wired: Wiring): PartView[] {
  const used = new Map<string, number>();
  for (const { part } of wired.pieces.values()) used.set(part.path, (used.get(part.path) ?? 0) + 1);
  return ledger.cell('kit splitters', () => ledger.keys('kit/parts').filter((id) => ledger.at(`kit/parts/${id}/kind`) === 'splitter').map((id) => new PartView(ledger, id))).filter((part) => countOf(part) > (used.get(part.path) ?? 0));
}
