import * as z from 'zod';
import { NoAnswer } from '../../calculator.ts';
import { flag, inputs, nonNegative, orInfinity, positive, text } from '../../inputs.ts';
import { axesInSpace, inSpace, inertia } from '../places.ts';
import { roundSection } from '../roundSection.ts';
import { Network } from './Network.ts';
import { freeMotionText } from './freeMotion.ts';
import type { NetworkBeam } from './model.ts';

const force = (meaning: string) => orInfinity(nonNegative('N/mm', meaning)).default(0).meta({ unit: 'N/mm', description: meaning });
const moment = (meaning: string) => orInfinity(nonNegative('N·m/rad', meaning)).default(0).meta({ unit: 'N·m/rad', description: meaning });

const body = z.strictObject({
  name: text('name, one of a kind'),
  massG: nonNegative('g', 'mass; 0 is legal. A fixed body needs none').optional(),
  centreMm: inSpace('mm', 'centre of mass'),
  inertiaKgM2: inertia('inertia about its own centre, three rows, products negative; or the diagonal. A fixed body needs none').optional(),
  fixed: flag('held still').optional(),
});

const spring = z.strictObject({
  a: text('name of one body'),
  b: text('name of the other'),
  atMm: inSpace('mm', 'where they meet'),
  axes: axesInSpace('its own x, y and z as unit vectors; absent: the common axes').optional(),
  stiffness: z.strictObject({
    xNPerMm: force('against shift along x; absent: none. Infinity (null) in all six makes the two one body'),
    yNPerMm: force('against shift along y'),
    zNPerMm: force('against shift along z'),
    xNmPerRad: moment('against turning about x'),
    yNmPerRad: moment('against turning about y'),
    zNmPerRad: moment('against turning about z'),
  }).meta({ unit: '', description: 'stiffness in six ways' }),
});

const beamEnds = {
  a: text('name of one body'),
  b: text('name of the other'),
  fromMm: inSpace('mm', 'where it leaves a'),
  toMm: inSpace('mm', 'where it reaches b'),
  youngGPa: positive('GPa', 'modulus against stretch'),
  shearGPa: positive('GPa', 'modulus against shear'),
};
const shear = { shearAreaMm2: positive('mm²', 'area that resists shear, for a bar not much longer than thick; absent: bending alone').optional() };
const localY = inSpace('ratio', 'a direction in the plane of its local x and y');

const beam = z.union([
  z.strictObject(
    {
      ...beamEnds, outerMm: positive('mm', 'outer diameter'),
      innerMm: nonNegative('mm', 'bore').default(0).meta({ unit: 'mm', description: 'bore; 0 or absent: solid' }), ...shear,
      localY: localY.optional(),
    },
  ),
  z.strictObject({
    ...beamEnds,
    areaMm2: positive('mm²', 'area of the section'),
    iyMm4: positive('mm⁴', 'second moment that resists bending in local x–z'),
    izMm4: positive('mm⁴', 'second moment that resists bending in local x–y'),
    jMm4: positive('mm⁴', 'torsion constant'),
    ...shear,
    localY: localY.optional(),
  }),
]);

const load = z.strictObject({
  body: text('name of the body it acts on'),
  forceN: inSpace('N', 'force').optional(),
  momentNm: inSpace('N·m', 'moment').optional(),
  atMm: inSpace('mm', 'where the force acts; absent: at the centre of the body').optional(),
});

/** What the calculators of a network take. */
export const networkInputs = inputs({
  bodies: z.array(body).meta({ unit: '', description: 'rigid bodies' }),
  springs: z.array(spring).default([]).meta({ unit: '', description: 'joints that give, each between two bodies' }),
  beams: z.array(beam).default([]).meta({ unit: '', description: 'straight bars built into two bodies; they weigh nothing' }),
  loads: z.array(load).default([]).meta({ unit: '', description: 'forces and moments; nothing else acts, not even gravity' }),
});

/** The network of checked input; a `NoAnswer` that names the bodies where it does not hold together. */
export function heldNetwork({ bodies, springs, beams }: z.output<typeof networkInputs>): Network {
  const network = new Network({ bodies, springs, beams: beams.map(beamOf) });
  if (network.freeMotions.length > 0) throw new NoAnswer('', freeMotionText(network.freeMotions));
  return network;
}

/** A round bar by its diameters, or any section by its moments. */
function beamOf(given: z.output<typeof beam>, index: number): NetworkBeam {
  if ('areaMm2' in given) return given;
  const { outerMm, innerMm, ...rest } = given;
  if (innerMm >= outerMm) throw new NoAnswer(`beams/${index}/innerMm`, `Found a bore of ${innerMm} mm in a bar of ${outerMm} mm; it must be less.`);
  const { areaMm2, bendingMm4, twistMm4 } = roundSection(outerMm, innerMm);
  return { ...rest, areaMm2, iyMm4: bendingMm4, izMm4: bendingMm4, jMm4: twistMm4 };
}
