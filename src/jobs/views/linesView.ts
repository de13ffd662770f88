import { type LineFault, lineFaults } from '../../assembly/lines/lineFaults.ts';
import { nets } from '../../assembly/lines/nets.ts';
import { type Leg, legsOf } from '../../assembly/lines/picture.ts';
import { videoTrace } from '../../assembly/lines/videoTrace.ts';
import { type WiredLine, type WiredPort, type Wiring, wiring } from '../../assembly/lines/wiring.ts';
import { cablesThatFit } from '../../check/quantities/kitCables.ts';
import { type LineFlow, lineFlows } from '../../check/quantities/lineFlows.ts';
import { darkSentence, faultSentence, pictureName } from '../../check/quantities/lineWords.ts';
import { newLine } from '../../check/quantities/lineEdits.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Amount } from '../../units/print.ts';
import type { View } from './View.ts';

export type LineKind = 'video' | 'power' | 'control';

export interface SocketView {
  /** `build/piece/port`. */
  readonly key: string;
  readonly name: string;
  readonly kind: LineKind;
  readonly way: 'in' | 'out' | 'both';
  readonly connector: string;
  readonly used: boolean;
}

export interface DeviceView {
  /** `build/piece`. */
  readonly ref: string;
  readonly name: string;
  readonly build: string;
  readonly sockets: readonly SocketView[];
}

export interface CableView {
  readonly key: string;
  /** Where it stands in the file; nothing for what goes over the air or in another line's cable. */
  readonly path: string | undefined;
  readonly kind: LineKind;
  readonly air: boolean;
  readonly from: string;
  readonly to: string;
  readonly cable: string | undefined;
  readonly cableId: string | undefined;
  /** What it carries, in a few words: a format, or nothing. */
  readonly carries: string | undefined;
  /** Delay so far, voltage, current. */
  readonly amounts: readonly Amount[];
  /** What is wrong with it. */
  readonly faults: readonly string[];
}

export interface LinesView {
  readonly builds: readonly { readonly id: string; readonly name: string }[];
  readonly devices: readonly DeviceView[];
  readonly cables: readonly CableView[];
}

/** Every device with sockets or a radio, and everything that runs between them. */
export function linesView(ledger: Ledger, { setup, glass }: SetupGlass): LinesView {
  const wired = wiring(ledger, setup, glass);
  const flows = lineFlows(ledger, { setup, glass });
  const { at, into } = videoTrace(ledger, setup, glass);
  const devices = [...wired.pieces.values()].flatMap((piece): DeviceView[] => {
    const sockets = (wired.portsOf.get(piece.ref) ?? []).map(socketView(wired));
    return sockets.length === 0 && !piece.part.has('radio') ? [] : [{ ref: piece.ref, name: piece.name, build: piece.build, sockets }];
  });
  const cables = wired.lines.map((line): CableView => cableView(wired, line, line.from.port.kind === 'video' ? at.get(line.to.key) : undefined, flows.get(line.key)));
  const builds = [...new Set(devices.map(({ build }) => build))].map((id) => ({ id, name: (ledger.at(`builds/${id}/name`) as string | undefined) ?? id }));
  return { builds, devices, cables: [...cables, ...airOf(ledger, setup, glass, into)] };
}

const socketView = (wired: Wiring) => ({ key, name, port }: WiredPort): SocketView => ({
  key, name, kind: port.kind, way: port.way, connector: port.connector, used: wired.into.has(key) || wired.outOf.has(key),
});

function cableView(wired: Wiring, line: WiredLine, leg: Leg | undefined, flow: LineFlow | undefined): CableView {
  const { key, path, from, to, cable, shared } = line;
  const faults = lineFaults(wired, line).map((fault) => faultSentence(line, fault));
  const dark = leg?.dark === undefined ? [] : [darkSentence(leg.dark)];
  return {
    key, path: shared ? undefined : path, kind: from.port.kind, air: false, from: from.key, to: to.key, cable: cable?.name, cableId: cable?.id, ...carried(leg, flow), faults: [...new Set([...faults, ...dark])],
  };
}

function carried(leg: Leg | undefined, flow: LineFlow | undefined): Pick<CableView, 'carries' | 'amounts'> {
  if (flow !== undefined) return { carries: undefined, amounts: [{ value: flow.volts, unit: 'V' }, { value: flow.amps, unit: 'A' }] };
  if (leg?.picture === undefined) return { carries: undefined, amounts: [] };
  return { carries: pictureName(leg.picture), amounts: [{ value: delayMs(leg), unit: 'ms' }] };
}

/** The delay up to here, as far as its figures are entered. */
const delayMs = (leg: Leg): number => legsOf(leg).reduce((sum, { delay }) => sum + (delay !== undefined && 'figure' in delay ? delay.figure.value : 0), 0);

function airOf(ledger: Ledger, setup: string, glass: string, into: ReadonlyMap<string, Leg>): CableView[] {
  return nets(ledger, setup, glass).flatMap(({ name, carries, transmitters, receivers }) =>
    transmitters.flatMap((sender) =>
      receivers.filter((receiver) => receiver !== sender).map((receiver): CableView => {
        const leg = carries === 'video' ? into.get(receiver.ref) : undefined;
        return {
          key: `air ${name} ${sender.ref} ${receiver.ref}`, path: undefined, kind: carries, air: true, from: sender.ref, to: receiver.ref, cable: undefined, cableId: undefined, ...carried(leg, undefined),
          faults: leg?.dark === undefined ? [] : [darkSentence(leg.dark)],
        };
      }),
    ),
  );
}

const HARMLESS: ReadonlySet<LineFault['kind']> = new Set(['no cable']);

/** The edit that joins two sockets with a cable of the kit that fits, or why they cannot be joined. */
export function joining(ledger: Ledger, { setup, glass }: SetupGlass, a: string, b: string): View<Edit> {
  const wired = wiring(ledger, setup, glass);
  const [one, other] = [wired.ports.get(a), wired.ports.get(b)];
  if (one === undefined || other === undefined) return { ok: false, says: 'One of these sockets is no longer there.' };
  const backwards = one.port.way === 'in' || other.port.way === 'out';
  const [from, to] = backwards ? [other, one] : [one, other];
  const drawn: WiredLine = { key: 'drawn', path: '', from, to, cable: undefined, turned: false, shared: false };
  const wrong = lineFaults(wired, drawn).find(({ kind }) => !HARMLESS.has(kind));
  if (wrong !== undefined) return { ok: false, says: faultSentence(drawn, wrong) };
  const [cable] = cablesThatFit(ledger, wired, drawn);
  const names = new Set(ledger.keys(`builds/${to.piece.build}/lines`));
  const base = `${from.piece.id}-${to.piece.id}`.slice(0, 58);
  const name = names.has(base) ? `${base}-${names.size + 1}` : base;
  return { ok: true, value: newLine(name, from, to, ledger.at(`builds/${to.piece.build}/lines`) !== undefined, cable?.id) };
}

/** Cables of the kit that go into both sockets of a line, by id and name. */
export function fittingCables(ledger: Ledger, { setup, glass }: SetupGlass, key: string): { readonly id: string; readonly name: string }[] {
  const wired = wiring(ledger, setup, glass);
  const line = wired.byKey.get(key);
  return line === undefined ? [] : cablesThatFit(ledger, wired, line).map(({ id, name }) => ({ id, name }));
}
