import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Press, SolidsMaker } from '../papers/paper.ts';
import type { PaperSize } from '../papers/sheet/look.ts';
import { Fonts } from '../papers/type/Fonts.ts';
import type { System } from '../units/print.ts';
import type { World } from './World.ts';

const TEXT = '@expo-google-fonts/atkinson-hyperlegible-next';
const FILES = {
  regular: `${TEXT}/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf`,
  strong: `${TEXT}/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf`,
  italic: `${TEXT}/400Regular_Italic/AtkinsonHyperlegibleNext_400Regular_Italic.ttf`,
  wide: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  wideStrong: 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
} as const;

/** A press with the fonts of this installation and the date of today. */
export async function pressFor(world: Pick<World, 'today'>, { paper, system }: { paper: PaperSize; system: System }): Promise<Press> {
  return { fonts: openFonts(), paper, system, date: dayOf(world.today()), solids: await solidsMaker() };
}

/** The papers' fonts. */
export function openFonts(): Fonts {
  const { resolve } = createRequire(import.meta.url);
  const read = (file: string): Uint8Array => readFileSync(resolve(file));
  return new Fonts({ regular: read(FILES.regular), strong: read(FILES.strong), italic: read(FILES.italic), wide: read(FILES.wide), wideStrong: read(FILES.wideStrong) });
}

/** The program that makes closed solids, from this installation. */
export async function solidsMaker(): Promise<SolidsMaker> {
  const wasmBinary = readFileSync(createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm'));
  const { default: load } = await import('manifold-3d');
  // It asks for a place to look although it is handed the program.
  const solids = await load({ wasmBinary, locateFile: () => '' } as unknown as Parameters<typeof load>[0]);
  solids.setup();
  return solids;
}

/** The day where the user is. */
function dayOf(date: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
