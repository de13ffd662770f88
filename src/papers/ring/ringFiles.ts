import { printNumber } from '../../units/print.ts';
import { type PaperFile, type SolidsMaker, textFile } from '../paper.ts';
import { writeStl, write3mf } from './meshFiles.ts';
import { type Fonts } from '../type/Fonts.ts';
import { outlines } from '../type/outlines.ts';
import { ENGRAVED_MM, type RingLetter, type RingMesh, type RingWanted, ringSolid } from './ringSolid.ts';

/** Of solid prints; common practice. PETG creeps less in heat than PLA. */
const PLASTICS = [{ name: 'PLA', gPerCm3: 1.24 }, { name: 'PETG', gPerCm3: 1.27 }, { name: 'ASA', gPerCm3: 1.07 }] as const;

export const RING_CAUTION = 'Printed plastic creeps under clamp load and in heat (a car in the sun is enough): check it every morning. It is no safety part: never the only thing that holds glass.';

/** A ring to print: STL, 3MF, and a note that says what it is, what it weighs and what it is not. */
export function ringFiles(solids: SolidsMaker, wanted: RingWanted, path: string, fonts?: Fonts): { readonly files: PaperFile[]; readonly mesh: RingMesh; readonly says: string } {
  const mesh = ringSolid(solids, wanted, fonts === undefined ? [] : warning(fonts, wanted));
  const title = `${wanted.kind === 'spacer' ? 'Spacer ring' : 'Split clamp'}, ${printNumber(wanted.innerMm, 4)} to ${printNumber(wanted.outerMm, 4)} mm, ${printNumber(wanted.widthMm)} mm wide`;
  const cm3 = mesh.volumeMm3 / 1000;
  const says = `${title}: ${printNumber(cm3)} cm³; solid ${PLASTICS.map(({ name, gPerCm3 }) => `${printNumber(cm3 * gPerCm3)} g in ${name}`).join(', ')}.`;
  const note = `${says}\n${RING_CAUTION}\nPrint it flat, walls solid, in a plastic that stands heat. Made ${printNumber(wanted.clearanceMm)} mm free on the diameter, inside and outside.\n`;
  return {
    mesh, says,
    files: [{ path: `${path}.stl`, bytes: writeStl(mesh, `${title}. NOT A SAFETY PART`) }, { path: `${path}.3mf`, bytes: write3mf(mesh, { title, note: `${note.trim()}` }) }, textFile(`${path}.txt`, note)],
  };
}

const WARNING = 'NO SAFETY PART';

/** The warning cut into the outside, opposite the slit; none where the wall is too thin to lose its depth, or the ring too narrow. */
function warning(fonts: Fonts, { innerMm, outerMm, widthMm, clearanceMm }: RingWanted): RingLetter[] {
  const outer = (outerMm - clearanceMm) / 2;
  const wall = outer - (innerMm + clearanceMm) / 2;
  if (wall < ENGRAVED_MM * 3 || widthMm < 6) return [];
  const highMm = Math.min(7, widthMm * 0.5);
  const runs = fonts.runs('strong', WARNING);
  const [first] = runs;
  if (first === undefined) return [];
  const emMm = (highMm * first.font.unitsPerEm) / first.font.capHeight;
  const long = runs.reduce((sum, { widthEm }) => sum + widthEm, 0) * emMm;
  if (long > Math.PI * outer * 1.2) return [];
  let along = -long / 2;
  return runs.flatMap(({ font, glyphs }) => glyphs.map((glyph): RingLetter => {
    const scale = emMm / font.unitsPerEm;
    const wide = font.advanceOf(glyph) * scale;
    const atMm = along + wide / 2;
    along += wide;
    return { atMm, outlines: outlines(font, glyph).map((contour) => contour.map(({ x, y }) => ({ x: x * scale - wide / 2, y: y * scale + (widthMm - highMm) / 2 }))) };
  })).filter(({ outlines: drawn }) => drawn.length > 0);
}
