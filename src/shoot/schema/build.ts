/** Assemblies: pieces, joints and lines; the glass in front of the sensor; setups, the unit that is traced and checked. */
import * as z from 'zod';
import { id, mapOf, name, note } from './basics.ts';

/** A place in an assembly: `piece/point` or `piece/port`; a cable to another build names it first: `build/piece/port`. */
export const end = z.string().regex(/^[\p{L}\p{N}][\p{L}\p{N}-]*(\/[\p{L}\p{N}][\p{L}\p{N}-]*){1,2}$/u, 'it must be written piece/point, piece/port or build/piece/port; a viewer’s screen build/piece');

/** A way a joint can move: one value, one for each lens, or found by the program. */
export const foundSetting = z.strictObject({
  auto: z.enum(['perLens', 'shared']).meta({ explains: 'found by the program, so that gears mesh and loops close: "perLens" one value for each glass, "shared" one that serves the whole set' }),
  low: z.number().optional().meta({ explains: 'least value to look at; that of the points where not stated' }),
  high: z.number().optional().meta({ explains: 'most, likewise' }),
  start: z.number().optional().meta({ explains: 'where it stands if nothing pulls at it' }),
});
export const pinnedSetting = z.strictObject({
  pinned: z.record(id, z.number()).meta({ explains: 'the value for each glass, by its key: {"short-lens": 12, "long-lens": 38}' }),
  otherwise: z.number().optional().meta({ explains: 'the value for every other glass' }),
});
export const setting = z.union([z.number(), foundSetting, pinnedSetting]);
export type Setting = z.infer<typeof setting>;

export const SETTING_KEYS = ['turnDeg', 'tiltDeg', 'slideMm', 'sideMm', 'heightMm'] as const;
const MOVES: Readonly<Record<(typeof SETTING_KEYS)[number], string>> = {
  turnDeg: 'turns "b" about "out" of "a", anticlockwise for one who faces point "a" from outside',
  tiltDeg: 'then nods it about the way across; more leans what is joined at "b" away from "up"',
  slideMm: 'moves "b" along "up" of "a"; where "a" is a rod, a rod clamp or a front, along its "out". Where only point "b" has a range along "up", it says where "a" sits on "b"',
  sideMm: 'moves "b" across, to the right of one who faces point "a" with its "up" upwards',
  heightMm: 'lifts "b" off along "out" of "a"; where "a" is a rod, a rod clamp or a front, along its "up"',
};
export const settings = z.strictObject(Object.fromEntries(SETTING_KEYS.map((key) => [key, setting.optional().meta({ explains: MOVES[key] })])) as Record<(typeof SETTING_KEYS)[number], z.ZodOptional<typeof setting>>);

export const piece = z.strictObject({
  of: id.meta({ description: 'a part or a copy' }),
  name: name.optional().meta({ explains: 'for people; that of the part where not stated' }),
  /** How a device is set in this build. */
  mode: id.optional().meta({ description: 'mode of a radio; that of a camera is the setup’s' }),
  net: id.optional().meta({ description: 'radios on the same net talk to each other' }),
  channel: z.int().optional().meta({ explains: 'number of the radio channel it is set to' }),
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
  a: end.meta({ explains: 'piece/point that the settings are counted from. Which end is which decides their sense, not who carries whom: placing runs from the root of the build outwards' }),
  b: end.meta({ explains: 'piece/point that meets it: the two places come together, "out" against "out", "up" along "up"' }),
  settings: settings.optional().meta({ explains: 'how "b" stands to "a" other than face to face; nothing is moved or turned where not stated' }),
  torqueNm: z.number().positive().optional().meta({ description: 'how firmly the screw is turned' }),
  mesh: z.boolean().optional().meta({ description: 'two gears that turn each other, not a fixing' }),
  note: note.optional().meta({ explains: 'for people' }),
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
