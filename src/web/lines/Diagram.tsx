import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import type { CableView, DeviceView, LinesView, SocketView } from '../../jobs/views/linesView.ts';
import { type Layout, type Placed, type Route, SOCKET_STEP } from './layout.ts';

interface Props {
  readonly view: LinesView;
  readonly layout: Layout;
  readonly labels: ReadonlyMap<string, string>;
  readonly chosen: string | undefined;
  readonly choose: (line: string | undefined) => void;
  /** Joins two sockets. */
  readonly join: (from: string, to: string) => void;
  /** A socket has been taken up by keyboard or tap. */
  readonly start: () => void;
  /** How large it is drawn. */
  readonly scale: number;
}

interface Drag {
  readonly from: string;
  readonly x: number;
  readonly y: number;
}

/** The drawing itself. A line is drawn by dragging from socket to socket, or by choosing one socket and then the other. */
export function Diagram({ view, layout, labels, chosen, choose, join, start, scale }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const [drag, setDrag] = useState<Drag | undefined>();
  const [taken, setTaken] = useState<string | undefined>();
  const point = (event: PointerEvent) => {
    const matrix = svg.current?.getScreenCTM();
    return matrix === null || matrix === undefined ? { x: 0, y: 0 } : new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  };
  const finish = (to: string | undefined) => {
    const from = drag?.from ?? taken;
    setDrag(undefined);
    if (from === undefined || to === undefined || to === from) return;
    setTaken(undefined);
    join(from, to);
  };
  const pick = (key: string) => {
    if (taken === undefined) {
      setTaken(key);
      start();
    } else finish(key);
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Escape') setTaken(undefined);
  };
  const socketAt = (event: PointerEvent) => document.elementFromPoint(event.clientX, event.clientY)?.closest('[data-socket]')?.getAttribute('data-socket') ?? undefined;
  return (
    <div className="drawing" onKeyDown={keys} tabIndex={-1}>
      <svg
        ref={svg} width={layout.width * scale} height={layout.height * scale} viewBox={`0 0 ${layout.width} ${layout.height}`} role="group" aria-label="Devices and lines"
        onPointerMove={(event) => drag !== undefined && setDrag({ ...drag, ...xy(point(event)) })}
        onPointerUp={(event) => drag !== undefined && finish(socketAt(event))} onPointerLeave={() => setDrag(undefined)}
      >
        {view.builds.map(({ id, name }) => <BuildBox key={id} name={name} at={layout.builds.get(id)} />)}
        {view.cables.map((cable) => <Wire key={cable.key} cable={cable} route={layout.routes.get(cable.key)} label={labels.get(cable.key) ?? ''} chosen={cable.key === chosen} choose={() => choose(cable.key === chosen ? undefined : cable.key)} />)}
        {view.devices.map((device) => (
          <Device key={device.ref} device={device} layout={layout} taken={taken} pick={pick} lift={(key, event) => setDrag({ from: key, ...xy(point(event)) })} />
        ))}
        {layout.stubs.map(({ line, side, anchor, text, x, y }) => <text key={`${side} ${line}`} className="stub" data-chosen={line === chosen} x={x} y={y} textAnchor={anchor}>{text}</text>)}
        {drag !== undefined && <path className="rubber" d={`M${layout.sockets.get(drag.from)?.x ?? drag.x} ${layout.sockets.get(drag.from)?.y ?? drag.y}L${drag.x} ${drag.y}`} />}
      </svg>
    </div>
  );
}

const xy = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x, y });

function BuildBox({ name, at }: { readonly name: string; readonly at: Placed | undefined }) {
  if (at === undefined) return null;
  return (
    <g className="build-box">
      <rect x={at.x} y={at.y} width={at.width} height={at.height} />
      <text x={at.x + 16} y={at.y + 22}>{name}</text>
    </g>
  );
}

interface DeviceProps {
  readonly device: DeviceView;
  readonly layout: Layout;
  readonly taken: string | undefined;
  readonly pick: (key: string) => void;
  readonly lift: (key: string, event: PointerEvent) => void;
}

