import { coordinate } from '../ink/path.ts';
import type { FdlRect } from './fdlRound.ts';
import type { LinePicture } from './writePng.ts';

/** A frame to lay over a picture: the raster, the frame, what is kept free around it, where the recorded picture lies. All in whole pixels. */
export interface FramePicture {
  readonly title: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly frame: FdlRect;
  readonly protected: FdlRect | undefined;
  readonly picture: FdlRect;
}

const [CLEAR, WHITE, BLACK, GREY] = [0, 1, 2, 3];

/** White lines with a black one outside them, so that they show on any picture. The frame's own pixels are the first inside the white. */
export function frameLines({ widthPx, heightPx, frame, protected: guarded }: FramePicture): LinePicture {
  const thick = Math.max(1, Math.round(heightPx / 1080));
  const boxes = [...(guarded === undefined ? [] : [{ box: guarded, ink: GREY }]), { box: frame, ink: WHITE }];
  const edges = boxes.flatMap(({ box, ink }) => [{ ...outer(box, thick * 2), ink: BLACK, thick }, { ...outer(box, thick), ink, thick }]);
  const rows = new Map<string, Uint8Array>();
  const middle = { x: Math.floor(widthPx / 2), y: Math.floor(heightPx / 2), reach: thick * 12 };
  return {
    widthPx, heightPx,
    row: (y) => {
      const state = edges.map((edge) => (y < edge.top || y > edge.bottom ? 'o' : y < edge.top + edge.thick || y > edge.bottom - edge.thick ? 'f' : 'i')).join('');
      const cross = Math.abs(y - middle.y) < thick ? 'h' : Math.abs(y - middle.y) <= middle.reach ? 'v' : '';
      const known = rows.get(state + cross);
      if (known !== undefined) return known;
      const row = new Uint8Array(widthPx).fill(CLEAR);
      edges.forEach((edge, at) => {
        const [from, to] = [Math.max(0, edge.left), Math.min(widthPx - 1, edge.right)];
        if (state[at] === 'f') row.fill(edge.ink, from, to + 1);
        else if (state[at] === 'i') {
          row.fill(edge.ink, from, Math.max(0, edge.left + edge.thick));
          row.fill(edge.ink, Math.min(widthPx, edge.right - edge.thick + 1), to + 1);
        }
      });
      if (cross === 'h') row.fill(WHITE, middle.x - middle.reach, middle.x + middle.reach);
      if (cross === 'v') row.fill(WHITE, middle.x, middle.x + thick);
      rows.set(state + cross, row);
      return row;
    },
  };
}

/** The first and last pixels of a line that lies `by` outside a box. A line beyond the raster is drawn on its edge, inside. */
function outer({ xPx, yPx, widthPx, heightPx }: FdlRect, by: number) {
  return { left: Math.round(xPx) - by, right: Math.round(xPx + widthPx) - 1 + by, top: Math.round(yPx) - by, bottom: Math.round(yPx + heightPx) - 1 + by };
}

/** The same as a drawing, in pixels. */
export function frameSvg({ title, widthPx, heightPx, frame, protected: guarded, picture }: FramePicture): string {
  const box = ({ xPx, yPx, widthPx: w, heightPx: h }: FdlRect, style: string) => `<rect x="${coordinate(xPx)}" y="${coordinate(yPx)}" width="${coordinate(w)}" height="${coordinate(h)}" fill="none" ${style}/>`;
  const thick = Math.max(1, Math.round(heightPx / 1080));
  const reach = thick * 12;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}" viewBox="0 0 ${widthPx} ${heightPx}">`,
    `<title>${title.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</title>`,
    box(picture, `stroke="#808080" stroke-width="${thick}" stroke-dasharray="${thick * 4} ${thick * 4}"`),
    ...(guarded === undefined ? [] : [box(guarded, `stroke="#808080" stroke-width="${thick * 2}"`)]),
    box(frame, `stroke="#000000" stroke-width="${thick * 4}"`), box(frame, `stroke="#ffffff" stroke-width="${thick * 2}"`),
    `<path d="M${widthPx / 2 - reach} ${heightPx / 2}H${widthPx / 2 + reach}M${widthPx / 2} ${heightPx / 2 - reach}V${heightPx / 2 + reach}" stroke="#ffffff" stroke-width="${thick}"/>`,
    '</svg>\n',
  ].join('\n');
}

/** A frame of the canvas as it lies in another raster, which the whole canvas fills as far as its shape allows. */
export function inRaster(canvas: { widthPx: number; heightPx: number }, rects: { frame: FdlRect; protected: FdlRect | undefined }, raster: { widthPx: number; heightPx: number }, widened: number): Pick<FramePicture, 'frame' | 'protected' | 'picture'> {
  const aspect = (canvas.widthPx * widened) / canvas.heightPx;
  const fills = raster.widthPx / raster.heightPx >= aspect ? { widthPx: raster.heightPx * aspect, heightPx: raster.heightPx } : { widthPx: raster.widthPx, heightPx: raster.widthPx / aspect };
  const [left, top] = [(raster.widthPx - fills.widthPx) / 2, (raster.heightPx - fills.heightPx) / 2];
  const [across, down] = [fills.widthPx / canvas.widthPx, fills.heightPx / canvas.heightPx];
  const moved = ({ xPx, yPx, widthPx, heightPx }: FdlRect): FdlRect => {
    const [x1, y1, x2, y2] = [left + xPx * across, top + yPx * down, left + (xPx + widthPx) * across, top + (yPx + heightPx) * down].map(Math.round) as [number, number, number, number];
    return { xPx: x1, yPx: y1, widthPx: x2 - x1, heightPx: y2 - y1 };
  };
  return { frame: moved(rects.frame), protected: rects.protected === undefined ? undefined : moved(rects.protected), picture: moved({ xPx: 0, yPx: 0, ...canvas }) };
}
