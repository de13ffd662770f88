import type { Part } from '../../schema/part.ts';
import { type TypicalPart, plain } from '../typicalPart.ts';
import { body, cage } from './camera.ts';
import { followFocus, motor, receiver, rod, rodClamp } from './drives.ts';
import type { Fit } from './fitting.ts';
import { block, focuser, lens, matteBox, mountAdapter } from './glass.ts';
import { battery, batteryPlate } from './packs.ts';
import { monitor, radio } from './screens.ts';
import { arms, collar, gimbal, handles, head, legs, plates, shoulderPad, stand, support } from './supports.ts';

/** By the class, where the classes of a kind differ. */
const OF_CLASS: Readonly<Record<string, Fit>> = { ...plates, ...handles, ...arms, ...legs };

const OF_KIND: Partial<Record<Part['kind'], Fit>> = {
  body, cage, lens, block, focuser, motor, rod, support, collar, head, stand, gimbal, monitor, battery, receiver: radio, transmitter: radio, controller: receiver,
  'mount adapter': mountAdapter, 'matte box': matteBox, 'follow focus': followFocus, 'rod clamp': rodClamp, 'battery plate': batteryPlate, 'shoulder pad': shoulderPad,
};

/** A class with the points it is fixed by and its shape, where such things have usual ones. */
export function fitted(id: string, part: TypicalPart): TypicalPart {
  const fit = Object.hasOwn(OF_CLASS, id) ? OF_CLASS[id] : OF_KIND[part.kind];
  const fitting = fit?.(part);
  return fitting === undefined ? part : plain({ ...part, ...fitting });
}
