/** What a part is as a thing: solids, points, drives, ratings. */
import * as z from 'zod';
import { figure, mapOf, name, place, whole } from './basics.ts';

export const POINT_KINDS = [
  'thread', 'hole', 'rod', 'rod clamp', 'quick release', 'wedge', 'shoe', 'lens mount', 'front', 'gear', 'stud', 'spud', 'battery plate', 'collar', 'tripod plate', 'arm', 'surface', 'hand',
] as const;

/**
 * Where a part can be fixed. A male and a female of one kind and class mate. `description` is a short name for people, `explains` says how the
 * key is meant: the published schema and `explain points` print it.
 */
export const point = z.strictObject({
  name: name.optional().meta({ explains: 'for people; the key in words where not stated' }),
  kind: z.enum(POINT_KINDS).meta({ explains: 'what is there: kinds go with their like, a thread also with a hole or a stud, a rod with a rod clamp' }),
  class: name.optional().meta({ description: 'thread, rod diameter, mount, front diameter: what must agree' }),
  sex: z.enum(['male', 'female', 'neutral']).optional().meta({ explains: 'a screw, a rod, a spud is male, what takes it in female; two of one sex are told not to mate' }),
  at: place.optional().meta({ explains: 'where it is, in mm from the origin of the part: to camera left, up, forward' }),
  out: place.optional().meta({ explains: 'direction out of the part, towards what is fixed there: [0, -1, 0] for the thread under a body; its length does not matter' }),
  up: place.optional().meta({ explains: 'direction across "out" that fixes the turn: two points meet with their "up" the same way. Where not stated: up, and forward for what looks up or down' }),
  pins: z.boolean().optional().meta({ description: 'locating pins beside the screw' }),
  screws: whole('screws at this point').optional(),
  tool: name.optional().meta({ description: 'key or driver it needs; "hand" for a knob' }),
  slideMm: z.tuple([z.number(), z.number()]).optional().meta({ explains: 'least and most that what is fixed here can slide along "up"; of rods, rod clamps and fronts along "out"' }),
  turnDeg: z.tuple([z.number(), z.number()]).optional().meta({ explains: 'least and most that it can turn about "out", anticlockwise for one who faces the point' }),
  heightMm: z.tuple([z.number(), z.number()]).optional().meta({ explains: 'least and most that it can stand off along "out"; of rods, rod clamps and fronts along "up"' }),
  sideMm: z.tuple([z.number(), z.number()]).optional().meta({ explains: 'least and most that it can go across, to the right of one who faces the point with its "up" upwards' }),
  tiltDeg: z.tuple([z.number(), z.number()]).optional().meta({ explains: 'least and most that it can nod about the way across; more leans away from "up"' }),
  contactMm: z.tuple([z.number().nonnegative(), z.number().positive()]).optional().meta({ description: 'inner and outer radius of the contact face' }),
  slipTorqueNm: figure.positive('torque at which it turns').optional(),
  stiffness: z.strictObject({
    xNPerMm: figure.positive('stiffness across').optional(), yNPerMm: figure.positive('stiffness across').optional(), zNPerMm: figure.positive('stiffness along').optional(),
    xNmPerRad: figure.positive('stiffness against nodding', 'stiffness').optional(), yNmPerRad: figure.positive('stiffness against panning', 'stiffness').optional(),
    zNmPerRad: figure.positive('stiffness against rolling', 'stiffness').optional(),
  }).optional().meta({ explains: 'how stiffly a joint at this point holds: x across, y along "up", z along "out"; that of its kind where not stated' }),
  playMm: figure.nonNegative('free play', 'jump and play').optional(),
  playDeg: figure.nonNegative('free play', 'jump and play').optional(),
});
export type Point = z.infer<typeof point>;

