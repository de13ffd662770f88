import type { Fault, Outcome } from '../faults/Fault.ts';
import { VERSION } from './schema/shoot.ts';

/** Turns a file of one version into one of the next; the key is the version it starts from. None is needed yet. */
const STEPS: Readonly<Record<number, (file: Record<string, unknown>) => Record<string, unknown>>> = {};

/** Brings a file up to this program's version, step by step; refuses a newer one, which it cannot know. */
export function migrate(file: unknown, steps = STEPS, version: number = VERSION): Outcome<unknown> {
  if (typeof file !== 'object' || file === null || Array.isArray(file)) return refuse({ path: '', message: 'A shoot file is one JSON object.' });
  let current = file as Record<string, unknown>;
  if (typeof current['version'] !== 'number') return { ok: true, value: file, warnings: [] };
  if (current['version'] > version) {
    return refuse({ path: 'version', message: `The file is of version ${current['version']}; this program reads up to ${version}.`, cure: 'Update Setworthy, or ask for an older save.' });
  }
  while ((current['version'] as number) < version) {
    const step = steps[current['version'] as number];
    if (step === undefined) return refuse({ path: 'version', message: `Nothing is known of version ${String(current['version'])}; this program reads ${version}.` });
    current = step(current);
  }
  return { ok: true, value: current, warnings: [] };
}

const refuse = (fault: Fault): Outcome<never> => ({ ok: false, faults: [fault] });
