/** Outlines as SVG paths, mm. */
export interface XY {
  readonly x: number;
  readonly y: number;
}

/** A ten-thousandth of a millimetre is finer than any printer. */
export const coordinate = (value: number): string => (Math.round(value * 1e4) / 1e4 || 0).toString();
const pair = ({ x, y }: XY): string => `${coordinate(x)} ${coordinate(y)}`;

export const polyline = ([first, ...rest]: readonly XY[]): string => (first === undefined ? '' : `M${pair(first)}${rest.map((point) => `L${pair(point)}`).join('')}`);
export const polygon = (points: readonly XY[]): string => `${polyline(points)}Z`;
export const line = (x1: number, y1: number, x2: number, y2: number): string => polyline([{ x: x1, y: y1 }, { x: x2, y: y2 }]);
export const rectangle = (x: number, y: number, width: number, height: number): string => polygon([{ x, y }, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }]);

export const onCircle = (centre: XY, radius: number, angleDeg: number): XY => {
  const angle = (angleDeg * Math.PI) / 180;
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
};

/** An arc clockwise from one angle to another; 0° points right, 90° down. Drawn in cubic pieces of a quarter at most. */
export function arc(centre: XY, radius: number, fromDeg: number, toDeg: number): string {
  const pieces = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / 90));
  const step = (toDeg - fromDeg) / pieces;
  const handle = (4 / 3) * Math.tan((step * Math.PI) / 720) * radius;
  const beside = (angleDeg: number, along: number): XY => {
    const at = onCircle(centre, radius, angleDeg);
    const angle = (angleDeg * Math.PI) / 180;
    return { x: at.x - along * Math.sin(angle), y: at.y + along * Math.cos(angle) };
  };
  const curves = Array.from({ length: pieces }, (_, at) => {
    const [a, b] = [fromDeg + at * step, fromDeg + (at + 1) * step];
    return `C${pair(beside(a, handle))} ${pair(beside(b, -handle))} ${pair(onCircle(centre, radius, b))}`;
  });
  return `M${pair(onCircle(centre, radius, fromDeg))}${curves.join('')}`;
}

export const circle = (centre: XY, radius: number): string => `${arc(centre, radius, 0, 360)}Z`;
