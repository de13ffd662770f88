import { Matrix4, type Object3D, Quaternion, Vector3 } from 'three';
import type { Transform } from '../../assembly/placing/Transform.ts';

const MOVE_MS = 180;

/** A way that an object is on, from where it was to where it goes. */
export interface Way {
  readonly from: { readonly position: Vector3; readonly turn: Quaternion };
  readonly to: { readonly position: Vector3; readonly turn: Quaternion };
  readonly start: number;
}

/** Puts an object at a place, or on its way there. */
export function aim(object: Object3D, { r, t }: Transform, glide: boolean): void {
  const matrix = new Matrix4().set(r[0], r[1], r[2], t[0], r[3], r[4], r[5], t[1], r[6], r[7], r[8], t[2], 0, 0, 0, 1);
  const position = new Vector3();
  const turn = new Quaternion();
  matrix.decompose(position, turn, new Vector3());
  if (!glide || (position.distanceToSquared(object.position) < 1e-6 && turn.angleTo(object.quaternion) < 1e-4)) {
    delete object.userData['way'];
    object.position.copy(position);
    object.quaternion.copy(turn);
    return;
  }
  object.userData['way'] = { from: { position: object.position.clone(), turn: object.quaternion.clone() }, to: { position, turn }, start: performance.now() } satisfies Way;
}

/** Moves an object that is on its way; says whether it still is. */
export function step(object: Object3D, time: number): boolean {
  const way = object.userData['way'] as Way | undefined;
  if (way === undefined) return false;
  const share = Math.min(1, Math.max(0, (time - way.start) / MOVE_MS));
  const eased = 1 - (1 - share) ** 3;
  object.position.lerpVectors(way.from.position, way.to.position, eased);
  object.quaternion.slerpQuaternions(way.from.turn, way.to.turn, eased);
  if (share === 1) delete object.userData['way'];
  return share < 1;
}
