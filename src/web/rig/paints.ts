import { Color } from 'three';
import type { Role } from '../../jobs/views/rigView.ts';

/** Which of the two grounds the page has just now. */
export const groundNow = (): string | undefined => document.documentElement.dataset['ground'];

/** A colour of the page's ground, as it stands just now. */
export function colour(name: string): Color {
  return new Color(getComputedStyle(document.documentElement).getPropertyValue(name).trim());
}

const TONES: Readonly<Record<Role, readonly [string, number]>> = {
  camera: ['--ink', 0.35], glass: ['--video', 0.55], screen: ['--ink', 0.6], radio: ['--control', 0.6], power: ['--power', 0.62], focus: ['--tight', 0.6], support: ['--line', 0.35],
};

/** The quiet tone of what a part is for. A colour darkened stays as strong as it was, where one lightened pales: at night some of it is taken out. */
export function tone(role: Role): Color {
  const mixed = colour(TONES[role][0]).lerp(colour('--ground'), TONES[role][1]);
  return groundNow() === 'night' ? mixed.offsetHSL(0, -0.5 * mixed.getHSL({ h: 0, s: 0, l: 0 }).s, 0) : mixed;
}
