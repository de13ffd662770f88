import { onlyPushes } from '../../assembly/mates.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type Vector, apply, inverse, rotate, subtract, transpose } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { describeFigure } from '../describeFigure.ts';
import type { SetupGlass } from '../subjects.ts';
import { focusShift } from './focusShift.ts';
import { listed } from './listed.ts';
import { hangingOn } from './loadSlides.ts';
import { type WholeMass, leftOut, wholeMass } from './wholeMass.ts';

/** A camera in a gimbal. All ways are those of the gimbal's own frame: to camera left, up, ahead. */
export interface GimbalLoad {
  readonly gimbal: SetupPiece;
  readonly whole: WholeMass;
  /** From where the axes meet to the centre of mass, focus at infinity. */
  readonly offMm: Vector;
  /** How far that centre goes as focus runs to close. */
  readonly shiftMm: Vector;
  /** Where the axes meet, in the frame of the build. */
  readonly axesMm: Vector;
  /** All that turns with the camera, weighed or not. */
  readonly turning: ReadonlySet<string>;
  /** From the frame of the build to that of the gimbal. */
  readonly turn: (way: Vector) => Vector;
  readonly notes: readonly string[];
}

/** The gimbal of a setup's camera build, if its purpose is one. */
export function gimbalOf(ledger: Ledger, { setup, glass }: SetupGlass): SetupPiece | undefined {
  const build = ledger.at(`setups/${setup}/camera`) as string;
  if (ledger.at(`builds/${build}/purpose`) !== 'gimbal') return undefined;
  return [...setupPieces(ledger, setup, glass).values()].find((piece) => piece.build === build && piece.part.read('carrier/kind') === 'gimbal');
}

/** A text where it cannot be told, because pieces have no place or no mass; `undefined` where no gimbal is in use. */
export function gimbalLoad(asking: Asking, { setup, glass }: SetupGlass): GimbalLoad | string | undefined {
  return asking.ledger.cell(`gimbal load|${setup}|${glass}`, () => {
    const gimbal = gimbalOf(asking.ledger, { setup, glass });
    if (gimbal === undefined) return undefined;
    const { places, model } = placeSetup(asking.ledger, setup, glass);
    const [stand, body] = [places.get(gimbal.ref), opticalPath(asking.ledger, setup, glass).body];
    if (stand === undefined || body === undefined || !places.has(body.ref)) return `${body?.name ?? 'The camera'} is not joined to ${gimbal.name} yet: without places nothing can be balanced.`;
    const axesAt = gimbal.part.read('carrier/axesAtMm') as Vector | undefined;
    if (axesAt === undefined) throw new NotEntered([describeFigure(gimbal.part, 'carrier/axesAtMm')]);
    const links = [...model.tree, ...model.loops].filter(({ joint: { a, b } }) => !onlyPushes(a.point, b.point)).map(({ joint: { a, b } }) => [a.ref, b.ref] as const);
    const turning = hangingOn(body.ref, links.filter((pair) => !pair.includes(gimbal.ref)));
    const rides = [...places.keys()].filter((ref) => ref.startsWith(`${gimbal.build}/`) && ref !== gimbal.ref && !turning.has(ref)).flatMap((ref) => setupPieces(asking.ledger, setup, glass).get(ref)?.name ?? []);
    const whole = wholeMass(asking, { setup, glass }, gimbal.build, ({ ref }) => ref !== gimbal.ref && (turning.has(ref) || !places.has(ref)));
    if (whole === undefined || whole.massG === 0) return `Nothing on ${gimbal.name} has a mass entered.`;
    const back = transpose(stand.r);
    const turn = (way: Vector): Vector => rotate(back, way);
    return {
      gimbal, whole, turn, turning, axesMm: apply(stand, axesAt), offMm: subtract(apply(inverse(stand), whole.centreMm as Vector), axesAt), shiftMm: turn(focusShift(asking.ledger, { setup, glass }, whole)),
      notes: [...leftOut(whole), ...(rides.length === 0 ? [] : [`Rides on the gimbal itself, and does not turn with the camera: ${listed(rides)}.`])],
    };
  });
}
