import { type MeshResult, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type Vector, IDENTITY, apply, cross, rotate, scale, subtract, unit, add, dot } from '../../assembly/placing/Transform.ts';
import { pointFrame } from '../../assembly/placing/jointFrame.ts';
import type { JointEnd } from '../../assembly/placing/rigJoints.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';

/** How two gears push each other: where their teeth meet, and the directions of the push on the lens's gear. */
export interface ToothPush {
  readonly mesh: MeshResult;
  readonly ring: JointEnd;
  readonly driver: JointEnd;
  readonly at: Vector;
  /** On the ring, for one sense of turning. */
  readonly along: Vector;
  /** On the ring, away from the driver. */
  readonly away: Vector;
  readonly ringRadiusM: number;
  readonly driverRadiusM: number;
  readonly ringTeeth: number;
  readonly driverTeeth: number;
  readonly moduleMm: number;
}

/** Spreading force of a standard tooth, as a share of the tangential one: tan 20°. ISO 53. */
export const SPREADING = Math.tan((20 * Math.PI) / 180);

/** Every mesh of a driver on a lens's gear in a setup, as placed. */
export function toothPushes(ledger: Ledger, setup: string, glass: string): readonly ToothPush[] {
  return ledger.cell(`tooth pushes|${setup}|${glass}`, () => {
    const { meshes, places } = placeSetup(ledger, setup, glass);
    return meshes.flatMap((mesh): ToothPush[] => {
      const { joint, gearA, gearB } = mesh;
      if (gearA === 'none' || gearB === 'none') return [];
      const aIsRing = joint.a.piece.part.has('focus');
      const [ring, driver, ringGear, driverGear] = aIsRing ? [joint.a, joint.b, gearA, gearB] : [joint.b, joint.a, gearB, gearA];
      if (!ring.piece.part.has('focus')) return [];
      const centre = (end: JointEnd) => apply(places.get(end.ref) ?? IDENTITY, pointFrame(end.point)?.t ?? [0, 0, 0]);
      const [from, to] = [centre(ring), centre(driver)];
      const axis = unit(rotate((places.get(ring.ref) ?? IDENTITY).r, ring.point.out ?? [0, 0, 1]), [0, 0, 1]);
      const apart = subtract(to, from);
      const towards = unit(subtract(apart, scale(axis, dot(apart, axis))), [0, -1, 0]);
      const ringRadiusM = (ringGear.module * ringGear.teeth) / 2000;
      return [{
        mesh, ring, driver, at: add(add(from, scale(axis, dot(apart, axis) / 2)), scale(towards, ringRadiusM * 1000)), along: cross(axis, towards), away: scale(towards, -1), ringRadiusM,
        driverRadiusM: (driverGear.module * driverGear.teeth) / 2000, ringTeeth: ringGear.teeth, driverTeeth: driverGear.teeth, moduleMm: ringGear.module,
      }];
    });
  });
}
