import { squeezeSkew } from '../calc/optics/squeezeSkew.ts';
import { printAmount, printNumber } from '../units/print.ts';
import { type Canvas, canvases } from './frames/canvases.ts';
import type { FdlRect } from './frames/fdlRound.ts';
import type { Mark } from './ink/Mark.ts';
import { circle, line, onCircle, polygon, rectangle } from './ink/path.ts';
import { type MakingOfSetup, paper, textFile } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { writeSvg } from './ink/writeSvg.ts';
import { BOLD_RULE, HAIRLINE, RULE, SIZE } from './sheet/look.ts';
import { table } from './sheet/table.ts';

/** Charts to shoot, each with what the recording should read. */
export const framingCharts = paper({
  id: 'charts',
  says: 'Framing chart and squeeze-axis chart',
  per: 'setup',
  make: (making) => {
    const found = canvases(making);
    if (found.length === 0) return [];
    const sheet = sheetFor(making, 'Framing chart', making.setupName, true);
    found.forEach((canvas, at) => {
      if (at > 0) sheet.turn();
      framing(sheet, canvas);
    });
    const axis = sheetFor(making, 'Squeeze-axis chart', making.setupName);
    axisChart(axis, making, found);
    const pages = [...sheet.pages(), ...axis.pages()];
    return [pdfFile(making, `${making.setup}/charts.pdf`, 'Charts', pages), ...pages.map((page, at) => textFile(`${making.setup}/charts/page-${at + 1}.svg`, writeSvg(page, `Charts: ${making.setupName}`)))];
  },
});

type Sheet = ReturnType<typeof sheetFor>;

function framing(sheet: Sheet, canvas: Canvas): void {
  const aspect = (canvas.widthPx * canvas.squeeze) / canvas.heightPx;
  sheet.text(`${canvas.modeName}, ${printNumber(canvas.squeeze)}×: line up the tips of the eight triangles with the edges of the recorded picture, then set the frame lines to the box. The frame pictures for screens are made for an output that shows the whole recorded picture, fitted to the screen: check one against this chart.`, { afterMm: 2 });
  const rows = [row('frame', canvas.frame), ...(canvas.protection === 0 ? [] : [row('kept free, to', canvas.protected)]), row('whole', { xPx: 0, yPx: 0, widthPx: canvas.widthPx, heightPx: canvas.heightPx })];
  table(sheet, [{ says: 'on the recording, squeezed, px', share: 3 }, { says: 'width', mm: 24, align: 'end' }, { says: 'height', mm: 24, align: 'end' }, { says: 'left', mm: 24, align: 'end' }, { says: 'top', mm: 24, align: 'end' }, { says: 'right', mm: 24, align: 'end' }, { says: 'bottom', mm: 24, align: 'end' }], rows);
  const room = sheet.leftMm - 2;
  const width = Math.min(sheet.widthMm, room * aspect);
  sheet.drawing(Math.min(room, width / aspect), (x, y, full) => chart(canvas, x + (full - width) / 2, y, width, width / aspect, sheet));
}

const px = (value: number): string => printAmount({ value, unit: 'px' }).replace(/\D*px$/, '');

function row(says: string, { xPx, yPx, widthPx, heightPx }: FdlRect) {
  return { cells: [says, px(widthPx), px(heightPx), px(xPx), px(yPx), px(xPx + widthPx), px(yPx + heightPx)] };
}

function chart(canvas: Canvas, x: number, y: number, width: number, height: number, { fonts }: Sheet): Mark[] {
  const box = ({ xPx, yPx, widthPx, heightPx }: FdlRect): readonly [number, number, number, number] => [x + (xPx / canvas.widthPx) * width, y + (yPx / canvas.heightPx) * height, (widthPx / canvas.widthPx) * width, (heightPx / canvas.heightPx) * height];
  const [fx, fy, fw, fh] = box(canvas.frame);
  const tip = (tx: number, ty: number, dx: number, dy: number): Mark => ({ kind: 'path', d: polygon([{ x: tx, y: ty }, { x: tx - dx * 7 - dy * 3, y: ty - dy * 7 - dx * 3 }, { x: tx - dx * 7 + dy * 3, y: ty - dy * 7 + dx * 3 }]), fill: 0 });
  const tips = [0.25, 0.75].flatMap((share) => [tip(x + width * share, y, 0, -1), tip(x + width * share, y + height, 0, 1), tip(x, y + height * share, -1, 0), tip(x + width, y + height * share, 1, 0)]);
  const centre = { x: x + width / 2, y: y + height / 2 };
  const aspect = `${(canvas.aspect.width / canvas.aspect.height).toFixed(2)}:1`;
  const radius = Math.min(fh, fw) / 2.4;
  return [
    { kind: 'path', d: rectangle(x, y, width, height), stroke: HAIRLINE }, ...tips,
    ...(canvas.protection === 0 ? [] : [{ kind: 'path' as const, d: rectangle(...box(canvas.protected)), stroke: { ...RULE, dash: [3, 2] } }]),
    { kind: 'path', d: rectangle(fx, fy, fw, fh), stroke: BOLD_RULE },
    { kind: 'path', d: circle(centre, radius), stroke: RULE },
    { kind: 'path', d: line(centre.x - radius * 1.1, centre.y, centre.x + radius * 1.1, centre.y), stroke: HAIRLINE }, { kind: 'path', d: line(centre.x, centre.y - radius * 1.1, centre.x, centre.y + radius * 1.1), stroke: HAIRLINE },
    { kind: 'text', text: aspect, x: fx + 3, y: Math.max(fy + 7, y + 14), face: 'strong', sizePt: SIZE.heading },
    { kind: 'text', text: fonts.cut('regular', SIZE.small, canvas.glasses.join(', '), fw / 2 - radius - 6), x: fx + 3, y: Math.max(fy + 11, y + 18), face: 'regular', sizePt: SIZE.small },
  ];
}

