/** What a part does to the picture in front of the sensor. */
import * as z from 'zod';
import { distanceMm, figure, mapOf, name, note, plain, whole } from './basics.ts';

/** What one output of the camera sends while a mode records. */
export const cameraOutput = z.strictObject({
  live: z.boolean().meta({ description: 'sends a picture in this mode' }),
  widthPx: whole('width of the picture sent').optional(),
  heightPx: whole('height of the picture sent').optional(),
  frameRateHz: figure.positive('frame rate sent, where it is not the project rate').optional(),
  interlaced: z.boolean().optional(),
  segmented: z.boolean().optional(),
  mapping: z.enum(['level A', 'level B']).optional(),
  sampling: z.enum(['4:2:2', '4:4:4', '4:2:0']).optional(),
  bitDepth: whole('bits a sample').optional(),
  clean: z.boolean().optional().meta({ description: 'without overlays' }),
  desqueezed: z.boolean().optional().meta({ description: 'already de-squeezed by the camera' }),
  delayMs: figure.nonNegative('delay from sensor to output', 'delay').optional(),
});

export const cameraMode = z.strictObject({
  name,
  widthPx: whole('recorded width'),
  heightPx: whole('recorded height'),
  sensorWidthMm: figure.positive('width of the sensor area in use'),
  sensorHeightMm: figure.positive('height of the sensor area in use'),
  maxFrameRateHz: figure.positive('highest frame rate').optional(),
  dataRateMbps: figure.positive('data rate while recording').optional(),
  rollingShutterMs: figure.nonNegative('time from the first line read to the last').optional(),
  outputs: mapOf(cameraOutput).optional(),
});
export type CameraMode = z.infer<typeof cameraMode>;

export const body = z.strictObject({
  mount: name,
  flangeMm: figure.positive('flange focal distance', 'infinity and flange').optional(),
  sensorBehindFrontMm: figure.nonNegative('sensor plane behind the mount face, where it differs from the flange').optional(),
  baseIso: plain('base sensitivity').optional(),
  modes: mapOf(cameraMode),
});

/** Squeeze as it changes with focus distance. */
const squeezeAt = z.array(z.strictObject({ distanceMm, squeeze: figure.positive('squeeze at this distance', 'squeeze') })).min(2);
/** Entrance pupil of one meridian. */
const pupil = z.strictObject({
  behindFrontMm: figure.nonNegative('entrance pupil behind the front', 'pupils'),
  diameterMm: figure.positive('entrance pupil diameter at the widest stop').optional(),
});

export const lens = z.strictObject({
  mount: name,
  focalLengthMm: figure.positive('focal length (of an anamorphic lens: the vertical one)'),
  squeeze: figure.positive('squeeze; 1 for a spherical lens', 'squeeze'),
  squeezeAt: squeezeAt.optional(),
  tStop: figure.positive('widest T-stop').optional(),
  fNumber: figure.positive('widest f-number').optional(),
  transmittance: figure.share('share of the light that passes').optional(),
  imageCircleMm: figure.positive('image circle').optional(),
  flangeMm: figure.positive('flange focal distance it is set for', 'infinity and flange').optional(),
  trueInfinity: z.boolean().optional().meta({ description: 'checked on this body: its infinity mark is infinity' }),
  infinityErrorMm: figure.any('distance really in focus at the infinity mark', 'infinity and flange').optional(),
  pupils: z.strictObject({ horizontal: pupil, vertical: pupil }).optional(),
  breathing: z.array(z.strictObject({ distanceMm, fieldShare: figure.positive('field of view against that at infinity', 'breathing') })).min(2).optional(),
  rollLock: z.string().max(200).optional().meta({ description: 'what keeps the squeeze axis from turning' }),
  principalToSensorMm: figure.any('front principal plane to sensor').optional(),
});

