import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import type { ModelJoint, RigModel } from '../placing/rigModel.ts';
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
    const behind = reachable(model, joint.b.ref, wanted);
    if (behind.has(joint.a.ref)) return undefined;
    const { anchor, contacts } = standsOn(ledger, setup, glass, build);
    const held = (refs: ReadonlySet<string>) => refs.has(anchor) || contacts.some(({ ref }) => refs.has(ref));
    const placed = (refs: ReadonlySet<string>) => new Set([...places.keys()].filter((ref) => refs.has(ref)));
    if (!held(behind)) return placed(behind);
    const before = reachable(model, joint.a.ref, wanted);
    return held(before) ? undefined : placed(before);
  });
}

/** All that hangs together with a piece by whatever holds, but for one joint. */
function reachable(model: RigModel, from: string, without: ModelJoint): ReadonlySet<string> {
  const links = linksOf(model);
  const seen = new Set([from]);
  for (const ref of seen) for (const { to, by } of links.get(ref) ?? []) if (by !== without) seen.add(to);
  return seen;
}

type Links = ReadonlyMap<string, readonly { readonly to: string; readonly by: ModelJoint }[]>;

/** What each piece is held to: of a model alone, so that it is gone through once for all its joints. */
const LINKS = new WeakMap<RigModel, Links>();

function linksOf(model: RigModel): Links {
  const known = LINKS.get(model);
  if (known !== undefined) return known;
  const links = new Map<string, { to: string; by: ModelJoint }[]>();
  const link = (from: string, to: string, by: ModelJoint): void => {
    const own = links.get(from);
    if (own === undefined) links.set(from, [{ to, by }]);
    else own.push({ to, by });
  };
  for (const by of [...model.tree, ...model.loops]) {
    const { a, b } = by.joint;
    if (onlyPushes(a.point, b.point)) continue;
    link(a.ref, b.ref, by);
    link(b.ref, a.ref, by);
  }
  LINKS.set(model, links);
  return links;
}