function axisChart(sheet: Sheet, { press }: MakingOfSetup, found: readonly Canvas[]): void {
  sheet.text('Hang it level, square to the lens, filling the height of the picture; focus on it. The circle shows the squeeze, the cross and the outer scale show whether the squeeze axis stands upright.', { afterMm: 2 });
  const radius = 62;
  sheet.drawing(radius * 2 + 22, (x, y, width) => axisMarks({ x: x + width / 2, y: y + radius + 11 }, radius, sheet));
  const squeezes = found.filter(({ squeeze }) => squeeze !== 1);
  const [first] = squeezes;
  if (first === undefined) {
    sheet.text('No glass of this setup squeezes: the circle must be as wide as it is high.');
    return;
  }
  sheet.heading('What the recording should read');
  table(sheet, [{ says: 'squeeze', mm: 20 }, { says: 'circle, width over height, as recorded', share: 3, align: 'end' }, { says: 'out by 0.5°: uprights lean', share: 2, align: 'end' }, { says: 'levels lean', share: 2, align: 'end' }, { says: 'a corner moves', share: 2, align: 'end' }],
    squeezes.map((canvas) => {
      const skew = squeezeSkew({ squeeze: canvas.squeeze, rotationDeg: 0.5, widthPx: canvas.frame.widthPx * canvas.squeeze, heightPx: canvas.frame.heightPx });
      const deg = (value: number) => printAmount({ value, unit: 'deg' }, press.system);
      return { cells: [`${printNumber(canvas.squeeze)}×`, printNumber(1 / canvas.squeeze), deg(skew.verticalLeanDeg), deg(skew.horizontalLeanDeg), printAmount({ value: Math.round(skew.cornerShiftPx), unit: 'px' })] };
    }));
  sheet.text('Read the circle far, at middle distance and near: the ratio is the squeeze there. If the cross leans though the chart is level, turn the block in its clamp until it stands; then mark both with a line of tape.', { sizePt: SIZE.small });
}

function axisMarks(centre: { x: number; y: number }, radius: number, { fonts }: Sheet): Mark[] {
  const spokes = Array.from({ length: 360 }, (_, deg) => deg).filter((deg) => Math.min(deg % 90, 90 - (deg % 90)) <= 5).map((deg): Mark => {
    const off = Math.min(deg % 90, 90 - (deg % 90));
    const [a, b] = [onCircle(centre, radius, deg), onCircle(centre, radius + (off === 0 ? 7 : off === 5 ? 5 : 3), deg)];
    return { kind: 'path', d: line(a.x, a.y, b.x, b.y), stroke: off === 0 ? RULE : HAIRLINE };
  });
  const words = [0, 90, 180, 270].flatMap((deg) => [-5, 5].map((off): Mark => {
    const at = onCircle(centre, radius + 7.5, deg + off);
    return { kind: 'text', text: '5°', x: at.x, y: at.y + 1, face: 'regular', sizePt: SIZE.small, align: 'middle' };
  }));
  const rings = [1, 0.75, 0.5, 0.25].map((share): Mark => ({ kind: 'path', d: circle(centre, radius * share), stroke: share === 1 ? BOLD_RULE : HAIRLINE }));
  const grid = [-0.5, 0.5].flatMap((share): Mark[] => [
    { kind: 'path', d: line(centre.x + radius * share, centre.y - radius * 0.86, centre.x + radius * share, centre.y + radius * 0.86), stroke: HAIRLINE },
    { kind: 'path', d: line(centre.x - radius * 0.86, centre.y + radius * share, centre.x + radius * 0.86, centre.y + radius * share), stroke: HAIRLINE },
  ]);
  return [
    ...rings, ...grid, ...spokes, ...words, { kind: 'path', d: line(centre.x - radius, centre.y, centre.x + radius, centre.y), stroke: RULE }, { kind: 'path', d: line(centre.x, centre.y - radius, centre.x, centre.y + radius), stroke: RULE },
    { kind: 'text', text: fonts.cut('regular', SIZE.small, 'this way up', 40), x: centre.x + 2, y: centre.y - radius + 5, face: 'regular', sizePt: SIZE.small },
  ];
}