/** An afocal anamorphic block in front of a taking lens. */
export const block = z.strictObject({
  squeeze: figure.positive('squeeze', 'squeeze'),
  squeezeAt: squeezeAt.optional(),
  rearClearMm: figure.positive('clear diameter at the rear').optional(),
  frontClearMm: figure.positive('clear diameter at the front').optional(),
  elementSpacingMm: figure.positive('distance from front to rear element').optional(),
  rearToPupilGapMm: figure.nonNegative('rear element to the front of the taking lens when mounted close').optional(),
  transmittance: figure.share('share of the light that passes').optional(),
  roll: z.strictObject({ heldBy: z.enum(['friction', 'clamp', 'screws', 'key']), slipTorqueNm: figure.positive('torque that turns it in its seat').optional() }).optional(),
});

/** A ring that focuses: on a lens, or on a focuser in front of a locked lens. */
export const focusRing = z.strictObject({
  closeMm: figure.positive('closest distance, from the sensor plane').optional(),
  throwDeg: figure.positive('turn of the ring from infinity to close').optional(),
  marks: z.array(z.strictObject({ distanceMm, angleDeg: z.number() })).min(2).optional().meta({ measure: 'focuser' }),
  leadMm: figure.positive('lead of the helicoid, mm a turn').optional(),
  datum: z.enum(['sensor', 'front']).optional().meta({ description: 'where its distances run from' }),
  endStops: z.enum(['hard', 'soft', 'none']).optional(),
  ringTorqueNm: figure.positive('torque that turns the ring, warm', 'ring torque').optional(),
  coldTorqueNm: figure.positive('torque that turns the ring, cold', 'ring torque').optional(),
  coldAtC: figure.any('temperature of the cold measurement').optional(),
  playDeg: figure.nonNegative('free play of the ring', 'jump and play').optional(),
  ringDiameterMm: figure.positive('outside diameter of the ring').optional(),
  gear: z.strictObject({
    module: figure.positive('gear module'),
    teeth: whole('teeth'),
    faceMm: figure.positive('face width').optional(),
    split: z.boolean().optional().meta({ description: 'a split ring that bumps at the join' }),
  }).optional(),
  gearTravelMm: figure.any('travel of the gear along the axis from infinity to close').optional(),
});

/** Variable diopter in front: the taking lens stays at infinity. */
export const focuser = z.strictObject({
  toSensorMm: figure.positive('focuser to sensor plane, where nothing is placed').optional(),
  clearMm: figure.positive('clear diameter').optional(),
  transmittance: figure.share('share of the light that passes').optional(),
});

/** The front of a lens, block or focuser. */
export const front = z.strictObject({
  diameterMm: figure.positive('outside diameter of the front').optional(),
  threadMm: figure.positive('filter thread').optional(),
  clearMm: figure.positive('clear diameter').optional(),
  turnsDeg: figure.nonNegative('turn of the front from infinity to close').optional(),
  travelMm: figure.any('travel of the front from infinity to close').optional(),
});

export const closeUp = z.strictObject({
  powerDpt: figure.positive('power'),
  clearMm: figure.positive('clear diameter').optional(),
  fitsMm: z.array(z.number().positive()).optional().meta({ description: 'fronts it fits, by thread or clamp' }),
});

export const filter = z.strictObject({
  kind: z.enum(['nd', 'polariser', 'diffusion', 'colour', 'clear', 'other']),
  stops: figure.nonNegative('light it takes, stops').optional(),
  widthMm: figure.positive('width').optional(),
  heightMm: figure.positive('height').optional(),
  diameterMm: figure.positive('diameter of a round one').optional(),
});

/** Openings ahead of the front: matte box stages, hood, flags. */
export const matteBox = z.strictObject({
  fit: z.enum(['clamp', 'rods', 'thread']),
  clampMm: figure.positive('diameter it clamps').optional(),
  openings: mapOf(z.strictObject({
    name: name.optional(),
    aheadOfFrontMm: figure.any('ahead of the front it sits on'),
    widthMm: figure.positive('clear width'),
    heightMm: figure.positive('clear height'),
    holds: z.enum(['filter', 'turning filter', 'nothing']).optional(),
  })),
});

/** From a lens's mount to a body's. */
export const mountAdapter = z.strictObject({
  lensMount: name,
  bodyMount: name,
  thicknessMm: figure.positive('thickness').optional(),
  note: note.optional(),
});

export const opticalFacets = { body, lens, block, focus: focusRing, focuser, front, closeUp, filter, matteBox, mountAdapter };
