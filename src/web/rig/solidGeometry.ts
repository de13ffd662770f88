import { BoxGeometry, type BufferGeometry, CylinderGeometry, LatheGeometry, Vector2 } from 'three';
import type { Solid } from '../../shoot/schema/mechanics.ts';

const SIDES = 48;

/** The shape of a solid about its own middle, lengths in mm. */
export function solidGeometry(solid: Solid): BufferGeometry {
  if (solid.shape === 'box') return new BoxGeometry(...solid.sizeMm);
  const round = solid.shape === 'cylinder' ? new CylinderGeometry(solid.diameterMm / 2, solid.diameterMm / 2, solid.lengthMm, SIDES) : tube(solid.boreMm / 2, solid.diameterMm / 2, solid.lengthMm);
  if (solid.along === 'x') round.rotateZ(-Math.PI / 2);
  if (solid.along === 'z') round.rotateX(Math.PI / 2);
  return round;
}

function tube(inner: number, outer: number, length: number): BufferGeometry {
  const half = length / 2;
  const profile = [[inner, -half], [outer, -half], [outer, half], [inner, half], [inner, -half]] as const;
  return new LatheGeometry(profile.map(([x, y]) => new Vector2(x, y)), SIDES);
}
