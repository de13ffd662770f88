import ELK, { type ElkExtendedEdge, type ElkNode } from 'elkjs/lib/elk-api.js';
import workerAddress from 'elkjs/lib/elk-worker.min.js?url';
import type { CableView, DeviceView, LinesView } from '../../jobs/views/linesView.ts';

export const SOCKET_STEP = 22;
export const TITLE = 28;
const PER_LETTER = 6.4;
export const BUILD_TITLE = 36;
export const BETWEEN_BUILDS = 20;

export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The way of a line: in one go, or in two ends where it leaves one build and arrives in another. */
export interface Route {
  readonly ways: readonly (readonly Point[])[];
  readonly label: Point | undefined;
}

/** Where a line goes on to, or comes from, written at its end. */
export interface Stub extends Point {
  readonly line: string;
  readonly text: string;
  readonly side: 'out' | 'in';
  /** Which end of its text stands at the place. */
  readonly anchor: 'start' | 'end';
}

export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly builds: ReadonlyMap<string, Placed>;
  readonly devices: ReadonlyMap<string, Placed>;
  readonly sockets: ReadonlyMap<string, Point>;
  readonly routes: ReadonlyMap<string, Route>;
  readonly stubs: readonly Stub[];
}

let elk: InstanceType<typeof ELK> | undefined;

/** Lays out each build from left to right, what sends left of what takes, one build below the other. */
export async function layOut(view: LinesView, labels: ReadonlyMap<string, string>): Promise<Layout> {
  elk ??= new ELK({ workerUrl: workerAddress });
  const drawn: Drawing = { builds: new Map(), devices: new Map(), sockets: new Map(), routes: new Map(), stubs: [] };
  let y = 0;
  let width = 0;
  for (const { id, name } of view.builds) {
    const graph = await elk.layout(graphOf(id, view, labels));
    const at: Placed = { x: 0, y, width: Math.max(graph.width ?? 0, name.length * 8 + 32), height: (graph.height ?? 0) + BUILD_TITLE };
    drawn.builds.set(id, at);
    takeIn(drawn, graph, { x: 0, y: y + BUILD_TITLE });
    y += at.height + BETWEEN_BUILDS;
    width = Math.max(width, at.width);
  }
  for (const at of drawn.builds.values()) (at as { width: number }).width = width;
  return { ...drawn, width, height: Math.max(0, y - BETWEEN_BUILDS) };
}

const OPTIONS = {
  'elk.algorithm': 'layered', 'elk.direction': 'RIGHT', 'elk.edgeRouting': 'ORTHOGONAL', 'elk.spacing.nodeNode': '16', 'elk.layered.spacing.nodeNodeBetweenLayers': '28',
  'elk.layered.spacing.edgeNodeBetweenLayers': '14', 'elk.spacing.edgeEdge': '10', 'elk.spacing.edgeNode': '12', 'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX', 'elk.randomSeed': '1',
  'elk.padding': '[top=4,left=16,bottom=16,right=16]', 'elk.separateConnectedComponents': 'false',
};

export const buildOf = (key: string): string => key.split('/')[0] ?? '';
const pieceOf = (key: string): string => key.split('/').slice(0, 2).join('/');
export const textWidth = (text: string): number => text.length * PER_LETTER;

/** What a device is called, by itself or one of its sockets. */
export const deviceNamer = (view: LinesView) => (key: string): string => view.devices.find(({ ref }) => ref === pieceOf(key))?.name ?? '';

function graphOf(build: string, view: LinesView, labels: ReadonlyMap<string, string>): ElkNode {
  const nameOf = deviceNamer(view);
  const children = view.devices.filter((device) => device.build === build).map((device) => nodeOf(device, view.cables));
  const edges: ElkExtendedEdge[] = [];
  for (const cable of view.cables) {
    const [leaves, arrives] = [buildOf(cable.from) === build, buildOf(cable.to) === build];
    if (!leaves && !arrives) continue;
    const label = leaves && !arrives ? '' : (labels.get(cable.key) ?? '');
    const stub = `stub ${leaves ? 'out' : 'in'} ${cable.key}`;
    if (leaves !== arrives) {
      const text = nameOf(leaves ? cable.to : cable.from);
      children.push({ id: stub, width: textWidth(text) + 16, height: 18, labels: [{ text }], layoutOptions: { 'elk.portConstraints': 'FIXED_POS' }, ports: [{ id: `${stub} port`, x: leaves ? 0 : textWidth(text) + 16, y: 9, width: 0, height: 0, layoutOptions: { 'elk.port.side': leaves ? 'WEST' : 'EAST' } }] });
    }
    edges.push({
      id: cable.key, sources: [leaves ? endOf(cable, cable.from, 'out') : `${stub} port`], targets: [arrives ? endOf(cable, cable.to, 'in') : `${stub} port`],
      labels: label === '' ? [] : [{ text: label, width: textWidth(label), height: 14, layoutOptions: { 'elk.edgeLabels.placement': 'CENTER' } }],
    });
  }
  return { id: 'all', layoutOptions: OPTIONS, children, edges };
}

