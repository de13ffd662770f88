/** A beam as it crosses an opening: squeezed, so an ellipse, and off the middle. */
export interface Ellipse {
  readonly halfWidthMm: number;
  readonly halfHeightMm: number;
  readonly xMm: number;
  readonly yMm: number;
}

const STRIPS = 4000;

/** Share of an ellipse inside a circle about the origin: level strips, evenly spaced in the angle that draws the ellipse. */
export function ellipseInCircle({ halfWidthMm, halfHeightMm, xMm, yMm }: Ellipse, radiusMm: number): number {
  // The box around it lies wholly inside, or wholly outside: no need to sum.
  if (Math.hypot(Math.abs(xMm) + halfWidthMm, Math.abs(yMm) + halfHeightMm) <= radiusMm) return 1;
  if (Math.hypot(Math.max(0, Math.abs(xMm) - halfWidthMm), Math.max(0, Math.abs(yMm) - halfHeightMm)) >= radiusMm) return 0;
  let inside = 0;
  let whole = 0;
  for (let strip = 0; strip < STRIPS; strip += 1) {
    const angle = ((strip + 0.5) / STRIPS - 0.5) * Math.PI;
    const weight = Math.cos(angle);
    const half = halfWidthMm * weight;
    const y = yMm + halfHeightMm * Math.sin(angle);
    const chord = Math.abs(y) < radiusMm ? Math.sqrt(radiusMm * radiusMm - y * y) : 0;
    inside += weight * Math.max(0, Math.min(xMm + half, chord) - Math.max(xMm - half, -chord));
    whole += weight * 2 * half;
  }
  return Math.min(1, inside / whole);
}
