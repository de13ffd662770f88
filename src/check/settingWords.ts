import type { SolvedSetting } from '../assembly/placing/placeSetup.ts';

const WORDS: Readonly<Record<SolvedSetting['key'], string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'sideways', heightMm: 'height' };

/** A setting in words: "slide of Motor on a clamp on 15 mm rod". */
export function settingWords({ joint, key }: Pick<SolvedSetting, 'joint' | 'key'>): string {
  return `${WORDS[key]} of ${joint.b.piece.name} on ${joint.a.piece.name}`;
}
