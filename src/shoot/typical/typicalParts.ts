import type { Part } from '../schema/part.ts';
import { bodies } from './bodies.ts';
import { cables } from './cables.ts';
import { fitted } from './fittings/fittings.ts';
import { focusGear } from './focusGear.ts';
import { frontOptics } from './frontOptics.ts';
import { hardware } from './hardware.ts';
import { lenses } from './lenses.ts';
import { links } from './links.ts';
import { monitors } from './monitors.ts';
import { power } from './power.ts';
import type { TypicalRoom } from './typicalPart.ts';

/** Every generic class by its id. Common practice: what such things usually have; estimates, to be replaced by figures. */
export const typicalParts: TypicalRoom = Object.fromEntries(
  Object.entries({ ...bodies, ...lenses, ...frontOptics, ...focusGear, ...monitors, ...links, ...power, ...cables, ...hardware }).map(([id, part]) => [id, fitted(id, part)]),
);

/** A part of a class, ready for a kit: its figures are marked typical. */
export function typicalPart(id: string): Part | undefined {
  const found = Object.hasOwn(typicalParts, id) ? typicalParts[id] : undefined;
  return found === undefined ? undefined : { ...found, typical: id, basis: 'typical' };
}
