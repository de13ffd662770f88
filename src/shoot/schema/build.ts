/** Assemblies: pieces, joints and lines; the glass in front of the sensor; setups, the unit that is traced and checked. */
import * as z from 'zod';
import { id, mapOf, name, note } from './basics.ts';

/** A place in an assembly: `piece/point` or `piece/port`; a cable to another build names it first: `build/piece/port`. */
export const end = z.string().regex(/^[\p{L}\p{N}][\p{L}\p{N}-]*(\/[\p{L}\p{N}][\p{L}\p{N}-]*){1,2}$/u, 'it must be written piece/point, piece/port or build/piece/port; a viewer’s screen build/piece');

/** A way a joint can move: one value, one for each lens, or found by the program. */
export const setting = z.union([
  z.number(),
  z.strictObject({ auto: z.enum(['perLens', 'shared']), low: z.number().optional(), high: z.number().optional(), start: z.number().optional() }),
  z.strictObject({ pinned: z.record(id, z.number()), otherwise: z.number().optional() }),
]);
export type Setting = z.infer<typeof setting>;

export const SETTING_KEYS = ['turnDeg', 'tiltDeg', 'slideMm', 'sideMm', 'heightMm'] as const;
export const settings = z.strictObject(Object.fromEntries(SETTING_KEYS.map((key) => [key, setting.optional()])) as Record<(typeof SETTING_KEYS)[number], z.ZodOptional<typeof setting>>);

export const piece = z.strictObject({
  of: id.meta({ description: 'a part or a copy' }),
  name: name.optional(),
  /** How a device is set in this build. */
  mode: id.optional().meta({ description: 'mode of a radio; that of a camera is the setup’s' }),
  net: id.optional().meta({ description: 'radios on the same net talk to each other' }),
  channel: z.int().optional(),
  squeeze: z.number().positive().optional().meta({ description: 'squeeze set on a screen' }),
  zoom: z.number().min(1).optional().meta({ description: 'punch-in used for focus' }),
  gearTeeth: z.int().positive().optional().meta({ description: 'gear fitted to a motor' }),
  packs: z.array(id).optional().meta({ description: 'on a battery plate: the packs it starts with' }),
  ballastG: z.number().nonnegative().optional().meta({ description: 'sandbags on the feet of legs or a stand' }),
  note: note.optional(),
});
export type Piece = z.infer<typeof piece>;

/** A point fixed to a point. */
export const joint = z.strictObject({
  a: end,
  b: end,
  settings: settings.optional(),
  torqueNm: z.number().positive().optional().meta({ description: 'how firmly the screw is turned' }),
  mesh: z.boolean().optional().meta({ description: 'two gears that turn each other, not a fixing' }),
  note: note.optional(),
});
export type Joint = z.infer<typeof joint>;

/** A cable between two ports. `cable` names the part it is made of; a line without one is still to be found. */
export const line = z.strictObject({ from: end, to: end, cable: id.optional(), direct: z.boolean().optional().meta({ description: 'plugged straight in, without a cable' }), note: note.optional() });
export type Line = z.infer<typeof line>;

export const PURPOSES = ['tripod', 'shoulder', 'handheld', 'gimbal', 'vehicle', 'focus station', 'viewing station', 'other'] as const;

export const build = z.strictObject({
  name,
  purpose: z.enum(PURPOSES),
  station: z.boolean().optional().meta({ description: 'stands apart from the camera' }),
  wish: z.boolean().optional().meta({ description: 'pieces are still missing' }),
  missing: z.array(z.strictObject({ kind: name, for: note.optional() })).optional(),
  root: id.optional().meta({ description: 'the piece placing starts from' }),
  camera: id.optional().meta({ description: 'the piece that is the camera body' }),
  pieces: mapOf(piece),
  joints: mapOf(joint).optional(),
  lines: mapOf(line).optional(),
  note: note.optional(),
});
export type Build = z.infer<typeof build>;

/** The ordered stack in front of the sensor, from the body out, with the pieces, joints and lines that come and go with it. */
export const glass = z.strictObject({
  name,
  stack: z.array(id).min(1).meta({ description: 'pieces of this glass from the body outwards' }),
  pieces: mapOf(piece),
  joints: mapOf(joint).optional(),
  lines: mapOf(line).optional(),
  note: note.optional(),
});
export type Glass = z.infer<typeof glass>;

export const setup = z.strictObject({
  name,
  camera: id.meta({ description: 'the camera build' }),
  stations: z.array(id).optional().meta({ description: 'stations that are live' }),
  glasses: z.array(id).min(1).meta({ description: 'the set of glasses it is shot with' }),
  mode: id.meta({ description: 'camera mode' }),
  frameRateHz: z.number().positive(),
  note: note.optional(),
});
