import { roomOf } from './typicalPart.ts';

type End = readonly [connector: string, sex: 'male' | 'female'];
const BNC: End = ['BNC', 'male'];
const HDMI: End = ['HDMI A', 'male'];
const MICRO: End = ['HDMI D', 'male'];
/** From an outlet to a device: no live pin lies bare at either end. */
const TAP: readonly [End, End] = [['2-pin tap', 'male'], ['2-pin tap', 'female']];

const ROWS: readonly (readonly [id: string, name: string, carries: 'video' | 'power' | 'control', lengthMm: number, a: End, b: End, more?: object])[] = [
  ['coax-0-4', 'Coax 0.4 m', 'video', 400, BNC, BNC, { coax: 'thin' }], ['coax-1', 'Coax 1 m', 'video', 1000, BNC, BNC, { coax: 'thin' }], ['coax-10', 'Coax 10 m', 'video', 10_000, BNC, BNC, { coax: 'standard' }], ['coax-20', 'Coax 20 m', 'video', 20_000, BNC, BNC, { coax: 'standard' }],
  ['hdmi-0-5', 'HDMI cable 0.5 m', 'video', 500, HDMI, HDMI, { hdmiLevel: '2.0' }], ['hdmi-micro-0-5', 'HDMI cable 0.5 m, small end', 'video', 500, MICRO, HDMI, { hdmiLevel: '2.0' }], ['hdmi-2', 'HDMI cable 2 m', 'video', 2000, HDMI, HDMI, { hdmiLevel: '2.0' }],
  ['tap-0-4', 'Tap cable 0.4 m', 'power', 400, ...TAP, { awg: 20, maxA: 5 }], ['tap-1', 'Tap cable 1 m', 'power', 1000, ...TAP, { awg: 18, maxA: 6 }],
  ['barrel-0-3', 'Barrel lead 0.3 m', 'power', 300, ['barrel 5.5×2.1', 'female'], ['barrel 5.5×2.1', 'male'], { awg: 22, maxA: 3 }], ['barrel-tap-0-3', 'Lead from barrel to tap 0.3 m', 'power', 300, ['barrel 5.5×2.1', 'female'], ['2-pin tap', 'female'], { awg: 22, maxA: 4 }], ['xlr-0-4', 'Four-pin lead 0.4 m', 'power', 400, ['XLR 4', 'male'], ['XLR 4', 'female'], { awg: 16, maxA: 12 }], ['usb-c-0-5', 'USB lead 0.5 m', 'power', 500, ['USB C', 'male'], ['USB C', 'male'], { awg: 24, maxA: 3 }],
  ['motor-lead', 'Motor lead 0.5 m', 'control', 500, ['7-pin round', 'male'], ['7-pin round', 'male']],
];

export const cables = roomOf(ROWS, ([id, name, carries, lengthMm, a, b, more = {}]) => [
  id,
  { name, kind: 'cable', massG: 40 + lengthMm * 0.05, cable: { carries, lengthMm, ends: [{ connector: a[0], sex: a[1] }, { connector: b[0], sex: b[1] }], ...more } },
]);