const common = {
  name: name.optional().meta({ explains: 'for people' }),
  material: name.optional().meta({ explains: 'for people' }),
  atMm: place.optional().meta({ explains: 'where its middle is, in mm from the origin of the part: to camera left, up, forward; the origin itself where not stated' }),
  moves: z.enum(['with focus', 'with front']).optional().meta({ explains: 'goes fore and aft with the focus ring, or with the front' }),
};
const shapeOf = <T extends string>(shapeName: T) => z.literal(shapeName).meta({ explains: 'a box along the axes, a cylinder, or a tube' });
const round = {
  diameterMm: z.number().positive().meta({ explains: 'outer diameter' }),
  lengthMm: z.number().positive().meta({ explains: 'length along its axis' }),
  along: z.enum(['x', 'y', 'z']).meta({ explains: 'the way of its axis: x to camera left, y up, z forward' }),
};
export const solid = z.discriminatedUnion('shape', [
  z.strictObject({ shape: shapeOf('box'), sizeMm: place.meta({ explains: 'width, height and depth: its size to camera left, up and forward' }), ...common }),
  z.strictObject({ shape: shapeOf('cylinder'), ...round, ...common }),
  z.strictObject({ shape: shapeOf('tube'), ...round, boreMm: z.number().positive().meta({ explains: 'inner diameter' }), ...common }),
]);
export type Solid = z.infer<typeof solid>;

export const motor = z.strictObject({
  stallTorqueNm: figure.positive('torque at standstill'),
  noLoadRpm: figure.positive('speed without load'),
  gear: z.strictObject({ module: figure.positive('gear module'), teeth: whole('teeth'), faceMm: figure.positive('face width').optional() }),
  otherGears: z.array(whole('teeth')).optional(),
  maxTurns: figure.positive('turns it can make between its limits').optional(),
  timeConstantMs: figure.positive('time to settle').optional(),
  delayMs: figure.nonNegative('delay from command to motion', 'delay').optional(),
  backlashDeg: figure.nonNegative('play at its gear', 'jump and play').optional(),
  torqueLimitsNm: z.array(z.number().positive()).optional().meta({ description: 'torque limits that can be set for calibration' }),
  movingW: figure.positive('power while moving', 'watts').optional(),
  stallW: figure.positive('power at standstill under load', 'watts').optional(),
  losesMap: z.boolean().optional().meta({ description: 'forgets its map when power is lost' }),
});

/** The wheel in a hand: remote unit or follow focus on rods. */
export const handWheel = z.strictObject({
  turnDeg: figure.positive('turn of the wheel from stop to stop'),
  steps: whole('steps over that turn').optional(),
  diameterMm: figure.positive('diameter of the marking surface').optional(),
  delayMs: figure.nonNegative('delay from hand to command', 'delay').optional(),
  mapsThrow: z.boolean().optional().meta({ description: 'its whole turn serves the lens, whatever the throw' }),
  hardStops: z.boolean().optional(),
  gear: z.strictObject({ module: figure.positive('gear module'), teeth: whole('teeth'), faceMm: figure.positive('face width').optional() }).optional(),
  ratio: figure.positive('turns of its gear for one of the wheel').optional(),
  backlashDeg: figure.nonNegative('play at its gear', 'jump and play').optional(),
});

/** What holds the camera up. */
export const carrier = z.strictObject({
  kind: z.enum(['head', 'legs', 'stand', 'shoulder pad', 'handles', 'gimbal', 'mount']),
  payloadG: figure.positive('highest load').optional(),
  counterbalanceNm: figure.positive('highest counterbalance moment').optional(),
  plateTravelMm: figure.positive('travel of the sliding plate').optional(),
  footRadiusMm: figure.positive('radius of the circle of the feet').optional(),
  feet: whole('feet').optional(),
  heightMm: figure.positive('height').optional(),
  damped: z.boolean().optional(),
  tiltAxisBelowPlateMm: figure.any('tilt axis of a head, below its plate').optional(),
  lowestHeightMm: figure.positive('lowest height it can be set to').optional(),
  widestFootRadiusMm: figure.positive('widest circle its feet can be set to').optional(),
  axesAtMm: place.optional().meta({ description: 'where the axes of a gimbal meet' }),
  sideTravelMm: figure.positive('travel of a gimbal’s plate from side to side').optional(),
  heightTravelMm: figure.positive('travel of a gimbal’s plate up and down').optional(),
  motorNm: figure.positive('torque that the weakest motor of a gimbal holds continuously').optional(),
});

/** A rod or a bar that bends. */
export const beam = z.strictObject({ outerMm: figure.positive('outer diameter'), innerMm: figure.nonNegative('bore').optional(), lengthMm: figure.positive('length'), material: name });

export const mechanicalFacets = { motor, handWheel, carrier, beam };
export const shape = { points: mapOf(point).optional(), solids: z.array(solid).optional() };
