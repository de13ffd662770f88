import { type MoveWay, moveWay } from '../assembly/placing/moveWay.ts';
import type { Placement, SolvedSetting } from '../assembly/placing/placeSetup.ts';
import type { StoppedBy } from '../assembly/placing/stoppedBy.ts';
import { printAmount } from '../units/print.ts';
import type { Unit } from '../units/Unit.ts';
import { named } from './named.ts';

const WORDS: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'sideways', heightMm: 'height' };

/** A setting in words: "slide of Motor on a clamp on 15 mm rod". */
export function settingWords({ joint, key }: Pick<SolvedSetting, 'joint' | 'key'>): string {
  return `${WORDS[key]} of ${joint.b.piece.name} on ${joint.a.piece.name}`;
}

const VERBS: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'shift', heightMm: 'shift' };

/** What is done to set a joint anew: "slide Motor", and "forward on 15 mm rod" to follow how far. */
export function moveWords(placement: Placement, setting: Pick<SolvedSetting, 'joint' | 'key'>, by: number, move: MoveWay = moveWay(placement, setting, by)): { readonly does: string; readonly way: string } {
  const { moves, on, way } = move;
  const raised = way === 'up' ? 'raise' : way === 'down' ? 'lower' : undefined;
  const where = raised === undefined ? (way ?? (by < 0 ? 'back along its scale' : 'further along its scale')) : '';
  return { does: `${raised ?? VERBS[setting.key]} ${named(moves.piece.name)}`, way: `${where === '' ? '' : `${where} `}${on.piece.fromGlass && raised !== undefined ? 'under' : 'on'} ${named(on.piece.name)}` };
}

/** The unit a setting is in. */
export const unitOf = (key: SolvedSetting['key']): Extract<Unit, 'mm' | 'deg'> => (key.endsWith('Deg') ? 'deg' : 'mm');

/** What stops something from coming together: "slide of Motor on 15 mm rod ends at 300 mm and would have to be 342 mm". */
export function stopWords({ stoppedBy }: { readonly stoppedBy: readonly StoppedBy[] }): string[] {
  return stoppedBy.map(({ variable, wants }) => {
    const print = (value: number): string => printAmount({ value, unit: unitOf(variable.key) });
    return `${settingWords(variable)} ends at ${print(wants < variable.low ? variable.low : variable.high)} and would have to be ${print(wants)}`;
  });
}
