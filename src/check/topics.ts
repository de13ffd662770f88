import type * as z from 'zod';
import { foundSetting, joint, pinnedSetting, settings } from '../shoot/schema/build.ts';
import { point, solid } from '../shoot/schema/mechanics.ts';

/** Something about the file that is explained by name, as questions are. */
export interface Topic {
  readonly id: string;
  readonly says: string;
  readonly paragraphs: readonly string[];
  /** What its keys mean, from the schema's own words. */
  readonly keys: readonly { readonly key: string; readonly says: string }[];
}

const FRAME = 'Everything is in mm in one kind of frame: +X to camera left, +Y up, +Z forward to the subject (that of glTF 2.0). A camera build is shown with its origin where the optical axis meets the sensor plane, a station with that of its root.';

const ORIGIN = 'Each part has a frame of its own, with its forward as it is usually mounted. The origin of a body is where the axis meets the sensor plane, so that its mount stands at the flange distance; that of a lens, block, focuser or adapter lies on the axis at the face it sits on. ' +
  'That of any other part is where you like, such as its main screw: points, solids and "centreMm" of one part all count from it.';

const MEETING = 'A joint brings two points face to face: their places come together, "out" against "out", "up" along "up". Then its settings move and turn "b" as seen from "a". The build starts at its "root" (else its "camera") and every joint carries on to the piece that is not placed yet.';

const FOUND = 'A number is kept. {"auto": "perLens"} or {"auto": "shared"} is found so that gears mesh and loops close. {"pinned": {...}} states it for each glass. What can move but is not stated (a range on a point, a clamp on a rod, an arm) gives way only where something would not fit otherwise.';

const WORKED = 'The readme of the program works one such joint out by hand, under “Placing a rig”; setworthy place prints where everything came to stand.';

export const topics: readonly Topic[] = [
  { id: 'points', says: 'Where a part can be fixed: its axes, its origin, "at", "out" and "up"', paragraphs: [FRAME, ORIGIN, 'A point is a place on a part with a way out of it. Places and directions are optional: picture, sight, lines and power are answered without, and what has none waits for a place.', WORKED], keys: keysOf(point) },
  { id: 'solids', says: 'What a part looks like: boxes, cylinders and tubes', paragraphs: [FRAME, ORIGIN, 'Solids stand in the way of others, are drawn, and tell where the mass lies if "centreMm" is not entered.'], keys: keysOf(solid) },
  { id: 'joints', says: 'How two points meet, and which end is "a"', paragraphs: [MEETING, FRAME, WORKED], keys: keysOf(joint) },
  { id: 'settings', says: 'Which way a joint slides, turns and rises, and what finds it', paragraphs: [MEETING, FOUND, WORKED], keys: [...keysOf(settings), ...keysOf(foundSetting), ...keysOf(pinnedSetting)] },
];

/** Keys in their order, those of a union's branches once. */
function keysOf(schema: z.ZodType): { key: string; says: string }[] {
  const def = schema.def as unknown as { shape?: Readonly<Record<string, z.ZodType>>; options?: readonly z.ZodType[] };
  const shapes = def.shape === undefined ? (def.options ?? []).flatMap(keysOf) : Object.entries(def.shape).map(([key, one]) => ({ key, says: wordsOf(one) }));
  return [...new Map(shapes.map((one) => [one.key, one])).values()];
}

function wordsOf(schema: z.ZodType): string {
  const meta = schema.meta() as { explains?: string; description?: string } | undefined;
  const inner = (schema.def as unknown as { innerType?: z.ZodType }).innerType;
  return meta?.explains ?? meta?.description ?? (inner === undefined ? '' : wordsOf(inner));
}
