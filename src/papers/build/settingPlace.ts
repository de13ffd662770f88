import { moveWay } from '../../assembly/placing/moveWay.ts';
import { type Placement, type SolvedSetting, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type Vector, IDENTITY, axis, compose, dot, scale } from '../../assembly/placing/Transform.ts';
import { axisOf } from '../../assembly/mates.ts';
import { convexParts, worldSolids } from '../../assembly/space/worldSolids.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type System, printAmount } from '../../units/print.ts';

/** A setting as it stands, found or stated. */
export interface Stands extends Pick<SolvedSetting, 'joint' | 'key' | 'value'> {
  /** The end of its way that is known. */
  readonly low?: number | undefined;
}

interface Of {
  readonly ledger: Ledger;
  readonly setup: string;
  readonly glass: string;
  readonly system: System;
}

/** Where something is set, from a place that one sees: "clamp 37 mm behind the rod’s front end", "turned 24° clockwise seen from behind". */
export function settingPlace({ ledger, setup, glass, system }: Of, { joint, key, value, low }: Stands): string {
  const placement = placeSetup(ledger, setup, glass);
  const onRod = key === 'slideMm' ? alongRod(ledger, placement, joint, system) : undefined;
  if (onRod !== undefined) return onRod;
  const size = amount(Math.abs(value), key, system);
  const { way } = moveWay(placement, { joint, key }, value);
  if (Math.abs(value) < 0.05) return `${NOUNS[key]} in the middle, at 0`;
  if (key.endsWith('Deg')) return `${DONE[key]} ${size} ${way ?? (value < 0 ? 'back' : 'on')}`;
  if (raises(placement, { joint, key }) && low !== undefined) return value - low < 0.05 ? 'at its lowest' : `raised ${amount(value - low, key, system)} from its lowest`;
  return `${size} ${way ?? (value < 0 ? 'back' : 'on')} from its middle`;
}

/** The piece that is moved by hand to set a joint: of a support and what it carries the support, else what hangs further out. */
export function movedPiece(placement: Placement, setting: Pick<Stands, 'joint' | 'key'>): string {
  const { a, b } = setting.joint;
  return (raises(placement, setting) && b.piece.fromGlass ? a : raises(placement, setting) && a.piece.fromGlass ? b : moveWay(placement, setting, 1).moves).piece.name;
}

const raises = (placement: Placement, { joint, key }: Pick<Stands, 'joint' | 'key'>): boolean => key === 'heightMm' && moveWay(placement, { joint, key }, 1).way === 'up';

/** How far a slide or height is from where it was with another glass: "18 mm further back than with 50 mm"; `undefined` where it stays. */
export function settingShift({ ledger, setup, glass, system }: Of, stands: Stands, other: { readonly glass: string; readonly name: string }): string | undefined {
  const was = placeSetup(ledger, setup, other.glass).settings.find(({ joint, key }) => joint.path === stands.joint.path && key === stands.key);
  if (was === undefined) return undefined;
  const by = stands.value - was.value;
  if (Math.abs(by) < 0.5 || stands.key.endsWith('Deg')) return undefined;
  const { way } = moveWay(placeSetup(ledger, setup, glass), stands, by);
  return `${amount(Math.abs(by), stands.key, system)} further ${way ?? (by < 0 ? 'back' : 'on')} than with ${other.name}`;
}

const NOUNS: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'sideways', heightMm: 'height' };
const DONE: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turned', tiltDeg: 'tilted', slideMm: 'slid', sideMm: 'aside', heightMm: 'raised' };

const amount = (value: number, key: SolvedSetting['key'], system: System): string => printAmount({ value: Math.round(value * 10) / 10, unit: key.endsWith('Deg') ? 'deg' : 'mm' }, system);

/** The rod's end that is measured from, and the way from it, by which way the rod runs. */
const ENDS: readonly (readonly [end: string, way: string])[] = [['end at camera left', 'in from'], ['upper end', 'below'], ['front end', 'behind']];
const STRAIGHT = 0.8;

/** A rod says by itself where its end is: nobody sees a middle. `undefined` where the rod's shape is not entered, or it runs askew. */
function alongRod(ledger: Ledger, { model, places, setup, glass }: Placement, { path, a, b }: SolvedSetting['joint'], system: System): string | undefined {
  const held = [...model.tree, ...model.loops].find(({ joint }) => joint.path === path);
  if (held === undefined || (a.point.kind === 'rod') === (b.point.kind === 'rod')) return undefined;
  const [rod, clamp, clampFrame] = a.point.kind === 'rod' ? [a, b, held.frameB] : [b, a, held.frameA];
  const corners = worldSolids(ledger, setup, glass).filter(({ piece, coarse }) => piece.ref === rod.ref && !coarse).flatMap((solid) => convexParts(solid).flat());
  const along = axis(compose(places.get(a.ref) ?? IDENTITY, held.frameA).r, axisOf(a.point.kind, 'slideMm'));
  const k = along.findIndex((one) => Math.abs(one) > STRAIGHT);
  if (corners.length === 0 || k === -1) return undefined;
  const forward: Vector = scale(along, Math.sign(along[k] ?? 1));
  const end = Math.max(...corners.map((corner) => dot(corner, forward)));
  const at = dot(compose(places.get(clamp.ref) ?? IDENTITY, clampFrame).t, forward);
  const [name, way] = ENDS[k] ?? ['end', 'from'];
  const far = amount(Math.abs(end - at), 'slideMm', system);
  return `clamp ${far} ${end >= at ? way : 'past'} the rod’s ${name}`;
}
