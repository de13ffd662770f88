import type { Port } from '../schema/electrics.ts';
import { type TypicalRoom, roomOf } from './typicalPart.ts';

const socket = (way: 'in' | 'out', signal: 'SDI' | 'HDMI', level: string, more: object = {}): Port => ({ kind: 'video', way, connector: signal === 'SDI' ? 'BNC' : 'HDMI A', sex: 'female', video: { signal, level, ...more } });
// Common practice: what is carried on packs of two cells runs down to their end, 6 V.
const dc: Port = { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: { lowV: 6, highV: 17, maxA: 2 } };
type Modes = Readonly<Record<string, { name: string; delayMs: number; widthPx: number; heightPx: number; maxFrameRateHz: number; bandwidthMHz: number; sensitivityDbm: number }>>;

const FAST = { name: 'fast', delayMs: 5, widthPx: 1280, heightPx: 720, maxFrameRateHz: 60, bandwidthMHz: 40, sensitivityDbm: -76 };
const DETAILED = { name: 'detailed', delayMs: 90, widthPx: 1920, heightPx: 1080, maxFrameRateHz: 60, bandwidthMHz: 20, sensitivityDbm: -82 };
const KINDS: readonly (readonly [id: string, name: string, modes: Modes, coax: boolean, massG: number, watts: number])[] = [
  ['low-cost', 'low-cost', { detailed: DETAILED }, false, 150, 6], ['two-mode', 'two-mode', { fast: FAST, detailed: DETAILED }, true, 230, 9],
  ['no-delay', 'no-delay', { normal: { ...DETAILED, name: 'normal', delayMs: 1, bandwidthMHz: 40, sensitivityDbm: -78 } }, true, 420, 14],
];

const transmitters = roomOf(KINDS, ([id, name, modes, coax, massG, typicalW]) => [
  `transmitter-${id}`,
  {
    name: `Picture transmitter, ${name}`, kind: 'transmitter', massG, draw: { typicalW, bootS: 8 },
    radio: { role: 'transmits', carries: 'video', bandMHz: 5500, channels: [36, 40, 44, 48, 100, 108], modes, maxReceivers: 4, eirpDbm: 20, gainDbi: 2, relinkS: 6, radarCheckS: 60 },
    ports: { 'hdmi-in': socket('in', 'HDMI', '1.4'), ...(coax ? { 'sdi-in': socket('in', 'SDI', '3G'), 'sdi-loop': socket('out', 'SDI', '3G', { from: 'sdi-in', delayMs: 0 }) } : {}), 'dc-in': dc },
  },
]);
const receivers = roomOf(KINDS, ([id, name, modes, coax, massG, watts]) => [
  `receiver-${id}`,
  {
    name: `Picture receiver, ${name}`, kind: 'receiver', massG, draw: { typicalW: watts * 0.8 },
    radio: { role: 'receives', carries: 'video', bandMHz: 5500, modes, gainDbi: 4, relinkS: 6 },
    ports: { 'hdmi-out': socket('out', 'HDMI', '1.4'), ...(coax ? { 'sdi-out': socket('out', 'SDI', '3G') } : {}), 'dc-in': dc },
  },
]);

export const links: TypicalRoom = {
  ...transmitters,
  ...receivers,
  'converter-hdmi-sdi': { name: 'Converter, HDMI to SDI', kind: 'converter', massG: 120, draw: { typicalW: 2.5 }, ports: { 'hdmi-in': socket('in', 'HDMI', '2.0'), 'sdi-out': socket('out', 'SDI', '3G', { from: 'hdmi-in', delayMs: 5 }), 'dc-in': dc } },
  'converter-sdi-hdmi': { name: 'Converter, SDI to HDMI', kind: 'converter', massG: 120, draw: { typicalW: 2.5 }, ports: { 'sdi-in': socket('in', 'SDI', '3G'), 'hdmi-out': socket('out', 'HDMI', '2.0', { from: 'sdi-in', delayMs: 5 }), 'dc-in': dc } },
  'splitter-hdmi': {
    name: 'HDMI splitter', kind: 'splitter', massG: 130, draw: { typicalW: 2.5 },
    ports: { 'hdmi-in': socket('in', 'HDMI', '2.0'), 'hdmi-a': socket('out', 'HDMI', '2.0', { from: 'hdmi-in', delayMs: 0 }), 'hdmi-b': socket('out', 'HDMI', '2.0', { from: 'hdmi-in', delayMs: 0 }), 'dc-in': dc },
  },
  headphones: { name: 'Listening feed', kind: 'sound', massG: 220, sound: { delayMs: 4 } },
};