export const endOf = ({ air }: CableView, key: string, side: 'in' | 'out'): string => (air ? `${key} air ${side}` : key);

/** The keys of a device's sockets, those that take and the others; what goes over the air has a row of its own. */
export function socketRows({ ref, sockets }: DeviceView, cables: readonly CableView[]): { readonly left: readonly string[]; readonly right: readonly string[] } {
  const air = (side: 'in' | 'out') => (cables.some((cable) => cable.air && cable[side === 'in' ? 'to' : 'from'] === ref) ? [`${ref} air ${side}`] : []);
  const keys = (takes: boolean) => sockets.filter(({ way }) => (way === 'in') === takes).map(({ key }) => key);
  return { left: [...keys(true), ...air('in')], right: [...keys(false), ...air('out')] };
}

function nodeOf(device: DeviceView, cables: readonly CableView[]): ElkNode {
  const { left, right } = socketRows(device, cables);
  const longest = (takes: boolean) => Math.max(0, ...device.sockets.filter(({ way }) => (way === 'in') === takes).map(({ name }) => textWidth(name)));
  const width = Math.max(device.name.length * 7.4 + 24, longest(true) + longest(false) + 48);
  const port = (id: string, x: number, row: number, side: string) => ({ id, width: 0, height: 0, x, y: TITLE + row * SOCKET_STEP + SOCKET_STEP / 2, layoutOptions: { 'elk.port.side': side } });
  return {
    id: device.ref, width, height: TITLE + Math.max(left.length, right.length) * SOCKET_STEP + 4, layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
    ports: [...left.map((key, row) => port(key, 0, row, 'WEST')), ...right.map((key, row) => port(key, width, row, 'EAST'))],
  };
}

/** What is laid out so far. */
export interface Drawing {
  readonly builds: Map<string, Placed>;
  readonly devices: Map<string, Placed>;
  readonly sockets: Map<string, Point>;
  readonly routes: Map<string, Route>;
  readonly stubs: Stub[];
}

/** Takes in the layout of one build, moved to its place. */
function takeIn(drawn: Drawing, { children = [], edges = [] }: ElkNode, origin: Point): void {
  for (const node of children) {
    const stub = stubOf(node, origin);
    if (stub === undefined) takeDevice(drawn, node, origin);
    else drawn.stubs.push(stub);
  }
  for (const edge of edges) takeRoute(drawn, edge, origin);
}

const moved = ({ x = 0, y = 0 }: { readonly x?: number; readonly y?: number }, by: Point): Point => ({ x: x + by.x, y: y + by.y });

function stubOf(node: ElkNode, origin: Point): Stub | undefined {
  const found = /^stub (out|in) (.+)$/s.exec(node.id);
  if (found === null) return undefined;
  const at = moved(node, origin);
  const side = found[1] === 'out' ? 'out' : 'in';
  return { line: found[2] ?? '', text: node.labels?.[0]?.text ?? '', side, anchor: side === 'out' ? 'start' : 'end', x: side === 'out' ? at.x + 4 : at.x + (node.width ?? 0) - 4, y: at.y + 13 };
}

function takeDevice(drawn: Drawing, { id, width = 0, height = 0, ports = [], ...node }: ElkNode, origin: Point): void {
  const at = moved(node, origin);
  drawn.devices.set(id, { ...at, width, height });
  for (const port of ports) drawn.sockets.set(port.id, moved(port, at));
}

function takeRoute(drawn: Drawing, { id, sections = [], labels = [] }: ElkExtendedEdge, origin: Point): void {
  const ways = sections.map(({ startPoint, bendPoints = [], endPoint }) => [startPoint, ...bendPoints, endPoint].map((one) => moved(one, origin)));
  const [label] = labels;
  const before = drawn.routes.get(id);
  drawn.routes.set(id, { ways: [...(before?.ways ?? []), ...ways], label: label?.x === undefined ? before?.label : moved(label, origin) });
}
