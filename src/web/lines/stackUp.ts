import type { CableView, DeviceView, LinesView } from '../../jobs/views/linesView.ts';
import { BETWEEN_BUILDS, BUILD_TITLE, type Drawing, type Layout, SOCKET_STEP, type Stub, TITLE, buildOf, deviceNamer, endOf, socketRows, textWidth } from './layout.ts';
import { tracksOf } from './tracksOf.ts';

const EDGE = 16;
const BETWEEN_DEVICES = 12;
const BETWEEN_TRACKS = 12;
const TEXT_STEP = 15;

/** For a narrow room: the devices of each build in one column, what sends above what takes, their lines down the right and what each carries at its end. Builds stand side by side where there is room. */
export function stackUp(view: LinesView, labels: ReadonlyMap<string, string>, room: number): Layout {
  const stacked = drawIn(view, labels, [0]);
  const columns = Math.min(view.builds.length, Math.floor((room + BETWEEN_BUILDS) / (stacked.width + BETWEEN_BUILDS)));
  return columns < 2 ? stacked : drawIn(view, labels, Array.from({ length: columns }, (_, at) => at * (stacked.width + BETWEEN_BUILDS)));
}

/** Draws the builds in columns that begin at these places, each in the one that is shortest so far. */
function drawIn(view: LinesView, labels: ReadonlyMap<string, string>, columns: readonly number[]): Layout {
  const drawn: Drawing = { builds: new Map(), devices: new Map(), sockets: new Map(), routes: new Map(), stubs: [] };
  const across = Math.max(0, ...view.devices.map((device) => Math.max(device.name.length * 7.4, ...device.sockets.map(({ name }) => textWidth(name))) + 28));
  const heights = columns.map(() => 0);
  let width = 0;
  for (const { id, name } of view.builds) {
    const y = Math.min(...heights);
    const column = heights.indexOf(y);
    const x = columns[column] ?? 0;
    const written = writings(view, labels, id);
    const bottom = standDevices({ drawn, view, build: id, left: x + EDGE, top: y + BUILD_TITLE, width: across, written });
    const beside = runLines(drawn, view, id, x + EDGE + across);
    write(drawn, written, beside);
    const longest = Math.max(0, ...[...written.values()].flat().map(({ text }) => textWidth(text)));
    drawn.builds.set(id, { x, y, width: 0, height: bottom - y });
    heights[column] = bottom + BETWEEN_BUILDS;
    width = Math.max(width, beside - x + longest + EDGE, name.length * 8 + 2 * EDGE);
  }
  for (const [id, at] of drawn.builds) drawn.builds.set(id, { ...at, width });
  return { ...drawn, width: (columns.at(-1) ?? 0) + width, height: Math.max(0, ...heights) - (view.builds.length === 0 ? 0 : BETWEEN_BUILDS) };
}

/** What is written beside a socket: what a line brings there, or which other build it goes to or comes from. */
interface Writing {
  readonly line: string;
  readonly text: string;
  readonly stub: Stub['side'] | undefined;
}
type Written = ReadonlyMap<string, readonly Writing[]>;

function writings(view: LinesView, labels: ReadonlyMap<string, string>, build: string): Written {
  const nameOf = deviceNamer(view);
  const written = new Map<string, Writing[]>();
  const add = (socket: string, writing: Writing): void => void (writing.text !== '' && written.set(socket, [...(written.get(socket) ?? []), writing]));
  for (const cable of view.cables) {
    const [leaves, arrives] = [buildOf(cable.from) === build, buildOf(cable.to) === build];
    const target = endOf(cable, cable.to, 'in');
    if (leaves && !arrives) add(endOf(cable, cable.from, 'out'), { line: cable.key, text: `to ${nameOf(cable.to)}`, stub: 'out' });
    if (arrives && !leaves) add(target, { line: cable.key, text: `from ${nameOf(cable.from)}`, stub: 'in' });
    if (arrives) add(target, { line: cable.key, text: labels.get(cable.key) ?? '', stub: undefined });
  }
  return written;
}

