import ELK, { type ElkExtendedEdge, type ElkNode } from 'elkjs/lib/elk-api.js';
import workerAddress from 'elkjs/lib/elk-worker.min.js?url';
import type { CableView, DeviceView, LinesView } from '../../jobs/views/linesView.ts';

export const SOCKET_STEP = 22;
const TITLE = 28;
const PER_LETTER = 6.4;

export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Route {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly label: { readonly x: number; readonly y: number } | undefined;
}

export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly builds: ReadonlyMap<string, Placed>;
  readonly devices: ReadonlyMap<string, Placed>;
  /** By socket key, and by `build/piece` for the end of a way over the air. */
  readonly sockets: ReadonlyMap<string, { readonly x: number; readonly y: number }>;
  readonly routes: ReadonlyMap<string, Route>;
}

let elk: InstanceType<typeof ELK> | undefined;

/** Lays out devices and lines from left to right: what sends stands left of what takes. */
export async function layOut(view: LinesView, labels: ReadonlyMap<string, string>): Promise<Layout> {
  elk ??= new ELK({ workerUrl: workerAddress });
  const placed = await elk.layout(graphOf(view, labels));
  return read(placed);
}

const OPTIONS = {
  'elk.algorithm': 'layered', 'elk.direction': 'RIGHT', 'elk.hierarchyHandling': 'INCLUDE_CHILDREN', 'elk.edgeRouting': 'ORTHOGONAL', 'elk.spacing.nodeNode': '20',
  'elk.layered.spacing.nodeNodeBetweenLayers': '36', 'elk.layered.spacing.edgeNodeBetweenLayers': '16', 'elk.spacing.edgeEdge': '10', 'elk.spacing.edgeNode': '12', 'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.spacing.componentComponent': '28', 'elk.randomSeed': '1',
};

function graphOf(view: LinesView, labels: ReadonlyMap<string, string>): ElkNode {
  return {
    id: 'all', layoutOptions: OPTIONS,
    children: view.builds.map(({ id, name }) => ({
      id: `build ${id}`, layoutOptions: { 'elk.padding': '[top=36,left=16,bottom=16,right=16]', 'elk.nodeSize.constraints': 'MINIMUM_SIZE', 'elk.nodeSize.minimum': `(${name.length * 8 + 32},40)` },
      children: view.devices.filter(({ build }) => build === id).map((device) => nodeOf(device, view.cables)),
    })),
    edges: view.cables.map((cable): ElkExtendedEdge => {
      const label = labels.get(cable.key) ?? '';
      return { id: cable.key, layoutOptions: { 'elk.layered.priority.direction': cable.air && cable.kind === 'control' ? '1' : '10' }, sources: [endOf(cable, cable.from, 'out')], targets: [endOf(cable, cable.to, 'in')], labels: label === '' ? [] : [{ text: label, width: label.length * PER_LETTER, height: 14, layoutOptions: { 'elk.edgeLabels.placement': 'CENTER' } }] };
    }),
  };
}

const endOf = ({ air }: CableView, key: string, side: 'in' | 'out'): string => (air ? `${key} air ${side}` : key);

function nodeOf(device: DeviceView, cables: readonly CableView[]): ElkNode {
  const air = (['in', 'out'] as const).filter((side) => cables.some((cable) => cable.air && cable[side === 'in' ? 'to' : 'from'] === device.ref));
  const leaves = (way: string) => way !== 'in';
  const left = device.sockets.filter(({ way }) => !leaves(way));
  const right = device.sockets.filter(({ way }) => leaves(way));
  const longest = (names: readonly string[]) => Math.max(0, ...names.map((name) => name.length)) * PER_LETTER;
  const width = Math.max(device.name.length * 7.4 + 24, longest(left.map(({ name }) => name)) + longest(right.map(({ name }) => name)) + 48);
  const rows = Math.max(left.length + (air.includes('in') ? 1 : 0), right.length + (air.includes('out') ? 1 : 0));
  const port = (id: string, x: number, row: number, side: string) => ({ id, width: 0, height: 0, x, y: TITLE + row * SOCKET_STEP + SOCKET_STEP / 2, layoutOptions: { 'elk.port.side': side } });
  return {
    id: device.ref, width, height: TITLE + rows * SOCKET_STEP + 4, layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
    ports: [
      ...left.map(({ key }, row) => port(key, 0, row, 'WEST')),
      ...right.map(({ key }, row) => port(key, width, row, 'EAST')),
      ...(air.includes('in') ? [port(`${device.ref} air in`, 0, left.length, 'WEST')] : []),
      ...(air.includes('out') ? [port(`${device.ref} air out`, width, right.length, 'EAST')] : []),
    ],
  };
}

function read(root: ElkNode): Layout {
  const builds = new Map<string, Placed>();
  const devices = new Map<string, Placed>();
  const sockets = new Map<string, { x: number; y: number }>();
  const groups = root.children ?? [];
  for (const group of groups) {
    const at = placedAt(group, { x: 0, y: 0 });
    builds.set(group.id.replace('build ', ''), at);
    for (const node of group.children ?? []) {
      const place = placedAt(node, at);
      devices.set(node.id, place);
      for (const { id, x = 0, y = 0 } of node.ports ?? []) sockets.set(id, { x: place.x + x, y: place.y + y });
    }
  }
  const origins = new Map<string, Placed>([...groups.map((group) => [group.id, placedAt(group, { x: 0, y: 0 })] as const), ...devices]);
  const edges = [root, ...groups].flatMap(({ edges: own = [] }) => own);
  const routes = new Map(edges.map((edge) => [edge.id, routeOf(edge, origins)]));
  return { width: root.width ?? 0, height: root.height ?? 0, builds, devices, sockets, routes };
}

function routeOf(edge: ElkExtendedEdge, origins: ReadonlyMap<string, Placed>): Route {
  const { x: left, y: top } = origins.get((edge as { container?: string }).container ?? '') ?? { x: 0, y: 0 };
  const moved = ({ x = 0, y = 0 }: { x?: number; y?: number }) => ({ x: x + left, y: y + top });
  const points = (edge.sections ?? []).flatMap(({ startPoint, bendPoints = [], endPoint }) => [startPoint, ...bendPoints, endPoint]).map(moved);
  const [label] = edge.labels ?? [];
  return { points, label: label?.x === undefined ? undefined : moved(label) };
}

const placedAt = ({ x = 0, y = 0, width = 0, height = 0 }: ElkNode, within: { x: number; y: number }): Placed => ({ x: x + within.x, y: y + within.y, width, height });
