import { meanTurn } from '../../assembly/hold/meanTurn.ts';
import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { heldFast } from '../../assembly/hold/underWeight.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { scale } from '../../assembly/placing/Transform.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Motion } from '../../calc/mechanics/network/Motion.ts';
import { imageShift } from '../../calc/mechanics/imageShift.ts';
import { squeezeSkew } from '../../calc/optics/squeezeSkew.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type CarriedBy, drivenFromGlass } from './drivenFromGlass.ts';
import { recording } from './recording.ts';
import { ringTorque } from './ringTorque.ts';
import { sightLine } from './sightLine.ts';
import { lensOf } from './squeezeOf.ts';
import { temperatureAt } from './temperatureAt.ts';
import { type ToothPush, toothPushes } from './toothForce.ts';

/** What the picture does when the drive of the focus ring reverses. Pixels are recorded ones. */
export interface ImageJump {
  readonly push: ToothPush;
  readonly forceN: number;
  /** Of the taking lens across its axis. */
  readonly lensShiftMm: number;
  /** What each would move the picture by itself: the lens, the block to its side, the camera as a whole, the free play of the seat. */
  readonly lensPx: number;
  readonly yawPx: number;
  readonly framePx: number;
  readonly playPx: number;
  readonly rollDeg: number;
  readonly leanDeg: number;
  readonly rollCornerPx: number;
  /** All together, each with its sense. */
  readonly centrePx: number;
  readonly cornerPx: number;
}

/** Of all drives whose gear meets that of a ring, the one that moves the picture most; `undefined` where there is none. */
export function imageJump(asking: Asking, subject: SetupGlass, carriedBy: CarriedBy = 'as built'): ImageJump | undefined {
  return asking.ledger.cell(`image jump|${subject.setup}|${subject.glass}|${carriedBy}`, () => {
    const all = toothPushes(asking.ledger, subject.setup, subject.glass).flatMap((push) => (push.mesh.meets ? (jumpBy(asking, subject, push, carriedBy) ?? []) : []));
    return all.reduce<ImageJump | undefined>((worst, one) => (worst === undefined || one.cornerPx > worst.cornerPx ? one : worst), undefined);
  });
}

function jumpBy(asking: Asking, subject: SetupGlass, push: ToothPush, carriedBy: CarriedBy): ImageJump | undefined {
  const path = opticalPath(asking.ledger, subject.setup, subject.glass);
  const rig = heldFast(asking.ledger, subject.setup, subject.glass, drivenFromGlass(asking.ledger, subject, push, carriedBy));
  if (rig === undefined || path.body === undefined || rig.network.freeMotions.length > 0) return undefined;
  const forceN = ringTorque(asking, push.ring.piece, temperatureAt(asking, subject)).value / push.ringRadiusM;
  return { push, forceN, ...pixels(asking, subject, reversed(rig, push, forceN), { body: path.body, lens: lensOf(path, subject.glass), block: path.block }, rig) };
}

/** The friction of the ring passes the push on to the barrel, so that it acts where the teeth meet; its reaction on the driver. From one side to the other: twice. */
function reversed({ network, bodyOf }: RigNetwork, { ring, driver, at, along }: ToothPush, forceN: number): Motion {
  return network.solve([
    { body: bodyOf(ring.ref), forceN: scale(along, 2 * forceN), atMm: at },
    { body: bodyOf(driver.ref), forceN: scale(along, -2 * forceN), atMm: at },
  ]).motion;
}

interface Glass {
  readonly body: SetupPiece;
  readonly lens: SetupPiece;
  readonly block: SetupPiece | undefined;
}

/** A head or a mount keeps the picture's own level; a shoulder and hands do not in the time of a reversal, so that the rig turns about itself. */
function pixels(asking: Asking, subject: SetupGlass, motion: Motion, { body, lens, block }: Glass, rig: RigNetwork): Omit<ImageJump, 'push' | 'forceN'> {
  const shot = recording(asking, subject);
  const pixelPitchMm = shot.sensorHeight.value / shot.heightPx;
  // Far subjects: a near one jumps further by its magnification, a twentieth at most.
  const px = (mm: number) => imageShift({ magnification: 0, shiftMm: still(mm), pixelPitchMm }).shiftPx;
  const firm = rig.stands.contacts.some(({ type }) => type.name !== 'shoulder' && type.name !== 'hands');
  const sight = sightLine(asking, subject, rig)(motion, firm ? undefined : meanTurn(rig, motion));
  const rollDeg = block === undefined ? 0 : still(motion.relative({ of: rig.bodyOf(block.ref), to: rig.bodyOf(body.ref), atMm: [0, 0, 0] }).turnDeg[2]);
  const squeeze = block === undefined ? 1 : asking.figure(block.part, 'block/squeeze').value;
  const skew = squeezeSkew({ squeeze, rotationDeg: clampDeg(rollDeg), widthPx: shot.widthPx * squeeze, heightPx: shot.heightPx });
  const lensShiftMm = Math.hypot(...sight.lens);
  const playPx = px(seatPlay(asking, subject, lens));
  const centrePx = px(Math.hypot(sight.across, sight.up)) + playPx;
  return {
    lensShiftMm: still(lensShiftMm), lensPx: px(lensShiftMm), yawPx: px(Math.abs(sight.block)), framePx: px(Math.hypot(...sight.frame)), playPx, rollDeg: Math.abs(rollDeg), leanDeg: Math.abs(skew.verticalLeanDeg),
    rollCornerPx: skew.cornerShiftPx, centrePx, cornerPx: centrePx + skew.cornerShiftPx,
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
