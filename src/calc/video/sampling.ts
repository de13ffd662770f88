import * as z from 'zod';
import { oneOf } from '../inputs.ts';

const SAMPLINGS = ['4:2:2', '4:4:4', '4:2:0'] as const;
export type Sampling = (typeof SAMPLINGS)[number];

const BIT_DEPTHS = [8, 10, 12] as const;
export type BitDepth = (typeof BIT_DEPTHS)[number];

export const samplingInput = oneOf(SAMPLINGS, 'how colour is sampled');
export const bitDepthInput = z.literal(BIT_DEPTHS).meta({ unit: 'bit', description: 'bits a sample: 8, 10 or 12' });

/** Samples a pixel needs: one of luma, and two, one or a half of colour. */
export const SAMPLES_PER_PIXEL: Readonly<Record<Sampling, number>> = { '4:4:4': 3, '4:2:2': 2, '4:2:0': 1.5 };
