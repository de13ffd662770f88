import { rigModes } from '../../assembly/hold/rigModes.ts';
import { type RigNetwork, type Variation, rigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { type Vector, add, dot, length, scale, subtract } from '../../assembly/placing/Transform.ts';
import { convexParts, worldSolids } from '../../assembly/space/worldSolids.ts';
import { type RollingShutterWobble, rollingShutterWobble } from '../../calc/mechanics/rollingShutterWobble.ts';
import type { Motion } from '../../calc/mechanics/network/Motion.ts';
import type { Mode } from '../../calc/mechanics/network/modes.ts';
import type { NetworkLoad } from '../../calc/mechanics/network/model.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type CarriedBy, drivenFromGlass } from './drivenFromGlass.ts';
import { recording } from './recording.ts';
import { ringTorque } from './ringTorque.ts';
import { sightLine } from './sightLine.ts';
import { temperatureAt } from './temperatureAt.ts';
import { toothPushes } from './toothForce.ts';

/** The swing that bends the picture most after the drive reverses, and what a sensor read line by line makes of it. */
export interface PictureShake {
  readonly mode: Mode;
  readonly frequencyHz: number;
  /** What sets it off, as a clause: "the motor reverses". */
  readonly by: string;
  /** Swing of the picture to either side, recorded pixels. */
  readonly amplitudePx: number;
  readonly seen: RollingShutterWobble;
}

/** A force that changes at once, and leaves the rig swinging. */
interface Touch {
  readonly by: string;
  readonly loads: readonly NetworkLoad[];
}

interface Sensor {
  readonly readoutMs: number;
  readonly exposureMs: number;
  readonly frameRateHz: number;
}

/** `undefined` where nothing drives a ring, too little is placed, or something is held by nothing. */
export function pictureShake(asking: Asking, subject: SetupGlass, { readoutMs, ...tried }: { readonly readoutMs: number; readonly variation?: Variation; readonly carriedBy?: CarriedBy }): PictureShake | undefined {
  const { setup, glass } = subject;
  const [push] = toothPushes(asking.ledger, setup, glass);
  const variation = tried.variation ?? (push === undefined ? undefined : drivenFromGlass(asking.ledger, subject, push, tried.carriedBy ?? 'as built'));
  const rig = rigNetwork(asking.ledger, setup, glass, variation);
  if (rig === undefined) return undefined;
  const touches = reversals(asking, subject, rig);
  const modes = touches.length === 0 ? [] : rigModes(asking.ledger, setup, glass, variation);
  if (modes.length === 0) return undefined;
  const sight = sightLine(asking, subject, rig);
  const shot = recording(asking, subject);
  const pixelsOf = (shape: Motion) => (Math.hypot(sight(shape).across, sight(shape).up) * shot.heightPx) / shot.sensorHeight.value;
  const reversalS = asking.assume(hold.reversalMs).value / 1000;
  const frameRateHz = asking.ledger.at(`setups/${setup}/frameRateHz`) as number;
  const sensor: Sensor = { readoutMs, frameRateHz, exposureMs: (1000 * asking.assume(hold.shutterDeg).value) / (360 * frameRateHz) };
  const all = modes.flatMap((mode) => touches.map((touch) => shaken(mode, touch, pixelsOf(mode.shape) * suddenness(mode.frequencyHz, reversalS), sensor)));
  return all.reduce((worst, one) => (one.seen.bendPx > worst.seen.bendPx ? one : worst));
}

/** Of the swing that a sudden step leaves, how much one leaves at most that takes so long: |sin(π·f·t)|/(π·f·t), without its zeros. */
const suddenness = (frequencyHz: number, stepS: number): number => Math.min(1, 1 / (Math.PI * frequencyHz * stepS));

/** What a step of force leaves in a mode of unit modal mass: a swing of φ·F/ω² to either side. */
function shaken(mode: Mode, { by, loads }: Touch, pixels: number, { readoutMs, exposureMs, frameRateHz }: Sensor): PictureShake {
  const { frequencyHz, shape } = mode;
  const work = loads.reduce((sum, { body, forceN = [0, 0, 0], atMm = [0, 0, 0] }) => sum + dot(forceN, scale(shape.shiftAt(body, atMm), 1e-3)), 0);
  const amplitudePx = (pixels * Math.abs(work)) / (2 * Math.PI * frequencyHz) ** 2;
  return { mode, frequencyHz, by, amplitudePx, seen: rollingShutterWobble({ amplitudePx, frequencyHz, readoutMs, exposureMs, frameRateHz }) };
}

/** A drive that reverses: the push of its teeth changes sides, and with a wheel on rods the push of the hand. */
function reversals(asking: Asking, subject: SetupGlass, { bodyOf }: RigNetwork): Touch[] {
  return toothPushes(asking.ledger, subject.setup, subject.glass).filter(({ mesh }) => mesh.meets).flatMap((push): Touch[] => {
    const { ring, driver, at, along, ringRadiusM, driverRadiusM } = push;
    const forceN = (2 * ringTorque(asking, ring.piece, temperatureAt(asking, subject)).value) / ringRadiusM;
    const teeth: NetworkLoad[] = [{ body: bodyOf(ring.ref), forceN: scale(along, forceN), atMm: at }, { body: bodyOf(driver.ref), forceN: scale(along, -forceN), atMm: at }];
    const wheelMm = driver.piece.part.figure('handWheel/diameterMm')?.value;
    if (driver.piece.part.has('motor') || wheelMm === undefined) return [{ by: `${driver.piece.name} reverses`, loads: teeth }];
    const handN = (forceN * driverRadiusM * (driver.piece.part.figure('handWheel/ratio')?.value ?? 1)) / (wheelMm / 2000);
    const rim = outermost(asking, subject, driver.ref) ?? at;
    return WAYS.map((way) => ({ by: `a hand reverses ${driver.piece.name}`, loads: [...teeth, { body: bodyOf(driver.ref), forceN: scale(way, handN), atMm: rim }] }));
  });
}

/** The hand may push across, up or along; the worst counts. */
const WAYS: readonly Vector[] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]].flatMap(([x = 0, y = 0, z = 0]): Vector[] => [[x, y, z], [-x, -y, -z]]);

/** The corner of a piece furthest from its middle: the rim of a wheel, near enough. */
function outermost({ ledger }: Asking, { setup, glass }: SetupGlass, ref: string): Vector | undefined {
  const corners = worldSolids(ledger, setup, glass).filter(({ piece }) => piece.ref === ref).flatMap((solid) => convexParts(solid).flat());
  const middle = scale(corners.reduce<Vector>(add, [0, 0, 0]), 1 / Math.max(1, corners.length));
  return corners.reduce<Vector | undefined>((most, corner) => (most === undefined || length(subtract(corner, middle)) > length(subtract(most, middle)) ? corner : most), undefined);
}
