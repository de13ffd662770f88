import type { Shoot } from '../shoot/schema/shoot.ts';
import type { Subject } from './answer.ts';

/**
 * Whether an answer about a subject concerns a setup: one of its own, of the builds that stand in it, of its glasses and shots, of a day
 * on which it is shot, or of the shoot as a whole. A build, a glass or a day may belong to several.
 */
export function concernsSetup(shoot: Pick<Shoot, 'setups' | 'shots'>, subject: Subject, wanted: string): boolean {
  const { setup, build, shot, day } = subject;
  const glass = glassOf(subject);
  if (setup !== undefined) return setup === wanted;
  const own = shoot.setups[wanted];
  if (build !== undefined && build !== own?.camera && own?.stations?.includes(build) !== true) return false;
  if (glass !== undefined && own?.glasses.includes(glass) !== true) return false;
  if (shot !== undefined && shoot.shots?.[shot]?.setup !== wanted) return false;
  return day === undefined || isShotOn(shoot, wanted, day);
}

/** The glass an answer is about: also that of a joint which comes and goes with it. */
export const glassOf = ({ glass, joint }: Subject): string | undefined => glass ?? /^glasses\/([^/]+)\//.exec(joint ?? '')?.[1];

/** Of a setup that no shot names yet, any day may be its own. */
function isShotOn({ shots = {} }: Pick<Shoot, 'shots'>, setup: string, day: string): boolean {
  const own = Object.values(shots).filter((shot) => shot.setup === setup);
  return own.length === 0 || own.some((shot) => shot.day === undefined || shot.day === day);
}
