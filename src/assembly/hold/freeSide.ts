import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { onlyPushes } from '../mates.ts';
import { setupPieces } from '../setupPieces.ts';
import { standsOn } from './standsOn.ts';

/**
 * The pieces of a build that would turn together if one joint let go: all that hangs on the rest by that joint alone. `undefined`
 * where something else holds them too (a second clamp, a second rod); supports that only push do not count.
 */
export function freeSide(ledger: Ledger, setup: string, glass: string, jointPath: string): ReadonlySet<string> | undefined {
  return ledger.cell(`free side|${setup}|${glass}|${jointPath}`, () => {
    const { model, places } = placeSetup(ledger, setup, glass);
    const joints = [...model.tree, ...model.loops];
    const wanted = joints.find(({ joint }) => joint.path === jointPath);
    if (wanted === undefined) return undefined;
    const { joint } = wanted;
    const build = setupPieces(ledger, setup, glass).get(joint.a.ref)?.build ?? '';
    const links = joints.filter((one) => one !== wanted && !onlyPushes(one.joint.a.point, one.joint.b.point)).map((one) => [one.joint.a.ref, one.joint.b.ref] as const);
    const behind = reachable(joint.b.ref, links);
    if (behind.has(joint.a.ref)) return undefined;
    const { anchor, contacts } = standsOn(ledger, setup, glass, build);
    const held = (refs: ReadonlySet<string>) => refs.has(anchor) || contacts.some(({ ref }) => refs.has(ref));
    const placed = (refs: ReadonlySet<string>) => new Set([...refs].filter((ref) => places.has(ref)));
    if (!held(behind)) return placed(behind);
    const before = reachable(joint.a.ref, links);
    return held(before) ? undefined : placed(before);
  });
}

function reachable(from: string, links: readonly (readonly [string, string])[]): Set<string> {
  const seen = new Set([from]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const [a, b] of links) {
      if (seen.has(a) === seen.has(b)) continue;
      seen.add(a).add(b);
      grew = true;
    }
  }
  return seen;
}