/** Writes what stands beside each socket, one line below the other. */
function write({ sockets, routes, stubs }: Drawing, written: Written, x: number): void {
  for (const [socket, all] of written) {
    for (const [row, { line, text, stub }] of all.entries()) {
      const y = (sockets.get(socket)?.y ?? 0) + row * TEXT_STEP;
      if (stub === undefined) routes.set(line, { ways: routes.get(line)?.ways ?? [], label: { x, y: y - 7 } });
      else stubs.push({ line, text, side: stub, anchor: 'start', x, y: y + 4 });
    }
  }
}

interface Standing {
  readonly drawn: Drawing;
  readonly view: LinesView;
  readonly build: string;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly written: Written;
}

/** Stands the devices of a build one below the other, all their sockets on the right; the bottom of the build. */
function standDevices({ drawn, view, build, left: x, top, width, written }: Standing): number {
  let y = top;
  for (const device of downstream(view.devices.filter((one) => one.build === build), view.cables)) {
    const from = y;
    y += TITLE;
    const { left, right } = socketRows(device, view.cables);
    for (const key of [...left, ...right]) {
      drawn.sockets.set(key, { x: x + width, y: y + SOCKET_STEP / 2 });
      y += SOCKET_STEP + TEXT_STEP * Math.max(0, (written.get(key)?.length ?? 0) - 1);
    }
    drawn.devices.set(device.ref, { x, y: from, width, height: y + 4 - from });
    y += 4 + BETWEEN_DEVICES;
  }
  return y - BETWEEN_DEVICES + EDGE;
}

/** Devices in the order in which what they send arrives; rings of lines are cut where they close. */
function downstream(devices: readonly DeviceView[], cables: readonly CableView[]): DeviceView[] {
  const depths = new Map<string, number>();
  const deviceAt = (key: string) => devices.find(({ ref }) => key === ref || key.startsWith(`${ref}/`))?.ref;
  const depthOf = (ref: string): number => {
    const known = depths.get(ref);
    if (known !== undefined) return known;
    depths.set(ref, 0);
    const feeds = cables.filter(({ to }) => deviceAt(to) === ref).map(({ from }) => deviceAt(from)).filter((feed) => feed !== undefined && feed !== ref);
    const depth = Math.max(0, ...feeds.map((feed) => depthOf(feed ?? ref) + 1));
    depths.set(ref, depth);
    return depth;
  };
  return devices.toSorted((a, b) => depthOf(a.ref) - depthOf(b.ref));
}

/** Runs the lines of a build in tracks right of its devices, and out to the writing where they go on; where the writing begins. */
function runLines({ sockets, routes }: Drawing, view: LinesView, build: string, left: number): number {
  const found = view.cables.map((cable) => ({ key: cable.key, leaves: buildOf(cable.from) === build, arrives: buildOf(cable.to) === build, from: sockets.get(endOf(cable, cable.from, 'out')), to: sockets.get(endOf(cable, cable.to, 'in')) }));
  const inside = found.flatMap(({ key, leaves, arrives, from, to }) => (leaves && arrives && from !== undefined && to !== undefined ? [{ key, from, to }] : []));
  const tracks = tracksOf(inside.map(({ key, from, to }) => ({ key, from: from.y, to: to.y })));
  const xOf = (track: number): number => left + BETWEEN_TRACKS * (track + 2);
  const beside = xOf(Math.max(-1, ...tracks.values())) + 12;
  for (const { key, from, to } of inside) {
    const x = xOf(tracks.get(key) ?? 0);
    routes.set(key, { ways: [[from, { x, y: from.y }, { x, y: to.y }, to]], label: undefined });
  }
  for (const { key, leaves, arrives, from, to } of found) {
    const [at, ways] = [leaves ? from : to, routes.get(key)?.ways ?? []];
    if (leaves === arrives || at === undefined) continue;
    const out = { x: beside - 8, y: at.y };
    // The end where it arrives comes last: there its mark is set.
    routes.set(key, { ways: leaves ? [[at, out], ...ways] : [...ways, [out, at]], label: undefined });
  }
  return beside;
}
