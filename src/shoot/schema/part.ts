/** One kind of thing in the kit. What it can do stands in facets, so that one part may be several things at once. */
import * as z from 'zod';
import { basis, figure, id, mapOf, name, note, place } from './basics.ts';
import { electricalFacets, port } from './electrics.ts';
import { mechanicalFacets, shape } from './mechanics.ts';
import { opticalFacets } from './optics.ts';

/** What people call it: a word for grouping, no more. What a part can do is read from its facets. */
export const KINDS = [
  'body', 'lens', 'block', 'focuser', 'close-up', 'filter', 'matte box', 'mount adapter', 'motor', 'hand unit', 'follow focus', 'controller', 'monitor', 'finder', 'transmitter', 'receiver',
  'converter', 'battery', 'battery plate', 'charger', 'regulator', 'splitter', 'cable', 'cage', 'plate', 'rod', 'rod clamp', 'arm', 'handle', 'support', 'collar', 'head', 'legs', 'stand',
  'shoulder pad', 'gimbal', 'media', 'sound', 'other',
] as const;

export const facets = { ...opticalFacets, ...electricalFacets, ...mechanicalFacets };

export const part = z.strictObject({
  name,
  kind: z.enum(KINDS),
  count: z.int().min(0).optional().meta({ description: 'how many there are; 1 where not stated' }),
  typical: z.string().max(64).optional().meta({ description: 'the typical class its figures come from; in a table it fills what the row leaves empty, plugs and sockets too' }),
  basis: basis.optional().meta({ description: 'where its bare figures come from; the sheet where not stated' }),
  note: note.optional(),
  massG: figure.positive('mass').optional(),
  centreMm: place.optional(),
  lengthMm: figure.positive('length along the axis').optional(),
  ports: mapOf(port).optional(),
  ...shape,
  ...z.strictObject(facets).partial().shape,
});
export type Part = z.infer<typeof part>;
export type FacetName = keyof typeof facets;

/** A named single one of a part, with figures of its own. */
export const copy = z.strictObject({
  of: id.meta({ description: 'the part it is one of' }),
  name: name.optional(),
  serial: z.string().max(100).optional(),
  own: z.enum(['owned', 'rented', 'borrowed']).optional(),
  from: name.optional().meta({ description: 'who it is rented or borrowed from' }),
  note: note.optional(),
  /** Figures that override the part's, by their path in the part: `focus/ringTorqueNm`. */
  figures: z.record(z.string().max(200), z.unknown()).optional(),
});

export const kit = z.strictObject({ parts: mapOf(part), copies: mapOf(copy).optional() });
export type Kit = z.infer<typeof kit>;
