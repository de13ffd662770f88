import type { Shoot } from '../src/shoot/schema/shoot.ts';
import { type Draft, tinyShoot } from './tinyShoot.ts';

/** What a test wires up: parts by id, pieces of the camera build by id, lines as `[from, to, cable]`. The camera is `body`, its 3G output `body/sdi-out`. */
export interface Scene {
  readonly parts?: Readonly<Record<string, Draft>>;
  readonly pieces?: Readonly<Record<string, Draft>>;
  readonly lines?: Readonly<Record<string, readonly [from: string, to: string, cable?: string]>>;
  /** What the camera's output sends, over 1080p25 4:2:2 10 bit. */
  readonly sends?: Draft;
  readonly frameRateHz?: number;
}

/** The smallest example with its electrics replaced by those of a scene. All parts invented. */
export function wiredShoot(scene: Scene, change: (draft: Draft) => void = () => undefined): Shoot {
  return tinyShoot((draft) => {
    const build = draft.builds.camera;
    build.pieces = { body: build.pieces.body, ...scene.pieces };
    build.joints = undefined;
    build.lines = Object.fromEntries(Object.entries(scene.lines ?? {}).map(([id, [from, to, cable]]) => [id, cable === undefined ? { from, to } : { from, to, cable }]));
    Object.assign(draft.kit.parts, scene.parts);
    Object.assign(draft.kit.parts.body.body.modes['open-gate'].outputs['sdi-out'], scene.sends);
    draft.setups.sticks.frameRateHz = scene.frameRateHz ?? 25;
    draft.needs.viewers = {};
    change(draft);
    if (build.joints === undefined) delete build.joints;
  });
}

/** Ports as tests need them. */
export const sdi = (way: 'in' | 'out', video: Draft = {}): Draft => ({ kind: 'video', way, connector: 'BNC', sex: 'female', video: { signal: 'SDI', level: '3G', ...video } });
export const hdmi = (way: 'in' | 'out', video: Draft = {}): Draft => ({ kind: 'video', way, connector: 'HDMI A', sex: 'female', video: { signal: 'HDMI', level: '2.0', ...video } });
export const dc = (power: Draft = {}): Draft => ({ kind: 'power', way: 'in', connector: '2-pin tap', sex: 'female', power: { lowV: 7, highV: 24, ...power } });
export const outlet = (from: string, power: Draft = {}): Draft => ({ kind: 'power', way: 'out', connector: '2-pin tap', sex: 'female', power: { from, ...power } });

/** Parts as tests need them. */
export const screen = (ports: Draft, more: Draft = {}): Draft => ({
  name: 'Screen', kind: 'monitor', ports, draw: { typicalW: 13 },
  screen: { diagonalMm: 127, widthPx: 1920, heightPx: 1080, whiteCdPerM2: 1500, blackCdPerM2: 1.2, reflectance: 0.02, squeezes: [1.5, 2], zooms: [2, 4], delayMs: 22 }, ...more,
});
export const device = (name: string, ports: Draft, more: Draft = {}): Draft => ({ name, kind: 'converter', ports, ...more });
export const coax = (lengthMm: number, coaxClass: string | null = 'thin'): Draft => ({
  name: `Coax ${lengthMm / 1000} m`, kind: 'cable', count: 9,
  cable: { carries: 'video', lengthMm, ends: [{ connector: 'BNC', sex: 'male' }, { connector: 'BNC', sex: 'male' }], ...(coaxClass === null ? {} : { coax: coaxClass }) },
});
export const transmitter = (modes: Draft, more: Draft = {}): Draft => ({
  name: 'Transmitter', kind: 'transmitter', ports: { 'sdi-in': sdi('in'), 'sdi-loop': sdi('out', { from: 'sdi-in', delayMs: 0 }) },
  radio: { role: 'transmits', carries: 'video', bandMHz: 5500, modes, maxReceivers: 2, eirpDbm: 20, ...more },
});
export const receiver = (modes: Draft, more: Draft = {}): Draft => ({
  name: 'Receiver', kind: 'receiver', ports: { 'sdi-out': sdi('out') }, radio: { role: 'receives', carries: 'video', bandMHz: 5500, modes, gainDbi: 4, relinkS: 6, ...more },
});
export const pack = (more: Draft = {}, ports: Draft = { 'tap-1': outlet('pack'), 'tap-2': outlet('pack') }): Draft => ({
  name: 'Pack', kind: 'battery', count: 4, ports,
  pack: { chemistry: 'lithium ion', nominalV: 14.4, capacityAh: 6.8, openCircuit: [[0, 12], [1, 16.8]], internalOhm: 1e-6, coldOhmRatio: 1, coldCapacityShare: 1, cutoffV: 12, maxA: 12, ...more },
});
