import { handMove } from '../../assembly/hold/handMove.ts';
import { moveWay } from '../../assembly/placing/moveWay.ts';
import { type Placement, type SolvedSetting, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { placeOnRod } from '../../assembly/space/placeOnRod.ts';
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

/**
 * Where something is set, from a place that one sees: "clamp 37 mm behind the rod’s front end", "turned 24° clockwise seen from behind".
 * `goesOn`: the piece that is being put on, of which it is told; else the one that hands move.
 */
export function settingPlace({ ledger, setup, glass, system }: Of, { joint, key, value, low }: Stands, goesOn?: string): string {
  const placement = placeSetup(ledger, setup, glass);
  const onRod = key === 'slideMm' ? placeOnRod(ledger, placement, joint) : undefined;
  if (onRod !== undefined) return `clamp ${amount(Math.abs(onRod.fromEndMm), key, system)} ${onRod.fromEndMm >= 0 ? onRod.way : 'past'} the rod’s ${onRod.end}`;
  const size = amount(Math.abs(value), key, system);
  const { way } = goesOn === undefined ? handMove(placement, { joint, key }, value) : moveWay(placement, { joint, key }, value, goesOn);
  if (Math.abs(value) < 0.05) return `${NOUNS[key]} in the middle, at 0`;
  if (key.endsWith('Deg')) return `${DONE[key]} ${size} ${way ?? (value < 0 ? 'back' : 'on')}`;
  if (raises(placement, { joint, key }) && low !== undefined) return value - low < 0.05 ? 'at its lowest' : `raised ${amount(value - low, key, system)} from its lowest`;
  return `${size} ${way ?? (value < 0 ? 'back' : 'on')} from its middle`;
}

/** The piece that is moved by hand to set a joint: of a support and what it carries the support, of two others the one that does not stand on the ground. */
export const movedPiece = (placement: Placement, setting: Pick<Stands, 'joint' | 'key'>): string => handMove(placement, setting, 1).moves.piece.name;

const raises = (placement: Placement, { joint, key }: Pick<Stands, 'joint' | 'key'>): boolean => key === 'heightMm' && handMove(placement, { joint, key }, 1).way === 'up';

/** How far a slide or height is from where it was with another glass: "18 mm further back than with 50 mm"; `undefined` where it stays. */
export function settingShift({ ledger, setup, glass, system }: Of, stands: Stands, other: { readonly glass: string; readonly name: string }): string | undefined {
  const was = placeSetup(ledger, setup, other.glass).settings.find(({ joint, key }) => joint.path === stands.joint.path && key === stands.key);
  if (was === undefined) return undefined;
  const by = stands.value - was.value;
  if (Math.abs(by) < 0.5 || stands.key.endsWith('Deg')) return undefined;
  const { way } = handMove(placeSetup(ledger, setup, glass), stands, by);
  return `${amount(Math.abs(by), stands.key, system)} further ${way ?? (by < 0 ? 'back' : 'on')} than with ${other.name}`;
}

const NOUNS: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'sideways', heightMm: 'height' };
const DONE: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turned', tiltDeg: 'tilted', slideMm: 'slid', sideMm: 'aside', heightMm: 'raised' };

const amount = (value: number, key: SolvedSetting['key'], system: System): string => printAmount({ value: Math.round(value * 10) / 10, unit: key.endsWith('Deg') ? 'deg' : 'mm' }, system);
