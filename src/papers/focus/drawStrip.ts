import type { Mark } from '../ink/Mark.ts';
import { arc, circle, line, onCircle, polygon, rectangle } from '../ink/path.ts';
import { HAIRLINE, RULE, SIZE } from '../sheet/look.ts';
import type { Fonts } from '../type/Fonts.ts';
import { type System, printNumber } from '../../units/print.ts';
import type { MarkedSurface } from './focusMarks.ts';

/** A rule of 100 mm, to check that the printer keeps the scale. */
export function rule(x: number, y: number): Mark[] {
  const ticks = Array.from({ length: 101 }, (_, mm): Mark => ({ kind: 'path', d: line(x + mm, y, x + mm, y - (mm % 10 === 0 ? 4 : mm % 5 === 0 ? 2.8 : 1.6)), stroke: { widthMm: mm % 100 === 0 ? 0.2 : 0.12 } }));
  return [
    { kind: 'path', d: line(x, y, x + 100, y), stroke: { widthMm: 0.12 } }, ...ticks,
    { kind: 'text', text: '100 mm: hold a ruler to it. If it is not 100 mm, print at full size, without fitting to the page.', x, y: y + 3.8, face: 'regular', sizePt: SIZE.small },
  ];
}

export const STRIP_MM = 16;

export const mmPerDeg = ({ diameterMm }: MarkedSurface): number => (Math.PI * diameterMm) / 360;

/** Distances as an assistant writes them on tape: 2.8, 12, ∞; or 9'6". */
export function onTape(mm: number, system: System): string {
  if (mm === Infinity) return '∞';
  if (system === 'metric') return printNumber(mm / 1000, mm < 10_000 ? 3 : 2);
  const inches = Math.round(mm / 25.4);
  return inches % 12 === 0 ? `${inches / 12}'` : inches < 12 ? `${inches}"` : `${Math.floor(inches / 12)}'${inches % 12}"`;
}

/** A part of the strip that goes round the wheel, `fromDeg` to `toDeg` of its turn; where `mirrored`, infinity stands on the right. */
export function strip(fonts: Fonts, surface: MarkedSurface, system: System, { x, y, fromDeg, toDeg, mirrored }: { x: number; y: number; fromDeg: number; toDeg: number; mirrored: boolean }): Mark[] {
  const scale = mmPerDeg(surface);
  const at = (deg: number) => x + (mirrored ? toDeg - deg : deg - fromDeg) * scale;
  const inside = (deg: number) => deg >= fromDeg - 1e-9 && deg <= toDeg + 1e-9;
  const marks: Mark[] = [{ kind: 'path', d: rectangle(x, y, (toDeg - fromDeg) * scale, STRIP_MM), stroke: HAIRLINE }];
  const taken: { from: number; to: number }[] = [];
  const ranked = surface.marks.filter(({ turnDeg }) => inside(turnDeg)).toSorted((a, b) => Number(b.taped) - Number(a.taped));
  for (const { distanceMm, turnDeg, taped } of ranked) {
    const place = at(turnDeg);
    const words = onTape(distanceMm, system);
    const half = fonts.widthMm('regular', SIZE.small, words) / 2 + 0.5;
    const left = Math.min(Math.max(place - half, x + 0.3), x + (toDeg - fromDeg) * scale - 2 * half - 0.3);
    const free = taken.every(({ from, to }) => left >= to || left + 2 * half <= from);
    marks.push({ kind: 'path', d: line(place, y, place, y + (taped ? 4 : free ? 3 : 1.8)), stroke: { widthMm: taped ? 0.3 : 0.15 } });
    if (!free) continue;
    taken.push({ from: left, to: left + 2 * half });
    marks.push({ kind: 'text', text: words, x: left + half, y: y + 6.8, face: taped ? 'strong' : 'regular', sizePt: SIZE.small, align: 'middle' });
  }
  for (const { shot, marks: of } of surface.shots) {
    for (const { turnDeg, depth } of of.filter((mark) => inside(mark.turnDeg))) {
      const place = at(turnDeg);
      const bottom = y + STRIP_MM;
      if (depth !== undefined) {
        const [a, b] = [at(Math.max(depth.fromDeg, fromDeg)), at(Math.min(depth.toDeg, toDeg))];
        marks.push({ kind: 'path', d: rectangle(Math.min(a, b), bottom - 1.4, Math.max(Math.abs(b - a), 0.1), 1), fill: 0.55 });
      }
      marks.push({ kind: 'path', d: polygon([{ x: place, y: bottom - 5 }, { x: place - 1.1, y: bottom - 2.4 }, { x: place + 1.1, y: bottom - 2.4 }]), fill: 0 }, { kind: 'path', d: line(place, bottom - 5, place, bottom), stroke: { widthMm: 0.2 } });
      marks.push({ kind: 'text', text: shot, x: place + 1.5, y: bottom - 3.2, face: 'strong', sizePt: 6.5 });
    }
  }
  return marks;
}

/** A disc that lies on the face of the wheel: marks at its edge, a hole for the hub. Its scale turns clockwise from the top. */
export function disc(fonts: Fonts, surface: MarkedSurface, system: System, centre: { x: number; y: number }): Mark[] {
  const radius = surface.diameterMm / 2;
  const marks: Mark[] = [
    { kind: 'path', d: circle(centre, radius), stroke: RULE },
    { kind: 'path', d: `${arc(centre, radius - 2, -90, -90 + surface.turnDeg)}`, stroke: HAIRLINE },
    { kind: 'path', d: line(centre.x - 2, centre.y, centre.x + 2, centre.y), stroke: HAIRLINE }, { kind: 'path', d: line(centre.x, centre.y - 2, centre.x, centre.y + 2), stroke: HAIRLINE },
  ];
  const taken: number[] = [];
  for (const { distanceMm, turnDeg, taped } of surface.marks.toSorted((a, b) => Number(b.taped) - Number(a.taped))) {
    const angle = turnDeg - 90;
    const [outer, inner] = [onCircle(centre, radius, angle), onCircle(centre, radius - (taped ? 4 : 2.6), angle)];
    marks.push({ kind: 'path', d: line(outer.x, outer.y, inner.x, inner.y), stroke: { widthMm: taped ? 0.3 : 0.15 } });
    const room = (fonts.widthMm('regular', SIZE.small, onTape(distanceMm, system)) + 1.6) / ((radius - 6) * Math.PI / 180);
    if (radius < 12 || taken.some((other) => Math.abs(other - turnDeg) < room || Math.abs(other - turnDeg) > 360 - room)) continue;
    taken.push(turnDeg);
    const place = onCircle(centre, radius - 5.4, angle);
    marks.push({ kind: 'text', text: onTape(distanceMm, system), x: place.x - Math.sin(((angle + 90) * Math.PI) / 180) * 1, y: place.y + Math.cos(((angle + 90) * Math.PI) / 180) * 1, face: taped ? 'strong' : 'regular', sizePt: SIZE.small, align: 'middle', turnDeg: angle + 90 });
  }
  for (const { marks: of } of surface.shots) {
    for (const { turnDeg } of of) {
      const [tip, a, b] = [onCircle(centre, radius - 9.5, turnDeg - 90), onCircle(centre, radius - 12, turnDeg - 93), onCircle(centre, radius - 12, turnDeg - 87)];
      if (radius > 16) marks.push({ kind: 'path', d: polygon([tip, a, b]), fill: 0 });
    }
  }
  return marks;
}
