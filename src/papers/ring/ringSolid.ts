import type { XY } from '../ink/path.ts';
import type { SolidsMaker } from '../paper.ts';

/** A ring that makes up the difference between a barrel and what clamps it. */
export interface RingWanted {
  /** `spacer`: slit through, squeezed by the clamp around it. `clamp`: with two lugs and a screw of its own. */
  readonly kind: 'spacer' | 'clamp';
  readonly innerMm: number;
  readonly outerMm: number;
  readonly widthMm: number;
  readonly slitMm: number;
  /** How much wider than the barrel and narrower than the clamp it is made, on the diameter. */
  readonly clearanceMm: number;
}

/** Letters to cut into the outside of a ring: outlines lying flat, mm, the baseline at y = 0, each with its place along the line. */
export interface RingLetter {
  readonly atMm: number;
  readonly outlines: readonly (readonly XY[])[];
}

/** Triangles of a closed solid, mm. */
export interface RingMesh {
  readonly vertices: readonly (readonly [number, number, number])[];
  readonly triangles: readonly (readonly [number, number, number])[];
  readonly volumeMm3: number;
}

/** Facets of the circle: at 110 mm across a facet is a hundredth of a millimetre off the round. */
export const FACETS = 256;
const SCREW_MM = 4.3; // clearance for M4, medium fit (ISO 273)
/** Deep enough to read and to feel, shallow enough for a thin wall. */
export const ENGRAVED_MM = 0.4;
const LUG = { longMm: 12, thickMm: 8 } as const;

/** Why a ring cannot be made, or nothing. */
export function ringFault({ innerMm, outerMm, widthMm, slitMm, clearanceMm, kind }: RingWanted): string | undefined {
  const wall = (outerMm - innerMm) / 2 - clearanceMm;
  if (![innerMm, outerMm, widthMm, slitMm, clearanceMm].every((value) => Number.isFinite(value) && value >= 0) || innerMm === 0 || widthMm === 0) return 'Every length must be a number above nought.';
  if (wall < 0.8) return `The wall would be ${wall.toFixed(2)} mm; below 0.8 mm it does not print soundly.`;
  if (outerMm > 400 || widthMm > 400) return 'Above 400 mm it fits no common printer.';
  if (slitMm >= innerMm / 2) return 'The slit is wider than half the bore.';
  return kind === 'clamp' && widthMm < SCREW_MM + 4 ? `For an M4 screw the ring must be at least ${SCREW_MM + 4} mm wide.` : undefined;
}

/** The ring as a closed solid: axis along z, standing on z = 0, slit towards +x. */
export function ringSolid({ Manifold, CrossSection }: SolidsMaker, wanted: RingWanted, letters: readonly RingLetter[] = []): RingMesh {
  const fault = ringFault(wanted);
  if (fault !== undefined) throw new Error(fault);
  const { kind, innerMm, outerMm, widthMm, slitMm, clearanceMm } = wanted;
  const [inner, outer] = [(innerMm + clearanceMm) / 2, (outerMm - clearanceMm) / 2];
  const kept: { delete: () => void }[] = [];
  const keep = <T extends { delete: () => void }>(made: T): T => {
    kept.push(made);
    return made;
  };
  try {
    let body = keep(Manifold.cylinder(widthMm, outer, outer, FACETS));
    if (kind === 'clamp') {
      const lugs = keep(keep(Manifold.cube([LUG.longMm + outer - inner, 2 * LUG.thickMm + slitMm, widthMm])).translate([inner, -(LUG.thickMm + slitMm / 2), 0]));
      body = keep(body.add(lugs));
    }
    const bore = keep(keep(Manifold.cylinder(widthMm + 2, inner, inner, FACETS)).translate([0, 0, -1]));
    body = keep(body.subtract(bore));
    if (slitMm > 0) {
      const slit = keep(keep(Manifold.cube([outer + LUG.longMm + 2, slitMm, widthMm + 2])).translate([0, -slitMm / 2, -1]));
      body = keep(body.subtract(slit));
    }
    if (kind === 'clamp') {
      const long = 2 * LUG.thickMm + slitMm + 2;
      const hole = keep(keep(keep(Manifold.cylinder(long, SCREW_MM / 2, SCREW_MM / 2, 48)).rotate([90, 0, 0])).translate([outer + LUG.longMm / 2, long / 2, widthMm / 2]));
      body = keep(body.subtract(hole));
    }
    for (const { atMm, outlines } of letters) {
      // Stood up against the outside, facing away from the axis, then turned to its place.
      const flat = keep(new CrossSection(outlines.map((corners) => corners.map(({ x, y }): [number, number] => [x, y])), 'NonZero'));
      const block = keep(keep(keep(flat.extrude(ENGRAVED_MM + 1)).rotate([90, 0, 0])).translate([0, -(outer - ENGRAVED_MM), 0]));
      body = keep(body.subtract(keep(block.rotate([0, 0, (atMm / outer) * (180 / Math.PI) - 90]))));
    }
    const { numProp, vertProperties, triVerts } = body.getMesh();
    const at = (index: number): [number, number, number] => [vertProperties[index * numProp] ?? 0, vertProperties[index * numProp + 1] ?? 0, vertProperties[index * numProp + 2] ?? 0];
    return {
      vertices: Array.from({ length: vertProperties.length / numProp }, (_, index) => at(index)),
      triangles: Array.from({ length: triVerts.length / 3 }, (_, index) => [triVerts[index * 3] ?? 0, triVerts[index * 3 + 1] ?? 0, triVerts[index * 3 + 2] ?? 0] as const),
      volumeMm3: body.volume(),
    };
  } finally {
    for (const made of kept) made.delete();
  }
}
