/** Inputs that are places, directions and tensors in space. */
import * as z from 'zod';
import type { Unit } from '../../units/Unit.ts';

const triple = z.tuple([z.number(), z.number(), z.number()]);
const tensor = z.tuple([triple, triple, triple]);
const diagonal = ([x, y, z]: [number, number, number]): z.output<typeof tensor> => [[x, 0, 0], [0, y, 0], [0, 0, z]];

/** A place or a vector: x to camera left, y up, z towards the subject. */
export const inSpace = (unit: Unit, meaning: string) => triple.meta({ unit, description: meaning });
/** Three sizes, each more than zero. */
export const sizesInSpace = (unit: Unit, meaning: string) => z.tuple(
  [z.number().positive(), z.number().positive(), z.number().positive()],
).meta({ unit, description: meaning });
/** An inertia tensor as three rows, products negative; or its diagonal alone. */
export const inertia = (meaning: string) => z.union([tensor, triple.transform(diagonal)]).meta({ unit: 'kg·m²', description: meaning });
/** Three unit vectors. */
export const axesInSpace = (meaning: string) => tensor.meta({ unit: '', description: meaning });
