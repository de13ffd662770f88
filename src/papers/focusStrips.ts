import { printAmount, printNumber } from '../units/print.ts';
import { writeCsv } from './csv.ts';
import { enteredOrWhy } from './entered.ts';
import { disc, mmPerDeg, onTape, rule, strip, STRIP_MM } from './focus/drawStrip.ts';
import { type MarkedSurface, markedSurface } from './focus/focusMarks.ts';
import { type MakingOfSetup, paper, textFile } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { SIZE } from './sheet/look.ts';
import type { Sheet } from './sheet/Sheet.ts';

/** Strips and discs at their true size. */
export const focusStrips = paper({
  id: 'focus-strips',
  says: 'Focus strips and discs',
  per: 'setup',
  make: (making) => {
    const found = making.glasses.map((glass) => ({ name: (making.ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass, found: enteredOrWhy(() => markedSurface(making.asking, making.setup, glass, making.press.system)) }));
    const sheet = sheetFor(making, 'Focus strips and discs', making.setupName, true);
    sheet.drawing(12, (x, y) => rule(x, y + 5));
    sheet.text('Bold marks were taped; the others lie on the curve between them: check three by eye before the day. Triangles are the marks of shots, the bar below is what is sharp at the stop of the shot.', { sizePt: SIZE.small });
    for (const { name, found: one } of found) {
      if ('why' in one) {
        sheet.heading(name);
        sheet.text(one.why);
      } else drawGlass(sheet, making, name, one.value);
    }
    const rows = found.flatMap(({ name, found: one }) => ('why' in one ? [] : one.value.marks.map((mark) => [name, one.value.name, mark.distanceMm === Infinity ? 'infinity' : mark.distanceMm, mark.turnDeg, mark.turnDeg * mmPerDeg(one.value), mark.taped ? 'taped' : 'curve'])));
    return [pdfFile(making, `${making.setup}/focus-strips.pdf`, 'Focus strips', sheet.pages()), textFile(`${making.setup}/focus-marks.csv`, writeCsv(['glass', 'on', 'distance mm', 'turn deg', 'along the strip mm', 'from'], rows))];
  },
});

function drawGlass(sheet: Sheet, { press: { fonts, system } }: MakingOfSetup, name: string, surface: MarkedSurface): void {
  const pieces = piecesOf(surface, sheet.widthMm);
  sheet.keep(26 + STRIP_MM * 2 + 8);
  sheet.heading(name);
  const length = surface.turnDeg * mmPerDeg(surface);
  sheet.text(`For ${surface.name}: ${printNumber(surface.diameterMm, 4)} mm across, ${printAmount({ value: surface.turnDeg, unit: 'deg' })} of turn, strip ${printNumber(length, 4)} mm long. ${system === 'metric' ? 'Metres' : 'Feet and inches'} from the sensor plane. Scale from ${surface.scale.says}.`, { sizePt: SIZE.small });
  const shots = surface.shots.filter(({ marks }) => marks.length > 0).map(({ shot, tStop, marks }) => `${shot} at T${printNumber(tStop)}: ${marks.map(({ distanceMm }) => onTape(distanceMm, system)).join(', ')}`);
  if (shots.length > 0) sheet.text(`Shots: ${shots.join('; ')}.`, { sizePt: SIZE.small });
  const firstMm = (pieces[0] as readonly [number, number])[1] * mmPerDeg(surface);
  const round = surface.turnDeg <= 360 && surface.diameterMm <= 160;
  const beside = round && pieces.length === 1 && firstMm + surface.diameterMm + 12 <= sheet.widthMm;
  if (beside) sheet.keep(surface.diameterMm + 6);
  const top = sheet.y;
  if (beside) sheet.put(...disc(fonts, surface, system, { x: sheet.left + firstMm + 10 + surface.diameterMm / 2, y: top + surface.diameterMm / 2 }));
  for (const mirrored of [false, true]) {
    for (const [fromDeg, toDeg] of mirrored ? pieces.toReversed() : pieces) {
      sheet.drawing(STRIP_MM + 2.4, (x, y) => strip(fonts, surface, system, { x, y, fromDeg, toDeg, mirrored }));
    }
  }
  sheet.text(`Two strips: infinity on the left, infinity on the right; take the one that runs the way the wheel does.${pieces.length > 1 ? ' They are longer than the paper: join the pieces end to end.' : ''}`, { sizePt: SIZE.small });
  if (surface.turnDeg > 360) sheet.text('The scale takes more than one turn: no disc.', { sizePt: SIZE.small });
  else if (beside) sheet.space(Math.max(0, top + surface.diameterMm + 2 - sheet.y));
  else if (round) sheet.drawing(surface.diameterMm + 4, (x, y) => disc(fonts, surface, system, { x: x + surface.diameterMm / 2 + 2, y: y + surface.diameterMm / 2 + 2 }));
}

/** The strip in as few pieces as the paper is long. */
function piecesOf(surface: MarkedSurface, widthMm: number): (readonly [number, number])[] {
  const count = Math.max(1, Math.ceil((surface.turnDeg * mmPerDeg(surface)) / widthMm));
  return Array.from({ length: count }, (_, at) => [(surface.turnDeg * at) / count, (surface.turnDeg * (at + 1)) / count] as const);
}
