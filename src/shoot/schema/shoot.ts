/** The shoot file: one object, self-contained. `version` stays 0 until builds can be proposed. */
import * as z from 'zod';
import { mapOf, name, note } from './basics.ts';
import { build, glass, setup } from './build.ts';
import { day, needs, person, shot } from './day.ts';
import { kit } from './part.ts';

export const FORMAT = 'setworthy shoot';
export const KIT_FORMAT = 'setworthy kit';
/** What a phone page gives back. */
export const MEASURED_FORMAT = 'setworthy measured';
export const VERSION = 0;

export const shoot = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  title: name,
  revision: z.string().max(60).optional(),
  note: note.optional(),
  needs,
  crew: mapOf(person).optional(),
  kit,
  builds: mapOf(build),
  glasses: mapOf(glass),
  setups: mapOf(setup),
  shots: mapOf(shot).optional(),
  days: mapOf(day).optional(),
  /** Checks of the prep list that are done: the day, by setup and check. */
  ticks: z.record(z.string().min(1).max(300), z.iso.date()).optional(),
  /** Figures that replace the program's own defaults, by the path of the default. */
  assumptions: z.record(z.string().max(120), z.unknown()).optional(),
});
export type Shoot = z.infer<typeof shoot>;

export const kitFile = z.strictObject({ format: z.literal(KIT_FORMAT), version: z.literal(VERSION), title: name, ...kit.shape });
