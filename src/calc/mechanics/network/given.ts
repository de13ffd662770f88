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

/** A key that may be left out, and still says what it is. */
const maybe = <T extends z.ZodType>(kind: T) => kind.optional().meta({ ...kind.meta() });

const body = z.strictObject({
  name: text('name, one of a kind'),
  massG: maybe(nonNegative('g', 'mass; 0 is legal. A fixed body needs none')),
  centreMm: inSpace('mm', 'centre of mass'),
  inertiaKgM2: maybe(inertia('inertia about its own centre, three rows, products negative; or the diagonal. A fixed body needs none')),
  fixed: maybe(flag('held still')),
});

const spring = z.strictObject({
  a: text('name of one body'),
  b: text('name of the other'),
  atMm: inSpace('mm', 'where they meet'),
  axes: maybe(axesInSpace('its own x, y and z as unit vectors; absent: the common axes')),
  stiffness: z.strictObject({
    xNPerMm: force('against shift along x; absent: none. Infinity (null) in all six makes the two one body'),
    yNPerMm: force('against shift along y'),
    zNPerMm: force('against shift along z'),
    xNmPerRad: moment('against turning about x'),
    yNmPerRad: moment('against turning about y'),
    zNmPerRad: moment('against turning about z'),
  }).meta({ unit: '', description: 'stiffness in six ways' }),
});

const beam = z.strictObject({
  a: text('name of one body'),
  b: text('name of the other'),
  fromMm: inSpace('mm', 'where it leaves a'),
  toMm: inSpace('mm', 'where it reaches b'),
  youngGPa: positive('GPa', 'modulus against stretch'),
  shearGPa: positive('GPa', 'modulus against shear'),
  outerMm: maybe(positive('mm', 'of a round bar: outer diameter; otherwise the four of its section')),
  innerMm: maybe(nonNegative('mm', 'of a round bar: bore; 0 or absent: solid')),
  areaMm2: maybe(positive('mm²', 'area of the section')),
  iyMm4: maybe(positive('mm⁴', 'second moment that resists bending in local x–z')),
  izMm4: maybe(positive('mm⁴', 'second moment that resists bending in local x–y')),
  jMm4: maybe(positive('mm⁴', 'torsion constant')),
  localY: maybe(inSpace('ratio', 'a direction in the plane of its local x and y; a round bar needs none')),
  shearAreaMm2: maybe(positive('mm²', 'area that resists shear, for a bar not much longer than thick; absent: bending alone')),
});
const SECTION_KEYS = ['areaMm2', 'iyMm4', 'izMm4', 'jMm4'] as const;

const load = z.strictObject({
  body: text('name of the body it acts on'),
  forceN: maybe(inSpace('N', 'force')),
  momentNm: maybe(inSpace('N·m', 'moment')),
  atMm: maybe(inSpace('mm', 'where the force acts; absent: at the centre of the body')),
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

/** A round bar by its diameters, or any section by its four values; not both. */
function beamOf(given: z.output<typeof beam>, index: number): NetworkBeam {
  const { outerMm, innerMm, areaMm2, iyMm4, izMm4, jMm4, ...rest } = given;
  const stated = SECTION_KEYS.filter((key) => given[key] !== undefined);
  if (outerMm !== undefined || innerMm !== undefined) {
    if (stated.length > 0) throw new NoAnswer(`beams/${index}/${stated[0]}`, 'Found diameters and a section beside them. Give one or the other.');
    return { ...rest, ...roundBeam(outerMm, innerMm ?? 0, `beams/${index}`) };
  }
  if (areaMm2 === undefined || iyMm4 === undefined || izMm4 === undefined || jMm4 === undefined) {
    const missing = SECTION_KEYS.find((key) => given[key] === undefined)!;
    const path = stated.length === 0 ? `beams/${index}/outerMm` : `beams/${index}/${missing}`;
    throw new NoAnswer(path, `This is missing. A beam has an outerMm, or all of ${SECTION_KEYS.join(', ')}.`);
  }
  return { ...rest, areaMm2, iyMm4, izMm4, jMm4 };
}

function roundBeam(outerMm: number | undefined, innerMm: number, path: string) {
  if (outerMm === undefined) throw new NoAnswer(`${path}/outerMm`, 'This is missing; a bore needs a bar round it.');
  if (innerMm >= outerMm) throw new NoAnswer(`${path}/innerMm`, `Found a bore of ${innerMm} mm in a bar of ${outerMm} mm; it must be less.`);
  const { areaMm2, bendingMm4, twistMm4 } = roundSection(outerMm, innerMm);
  return { areaMm2, iyMm4: bendingMm4, izMm4: bendingMm4, jMm4: twistMm4 };
}
