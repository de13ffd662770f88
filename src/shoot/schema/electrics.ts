/** What a part sees, sends, feeds and is fed by. */
import * as z from 'zod';
import { figure, id, mapOf, name, plain, whole } from './basics.ts';

const raster = z.strictObject({
  widthPx: whole('width'),
  heightPx: whole('height'),
  ratesHz: z.array(z.number().positive()).min(1),
  interlaced: z.boolean().optional(),
});

const videoPort = z.strictObject({
  signal: z.enum(['SDI', 'HDMI']),
  level: z.string().max(20).meta({ description: 'highest level: HD, 3G, 6G, 12G; for HDMI 1.4, 2.0, 2.1' }),
  accepts: z.array(raster).optional().meta({ description: 'rasters it takes or makes; all that fit the level where not stated' }),
  samplings: z.array(z.enum(['4:2:2', '4:4:4', '4:2:0'])).optional(),
  mappings: z.array(z.enum(['level A', 'level B', 'segmented'])).optional(),
  from: id.optional().meta({ description: 'for an output: the input it passes on' }),
  delayMs: figure.nonNegative('delay from that input to here', 'delay').optional(),
  desqueezes: z.boolean().optional().meta({ description: 'for an output: sends the picture de-squeezed' }),
  scalesTo: z.strictObject({ widthPx: whole('width'), heightPx: whole('height') }).optional(),
  budgetDb: figure.positive('loss the receiver can make good').optional(),
});

const powerPort = z.strictObject({
  lowV: figure.nonNegative('lowest voltage taken or given').optional(),
  highV: figure.nonNegative('highest voltage taken or given').optional(),
  polarity: z.enum(['centre plus', 'centre minus', 'pin 1 minus', 'keyed']).optional(),
  maxA: figure.positive('highest current').optional(),
  fuseA: figure.positive('fuse').optional(),
  from: id.optional().meta({ description: 'for an output: the input or pack it is fed from' }),
  outputV: figure.positive('voltage of a regulated output').optional(),
  efficiency: figure.share('share of the power that arrives').optional(),
  profile: z.string().max(40).optional().meta({ description: 'a negotiated supply, such as USB PD 45 W' }),
});

const controlPort = z.strictObject({
  protocol: name.optional(),
  delayMs: figure.nonNegative('delay it adds', 'delay').optional(),
});

/** Where a cable goes. */
export const port = z.strictObject({
  name: name.optional(),
  kind: z.enum(['video', 'power', 'control']),
  way: z.enum(['in', 'out', 'both']),
  connector: name,
  sex: z.enum(['male', 'female', 'neutral']).optional(),
  at: z.tuple([z.number(), z.number(), z.number()]).optional(),
  shares: id.optional().meta({ description: 'another port in the same plug: one cable serves both' }),
  video: videoPort.optional(),
  power: powerPort.optional(),
  control: controlPort.optional(),
});
export type Port = z.infer<typeof port>;

export const screen = z.strictObject({
  diagonalMm: figure.positive('diagonal of the picture'),
  widthPx: whole('panel width'),
  heightPx: whole('panel height'),
  whiteCdPerM2: figure.positive('white at full brightness').optional(),
  blackCdPerM2: figure.nonNegative('black').optional(),
  reflectance: figure.share('light it throws back').optional(),
  squeezes: z.array(z.number().positive()).optional().meta({ description: 'squeezes it can undo' }),
  zooms: z.array(z.number().min(1)).optional().meta({ description: 'punch-ins it offers' }),
  delayMs: figure.nonNegative('delay from its input to light', 'delay').optional(),
});

const radioMode = z.strictObject({
  name,
  delayMs: figure.nonNegative('delay, transmitter to receiver together', 'delay').optional(),
  widthPx: whole('width sent').optional(),
  heightPx: whole('height sent').optional(),
  maxFrameRateHz: figure.positive('highest frame rate').optional(),
  bandwidthMHz: figure.positive('width of the channel').optional(),
  sensitivityDbm: figure.any('weakest signal received').optional(),
});

/** A radio that carries picture or control. Two pieces on the same net talk. */
export const radio = z.strictObject({
  role: z.enum(['transmits', 'receives', 'both']),
  carries: z.enum(['video', 'control']),
  bandMHz: figure.positive('band').optional(),
  channels: z.array(z.int()).optional(),
  modes: mapOf(radioMode),
  maxReceivers: whole('receivers it serves').optional(),
  eirpDbm: figure.any('radiated power').optional(),
  gainDbi: figure.any('aerial gain').optional(),
  breaksUpAtM: figure.positive('distance at which it broke up in the open', 'link').optional(),
  relinkS: figure.nonNegative('time to find each other again').optional(),
  radarCheckS: figure.nonNegative('silence before it may send on a channel shared with radar').optional(),
});

export const draw = z.strictObject({
  typicalW: figure.nonNegative('power in use', 'watts'),
  peakW: figure.nonNegative('highest power', 'watts').optional(),
  idleW: figure.nonNegative('power at rest', 'watts').optional(),
  bootS: figure.nonNegative('time to start').optional(),
});

export const pack = z.strictObject({
  mount: name.optional().meta({ description: 'battery mount; where not stated, that of the plates it is put on' }),
  chemistry: z.string().max(40).optional(),
  nominalV: figure.positive('marked voltage'),
  capacityAh: figure.positive('marked capacity'),
  openCircuit: z.array(z.tuple([z.number().min(0).max(1), z.number().positive()])).min(2).optional().meta({ description: 'state of charge and voltage at rest' }),
  internalOhm: figure.positive('internal resistance').optional(),
  coldOhmRatio: figure.positive('internal resistance at 0 °C against 20 °C').optional(),
  coldCapacityShare: figure.share('capacity left at 0 °C').optional(),
  cutoffV: figure.positive('voltage at which it or the device shuts off').optional(),
  maxA: figure.positive('highest current').optional(),
  chargeHours: figure.positive('time to charge').optional(),
  outlets: z.boolean().optional().meta({ description: 'has outlets of its own, as a power bank has' }),
});

export const charger = z.strictObject({ bays: whole('packs at once'), takes: z.array(name).min(1).meta({ description: 'battery mounts it takes' }), hoursEach: figure.positive('time to charge one').optional() });

/** Something packs clip on. */
export const batteryPlate = z.strictObject({ mount: name, packs: whole('bays, packs at once').optional(), hotSwap: z.boolean().optional() });

export const cable = z.strictObject({
  carries: z.enum(['video', 'power', 'control']),
  lengthMm: figure.positive('length'),
  ends: z.tuple([
    z.strictObject({ connector: name, sex: z.enum(['male', 'female', 'neutral']).optional() }),
    z.strictObject({ connector: name, sex: z.enum(['male', 'female', 'neutral']).optional() }),
  ]),
  coax: name.optional().meta({ description: 'class of coaxial cable' }),
  hdmiLevel: z.string().max(10).optional(),
  awg: plain('wire gauge').optional(),
  areaMm2: figure.positive('copper area of one wire').optional(),
  maxA: figure.positive('highest current').optional(),
  crossed: z.boolean().optional().meta({ description: 'plus and minus swapped between the ends' }),
});

export const sound = z.strictObject({ delayMs: figure.nonNegative('delay of the sound heard', 'delay') });

export const electricalFacets = { screen, radio, draw, pack, charger, batteryPlate, cable, sound };