function Device({ device, layout, taken, pick, lift }: DeviceProps) {
  const at = layout.devices.get(device.ref);
  if (at === undefined) return null;
  return (
    <g className="device">
      <rect x={at.x} y={at.y} width={at.width} height={at.height} />
      <text className="device-name" x={at.x + 12} y={at.y + 19}>{device.name}</text>
      {device.sockets.map((socket) => {
        const place = layout.sockets.get(socket.key);
        if (place === undefined) return null;
        return <Socket key={socket.key} socket={socket} device={device.name} x={place.x} y={place.y} left={place.x < at.x + at.width / 2} taken={taken === socket.key} pick={() => pick(socket.key)} lift={(event) => lift(socket.key, event)} />;
      })}
    </g>
  );
}

interface SocketProps {
  readonly socket: SocketView;
  readonly device: string;
  readonly x: number;
  readonly y: number;
  readonly left: boolean;
  readonly taken: boolean;
  readonly pick: () => void;
  readonly lift: (event: PointerEvent) => void;
}

function Socket({ socket: { key, name, kind, connector, used, way }, device, x, y, left, taken, pick, lift }: SocketProps) {
  const press = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    pick();
  };
  return (
    <g className={`socket ${kind}`} data-socket={key} data-used={used} data-taken={taken} role="button" tabIndex={0} aria-pressed={taken} aria-label={`${name} of ${device}, ${connector}, ${way === 'in' ? 'input' : way === 'out' ? 'output' : 'both ways'}${used ? ', in use' : ', free'}`} onClick={pick} onKeyDown={press} onPointerDown={lift}>
      <title>{connector}</title>
      <rect className="grip" x={left ? x - 8 : x - 90} y={y - SOCKET_STEP / 2} width={98} height={SOCKET_STEP} />
      <circle cx={x} cy={y} r="4" />
      <text x={left ? x + 10 : x - 10} y={y + 4} textAnchor={left ? 'start' : 'end'}>{name}</text>
    </g>
  );
}

interface WireProps {
  readonly cable: CableView;
  readonly route: Route | undefined;
  readonly label: string;
  readonly chosen: boolean;
  readonly choose: () => void;
}

function Wire({ cable, route, label, chosen, choose }: WireProps) {
  const last = route?.ways.at(-1);
  const end = last?.at(-1);
  if (route === undefined || last === undefined || end === undefined) return null;
  const d = route.ways.map((points) => points.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x} ${y}`).join('')).join('');
  const wrong = cable.faults.length > 0;
  const middle = midOf(last);
  const press = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    choose();
  };
  return (
    <g className={`line ${cable.kind}`} data-air={cable.air} data-wrong={wrong} data-chosen={chosen} role="button" tabIndex={0} aria-pressed={chosen} aria-label={`${cable.cable ?? (cable.air ? 'Over the air' : 'Line without a cable')}${label === '' ? '' : `, ${label}`}${wrong ? `. ${cable.faults.join(' ')}` : ''}`} onClick={choose} onKeyDown={press}>
      <path className="grip" d={d} />
      <path className={`wire ${cable.kind}`} d={d} />
      <EndMark kind={cable.kind} x={end.x} y={end.y} leftwards={(last.at(-2)?.x ?? 0) > end.x} />
      {wrong && <path className="wrong-mark" transform={`translate(${middle.x} ${middle.y})`} d="M0-7 7 0 0 7-7 0z" />}
      {route.label !== undefined && <text x={route.label.x} y={route.label.y + 11}>{label}</text>}
    </g>
  );
}

function midOf(points: Route['ways'][number]): { readonly x: number; readonly y: number } {
  const at = Math.max(1, Math.ceil(points.length / 2));
  const [a, b] = [points[at - 1], points[at]];
  return a === undefined || b === undefined ? { x: 0, y: 0 } : { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Picture ends in an arrow, power in a bar, control in a ring. */
function EndMark({ kind, x, y, leftwards }: { readonly kind: CableView['kind']; readonly x: number; readonly y: number; readonly leftwards: boolean }) {
  const transform = `translate(${x} ${y})${leftwards ? ' scale(-1 1)' : ''}`;
  if (kind === 'video') return <path className="end filled" transform={transform} d="M-4 0l-8-4v8z" />;
  if (kind === 'power') return <path className="end" transform={transform} d="M-8-5v10" />;
  return <circle className="end" transform={transform} cx="-9" r="3" />;
}
