/** What the day asks: delivery, people and their jobs, shots, days, limits. */
import * as z from 'zod';
import { distanceMm, figure, id, mapOf, name, note, whole } from './basics.ts';
import { end } from './build.ts';

export const delivery = z.strictObject({
  aspect: z.number().min(0.5).max(5),
  widthPx: whole('width delivered'),
  heightPx: whole('height delivered').optional(),
  protection: z.number().min(0).max(0.5).optional().meta({ description: 'share kept free around the frame' }),
  circleOfConfusionMm: figure.positive('circle of confusion on the sensor, vertical').optional(),
});

export const JOBS = ['operate', 'pull focus', 'direct', 'script', 'light', 'client'] as const;

export const person = z.strictObject({ name: name.optional(), role: name });

/** Somebody who must see the picture, on a screen, for a job. */
export const viewer = z.strictObject({
  who: id,
  job: z.enum(JOBS),
  setups: z.array(id).min(1).optional().meta({ description: 'setups in which they watch; all where not stated' }),
  screen: end.meta({ description: 'build/piece of the screen' }),
  distanceMm: figure.positive('from eye to screen').optional(),
  illuminanceLux: figure.nonNegative('light on the screen').optional(),
  hearsSound: z.boolean().optional(),
  blurRatio: figure.positive('smallest blur called soft on this screen, against the calculated one', 'visible blur').optional(),
});

export const METHODS = ['stops', 'marks', 'picture', 'both'] as const;

export const shot = z.strictObject({
  name,
  setup: id,
  glass: id,
  day: id.optional(),
  order: z.number().optional(),
  block: name.optional().meta({ description: 'shots that must stay together' }),
  after: z.array(id).optional().meta({ description: 'shots that must come before' }),
  tStop: figure.positive('T-stop shot at'),
  takes: z.int().positive().optional(),
  takeMin: figure.positive('length of a take').optional(),
  resetMin: figure.nonNegative('time between takes').optional(),
  subject: z.array(z.strictObject({ atS: z.number().nonnegative(), distanceMm })).min(1).optional().meta({ description: 'subject distance from the sensor plane over time' }),
  motion: z.enum(['smooth', 'constant', 'rack']).optional(),
  closeMm: z.number().positive().optional(),
  depthMm: figure.positive('depth that must be sharp at once, at the nearest').optional(),
  diopter: id.optional().meta({ description: 'close-up lens used' }),
  pulledBy: id.optional().meta({ description: 'person' }),
  method: z.enum(METHODS).optional(),
  marksMm: z.array(z.number().positive()).optional(),
  circleOfConfusionMm: figure.positive('circle of confusion on the sensor, vertical').optional(),
  linkDistanceM: figure.positive('from transmitter to the farthest station').optional(),
  obstacles: z.strictObject({ bodies: z.int().min(0).optional(), walls: z.int().min(0).optional(), water: z.boolean().optional() }).optional(),
  place: z.enum(['interior', 'exterior']).optional(),
  drivingMps: figure.nonNegative('speed at which the camera is driven').optional(),
  missMm: figure.nonNegative('rms by which the subject misses its place along the lens axis').optional(),
  swaySpread: figure.nonNegative('handheld sway towards the subject, mm').optional(),
  holdMin: figure.nonNegative('time held on the shoulder or in the hands').optional(),
  note: note.optional(),
});
export type Shot = z.infer<typeof shot>;

export const day = z.strictObject({
  name,
  temperatureC: figure.any('temperature').optional(),
  illuminanceLux: figure.nonNegative('light the monitors stand in').optional(),
  workHours: figure.positive('hours from first to last power').optional(),
  windMps: figure.nonNegative('wind').optional(),
  mains: z.boolean().optional().meta({ description: 'chargers can run all day, and somebody minds them' }),
  flies: z.boolean().optional().meta({ description: 'the kit travels by air' }),
});

export const needs = z.strictObject({
  delivery,
  viewers: mapOf(viewer).optional(),
  region: z.enum(['EU', 'US']).optional().meta({ description: 'whose radio rules' }),
  batteryKinds: z.int().positive().optional().meta({ description: 'most kinds of battery wanted' }),
  shoulderMassG: figure.positive('most weight wanted on a shoulder').optional(),
  handheldMassG: figure.positive('most weight wanted in the hands').optional(),
  verticalLeanDeg: figure.positive('lean of verticals that would be seen').optional(),
  soundDelayMs: figure.nonNegative('delay of the sound in headphones').optional(),
  note: note.optional(),
});
export type Needs = z.infer<typeof needs>;
