import { roomOf } from './typicalPart.ts';

/** Id, name, inches, panel, white, watts, delay, mass, coax input, squeezes. */
const ROWS = [
  ['monitor-5-bright', '5-inch bright monitor', 5, 1920, 1080, 1800, 15, 20, 340, true], ['monitor-5', '5-inch monitor', 5, 1920, 1080, 500, 9, 40, 260, false], ['monitor-6', '6-inch monitor', 6, 1920, 1080, 1000, 13, 30, 380, true],
  ['monitor-7-bright', '7-inch bright monitor', 7, 1920, 1200, 2000, 24, 20, 620, true], ['monitor-7', '7-inch monitor', 7, 1920, 1200, 1000, 19, 18, 520, true], ['monitor-9', '9-inch monitor', 9, 1920, 1200, 1000, 26, 25, 1100, true],
  ['monitor-13', '13-inch monitor', 13, 1920, 1080, 500, 32, 30, 2700, true], ['monitor-17', '17-inch monitor', 17, 1920, 1080, 400, 38, 33, 3900, true], ['monitor-24', '24-inch monitor', 24, 3840, 2160, 400, 60, 35, 6200, true],
  ['tablet-11', '11-inch tablet', 11, 2388, 1668, 600, 8, 120, 470, false],
] as const;

export const monitors = roomOf(ROWS, ([id, name, inches, widthPx, heightPx, whiteCdPerM2, watts, delayMs, massG, coax]) => [
  id,
  {
    name, kind: 'monitor', massG,
    screen: { diagonalMm: Math.round(inches * 25.4), widthPx, heightPx, whiteCdPerM2, blackCdPerM2: whiteCdPerM2 / 1000, reflectance: 0.03, squeezes: [1.33, 1.5, 1.8, 2], zooms: [2, 4], delayMs },
    draw: { typicalW: watts },
    ports: {
      ...(coax
        ? {
            'sdi-in': { kind: 'video', way: 'in', connector: 'BNC', sex: 'female', video: { signal: 'SDI', level: '3G' } } as const,
            'sdi-loop': { kind: 'video', way: 'out', connector: 'BNC', sex: 'female', video: { signal: 'SDI', level: '3G', from: 'sdi-in', delayMs: 0 } } as const,
          }
        : {}),
      'hdmi-in': { kind: 'video', way: 'in', connector: 'HDMI A', sex: 'female', video: { signal: 'HDMI', level: '2.0' } },
      ...(coax ? { 'hdmi-loop': { kind: 'video', way: 'out', connector: 'HDMI A', sex: 'female', video: { signal: 'HDMI', level: '2.0', from: 'hdmi-in', delayMs: 0 } } as const } : {}),
      'dc-in': { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: inches > 12 ? { lowV: 10, highV: 17, maxA: 6 } : { lowV: 6, highV: 24, maxA: 4 } },
    },
  },
]);
