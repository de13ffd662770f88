import type { Verdict } from '../../check/answer.ts';
import type { Mark } from '../ink/Mark.ts';
import { arc, circle, line, polygon, rectangle } from '../ink/path.ts';
import { HAIRLINE } from './look.ts';

const RADIUS = 1.25;
const INK = { widthMm: 0.3 } as const;

/** A verdict's mark about a middle: open ring, half ring, diamond, dotted ring, dash. */
export function verdictMark(verdict: Verdict, x: number, y: number): Mark[] {
  const centre = { x, y };
  if (verdict === 'fails') {
    const reach = RADIUS * 1.25;
    return [{ kind: 'path', d: polygon([{ x, y: y - reach }, { x: x + reach, y }, { x, y: y + reach }, { x: x - reach, y }]), fill: 0 }];
  }
  if (verdict === 'pending') return [{ kind: 'path', d: line(x - RADIUS, y, x + RADIUS, y), stroke: INK }];
  const ring: Mark = { kind: 'path', d: circle(centre, RADIUS), stroke: verdict === 'unknown' ? { ...INK, dash: [0.01, 0.78] } : INK };
  return verdict === 'tight' ? [ring, { kind: 'path', d: `${arc(centre, RADIUS, 90, 270)}Z`, fill: 0 }] : [ring];
}

/** A box to tick by hand. */
export const tickBox = (x: number, y: number, size = 3): Mark => ({ kind: 'path', d: rectangle(x, y - size / 2, size, size), stroke: { widthMm: 0.25 } });

/** The load line: a scale from 0 to 2 with the line at 1; filled as deep as it sits. */
export function loadLine(use: number, verdict: Verdict, { x, y, widthMm }: { x: number; y: number; widthMm: number }): Mark[] {
  const filled = (Math.min(Math.max(use, 0), 2) / 2) * widthMm;
  const middle = x + widthMm / 2;
  return [
    { kind: 'path', d: line(x, y, x + widthMm, y), stroke: HAIRLINE },
    ...(filled === 0 ? [] : [{ kind: 'path' as const, d: rectangle(x, y - 0.5, filled, 1), fill: verdict === 'fails' ? 0 : 0.45 }]),
    { kind: 'path', d: line(middle, y - 1.7, middle, y + 1.7), stroke: { widthMm: 0.4 } },
    ...(use > 2 ? [{ kind: 'path' as const, d: polygon([{ x: x + widthMm, y: y - 1 }, { x: x + widthMm + 1.6, y }, { x: x + widthMm, y: y + 1 }]), fill: 0 }] : []),
  ];
}
