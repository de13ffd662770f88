import * as z from 'zod';

/** A half angle of view, from 0 to less than 90 degrees. */
export const halfAngle = (meaning: string) => z.number().min(0).lt(90).meta({ unit: 'deg', description: meaning });

/** Its tangent: what a ray at that angle gains aside for each step forward. */
export const tangentOf = (angleDeg: number): number => Math.tan((angleDeg * Math.PI) / 180);
