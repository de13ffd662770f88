import * as z from 'zod';
import { between, positive } from '../inputs.ts';

/** Points of a curve of voltage at rest over state of charge. */
export const curveInput = z
  .array(z.tuple([between(0, 1, 'share', 'state of charge'), positive('V', 'voltage at rest')]).readonly())
  .min(2)
  .readonly()
  .meta({ unit: 'V', description: 'state of charge and voltage at rest, pairs in any order, from charge 0 to 1' });
