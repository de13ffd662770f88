import { type RigNetwork, rigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { IDENTITY, type Vector, apply, scale } from '../../assembly/placing/Transform.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Motion } from '../../calc/mechanics/network/Motion.ts';
import { blockYaw } from '../../calc/mechanics/blockYaw.ts';
import { imageShift } from '../../calc/mechanics/imageShift.ts';
import { squeezeSkew } from '../../calc/optics/squeezeSkew.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type CarriedBy, drivenFromGlass } from './drivenFromGlass.ts';
import { recording } from './recording.ts';
import { ringTorque } from './ringTorque.ts';
import { lensOf, squeezeOf } from './squeezeOf.ts';
import { temperatureAt } from './temperatureAt.ts';
import { type ToothPush, toothPushes } from './toothForce.ts';

/** What the picture does when the drive of the focus ring reverses. Pixels are recorded ones. */
export interface ImageJump {
  readonly push: ToothPush;
  readonly forceN: number;
  /** Of the taking lens across its axis, and of the whole picture for it. */
  readonly lensShiftMm: number;
  readonly lensPx: number;
  readonly yawPx: number;
  readonly playPx: number;
  readonly rollDeg: number;
  readonly leanDeg: number;
  readonly rollCornerPx: number;
  readonly centrePx: number;
  readonly cornerPx: number;
  /** How far the whole frame jogs because the camera turns on what holds it; `undefined` free in the hands, where nothing does. */
  readonly framePx: number | undefined;
}

/** `undefined` where nothing is placed whose gear meets that of a ring. */
export function imageJump(asking: Asking, subject: SetupGlass, carriedBy: CarriedBy = 'as built'): ImageJump | undefined {
  return asking.ledger.cell(`image jump|${subject.setup}|${subject.glass}|${carriedBy}`, () => {
    const push = toothPushes(asking.ledger, subject.setup, subject.glass)[0];
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    const rig = push === undefined ? undefined : rigNetwork(asking.ledger, subject.setup, subject.glass, drivenFromGlass(asking.ledger, subject, push, carriedBy));
    if (push?.mesh.meets !== true || rig === undefined || path.body === undefined || rig.network.freeMotions.length > 0) return undefined;
    const torque = ringTorque(asking, push.ring.piece, temperatureAt(asking, subject));
    const forceN = torque.value / push.ringRadiusM;
    const motion = pushed(rig, push, forceN);
    return { push, forceN, ...pixels(asking, subject, motion, { body: path.body, lens: lensOf(path, subject.glass), block: path.block }, rig) };
  });
}

/** The friction of the ring passes the push on to the barrel, so that it acts where the teeth meet; its reaction on the driver. */
function pushed({ network, bodyOf }: RigNetwork, { ring, driver, at, along }: ToothPush, forceN: number): Motion {
  return network.solve([
    { body: bodyOf(ring.ref), forceN: scale(along, forceN), atMm: at },
    { body: bodyOf(driver.ref), forceN: scale(along, -forceN), atMm: at },
  ]).motion;
}

interface Glass {
  readonly body: SetupPiece;
  readonly lens: SetupPiece;
  readonly block: SetupPiece | undefined;
}

/**
 * A reversal goes from one side to the other: twice the give, and the free play once. A block bends what it sees by its own turn against the sensor, whatever
 * carries it: turned to camera left it throws the picture by f·θ·(1 − 1/q) against a lens that shifts to camera left, so that the two may cancel.
 */
function pixels(asking: Asking, subject: SetupGlass, motion: Motion, { body, lens, block }: Glass, { bodyOf, stands }: RigNetwork): Omit<ImageJump, 'push' | 'forceN'> {
  const { places } = placeSetup(asking.ledger, subject.setup, subject.glass);
  const shot = recording(asking, subject);
  const pixelPitchMm = shot.sensorHeight.value / shot.heightPx;
  const focalLengthMm = asking.figure(lens.part, 'lens/focalLengthMm').value;
  const principal: Vector = apply(places.get(body.ref) ?? IDENTITY, [0, 0, focalLengthMm]);
  const { shiftMm } = motion.relative({ of: bodyOf(lens.ref), to: bodyOf(body.ref), atMm: principal });
  const [acrossMm, upMm] = [still(2 * shiftMm[0]), still(2 * shiftMm[1])];
  // Far subjects: a near one jumps further by its magnification, a twentieth at most.
  const px = (mm: number) => imageShift({ magnification: 0, shiftMm: mm, pixelPitchMm }).shiftPx;
  const play = seatPlay(asking, subject, lens);
  const turn = (block === undefined ? [0, 0, 0] : motion.relative({ of: bodyOf(block.ref), to: bodyOf(body.ref), atMm: principal }).turnDeg).map(still) as unknown as Vector;
  const squeeze = block === undefined ? 1 : asking.figure(block.part, 'block/squeeze').value;
  const yaw = blockYaw({ focalLengthMm, squeeze, yawDeg: clampDeg(2 * turn[1]), pixelPitchMm }).shiftPx;
  const skew = squeezeSkew({ squeeze, rotationDeg: clampDeg(2 * turn[2]), widthPx: shot.widthPx * squeeze, heightPx: shot.heightPx });
  const lensShiftMm = Math.hypot(acrossMm, upMm);
  const [nods, pans] = motion.turnDegOf(bodyOf(body.ref)).map((deg) => (2 * still(deg) * Math.PI) / 180) as unknown as Vector;
  const framePx = stands.contacts.length === 0 ? undefined : px(focalLengthMm * Math.hypot(nods, pans / squeezeOf(asking, subject).value));
  const playPx = px(play);
  const centrePx = Math.hypot(Math.sign(acrossMm) * px(Math.abs(acrossMm)) - yaw, px(Math.abs(upMm))) + playPx;
  return {
    lensShiftMm, lensPx: px(lensShiftMm), yawPx: Math.abs(yaw), playPx, centrePx, rollDeg: Math.abs(2 * turn[2]), leanDeg: Math.abs(skew.verticalLeanDeg), rollCornerPx: skew.cornerShiftPx, cornerPx: centrePx + skew.cornerShiftPx, framePx,
  };
}

/** What only trembles from rounding stands still. */
const still = (value: number): number => (Math.abs(value) < 1e-9 ? 0 : value);
const clampDeg = (deg: number): number => Math.min(10, Math.max(-10, deg));

/** Play entered at either point of the lens's seat, else the usual. */
function seatPlay(asking: Asking, { setup, glass }: SetupGlass, lens: SetupPiece): number {
  const { model } = placeSetup(asking.ledger, setup, glass);
  const seat = [...model.tree, ...model.loops].find(({ joint: { a, b } }) => [a, b].some(({ ref, point }) => ref === lens.ref && point.kind === 'lens mount'));
  const entered = seat === undefined ? [] : [seat.joint.a, seat.joint.b].flatMap(({ piece, pointId }) => piece.part.figure(`points/${pointId}/playMm`)?.value ?? []);
  return entered.length > 0 ? entered.reduce((sum, one) => sum + one, 0) : asking.assume(hold.seatPlayMm).value;
}
