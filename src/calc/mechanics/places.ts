/** Inputs that are places, directions and tensors in space. */
import * as z from 'zod';
import type { Unit } from '../../units/Unit.ts';

const triple = z.tuple([z.number(), z.number(), z.number()]);

/** A place or a vector: x to camera left, y up, z towards the subject. */
export const inSpace = (unit: Unit, meaning: string) => triple.meta({ unit, description: meaning });
/** Three sizes, each more than zero. */
export const sizesInSpace = (unit: Unit, meaning: string) => z.tuple([z.number().positive(), z.number().positive(), z.number().positive()]).meta({ unit, description: meaning });
/** An inertia tensor as three rows, products negative; or its diagonal alone. */
export const inertia = (meaning: string) =>
  z.union([z.tuple([triple, triple, triple]), triple])
    .transform(([x, y, z]): [[number, number, number], [number, number, number], [number, number, number]] =>
      typeof x === 'number' ? [[x, 0, 0], [0, y as number, 0], [0, 0, z as number]] : [x, y as [number, number, number], z as [number, number, number]])
    .meta({ unit: 'kg·m²', description: meaning });
/** Three unit vectors. */
export const axesInSpace = (meaning: string) => z.tuple([triple, triple, triple]).meta({ unit: '', description: meaning });
