import type { CameraMode } from '../schema/optics.ts';
import { roomOf } from './typicalPart.ts';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly mount: string;
  readonly flangeMm: number;
  readonly massG: number;
  readonly watts: number;
  readonly modes: readonly (readonly [id: string, name: string, widthPx: number, heightPx: number, widthMm: number, heightMm: number])[];
  readonly sdi: boolean;
}

const ROWS: readonly Row[] = [
  { id: 'body-super-35', name: 'Super 35 body', mount: 'short 18 mm', flangeMm: 18, massG: 2000, watts: 35, sdi: true, modes: [['full', '17:9', 4096, 2160, 24.6, 13], ['four-three', '4:3 for 2×', 2880, 2160, 17.3, 13]] },
  { id: 'body-super-35-tall', name: 'Super 35 body with a tall gate', mount: 'long 52 mm', flangeMm: 52, massG: 2600, watts: 55, sdi: true, modes: [['tall', '6:5 for 2×', 3424, 2852, 22, 18.3], ['open-gate', 'open gate', 4448, 3096, 28.2, 18.2]] },
  { id: 'body-full-frame', name: 'Full-frame cinema body', mount: 'short 18 mm', flangeMm: 18, massG: 1700, watts: 28, sdi: true, modes: [['open-gate', 'open gate 3:2', 5952, 3968, 35.7, 23.8], ['six-five', '6:5 for 2×', 4352, 3626, 26.1, 21.75]] },
  { id: 'body-large-format', name: 'Large-format cinema body', mount: 'long 52 mm', flangeMm: 52, massG: 3600, watts: 75, sdi: true, modes: [['open-gate', 'open gate', 4448, 3096, 36.7, 25.5], ['wide', '16:9', 3840, 2160, 31.7, 17.8]] },
  { id: 'body-mirrorless-full-frame', name: 'Small full-frame body', mount: 'short 18 mm', flangeMm: 18, massG: 720, watts: 9, sdi: false, modes: [['wide', '16:9', 3840, 2160, 35.6, 20], ['open-gate', 'open gate 3:2', 6000, 4000, 35.6, 23.8]] },
  { id: 'body-mirrorless-four-thirds', name: 'Small four-thirds body', mount: 'short 19 mm', flangeMm: 19.25, massG: 660, watts: 8, sdi: false, modes: [['anamorphic', '4:3 for 1.33× to 2×', 3328, 2496, 17.3, 13], ['wide', '17:9', 4096, 2160, 17.3, 9.1]] },
];

/** Common practice: more than a tap gives goes in by a larger plug. */
const HEAVY_W = 50;

export const bodies = roomOf(ROWS, ({ id, name, mount, flangeMm, massG, watts, modes, sdi }) => [
  id,
  {
    name, kind: 'body', massG,
    body: { mount, flangeMm, baseIso: 800, modes: Object.fromEntries(modes.map(([mode, ...row]) => [mode, modeOf(row, sdi)])) },
    draw: { typicalW: watts, peakW: watts * 1.35, bootS: 12 },
    ports: {
      ...(sdi ? { 'sdi-out': { kind: 'video', way: 'out', connector: 'BNC', sex: 'female', video: { signal: 'SDI', level: '3G' } } as const } : {}),
      'hdmi-out': { kind: 'video', way: 'out', connector: sdi ? 'HDMI A' : 'HDMI D', sex: 'female', video: { signal: 'HDMI', level: '2.0' } },
      'dc-in': watts >= HEAVY_W ? { kind: 'power', way: 'in', connector: 'XLR 4', sex: 'male', power: { lowV: 11, highV: 17, maxA: 12 } } : { kind: 'power', way: 'in', connector: sdi ? '2-pin tap' : 'barrel 5.5×2.1', sex: sdi ? 'male' : 'female', power: sdi ? { lowV: 11, highV: 17, maxA: 8 } : { lowV: 6, highV: 9, maxA: 3, polarity: 'centre plus' } },
    },
  },
]);

function modeOf([name, widthPx, heightPx, sensorWidthMm, sensorHeightMm]: readonly [string, number, number, number, number], sdi: boolean): CameraMode {
  const output = { live: true, widthPx: 1920, heightPx: 1080, sampling: '4:2:2', bitDepth: 10, delayMs: sdi ? 50 : 60 } as const;
  return { name, widthPx, heightPx, sensorWidthMm, sensorHeightMm, rollingShutterMs: 15, outputs: { ...(sdi ? { 'sdi-out': output } : {}), 'hdmi-out': output } };
}
