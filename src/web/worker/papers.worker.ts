import './schemasWithoutEval.ts';
import regular from '@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf?url';
import italic from '@expo-google-fonts/atkinson-hyperlegible-next/400Regular_Italic/AtkinsonHyperlegibleNext_400Regular_Italic.ttf?url';
import strong from '@expo-google-fonts/atkinson-hyperlegible-next/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf?url';
import wideStrong from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import wide from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import manifold from 'manifold-3d/manifold.wasm?url';
import { type PapersMade, type PapersWanted, kindsOfPaper, makePapers } from '../../jobs/makePapers.ts';
import { type Port, serveCalls } from '../../jobs/protocol.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';

const port = globalThis as unknown as Port;

/** All that the page may ask of the worker that makes papers. */
export interface PapersDesk {
  kinds(): ReturnType<typeof kindsOfPaper>;
  make(shoot: Shoot, wanted: PapersWanted): Promise<PapersMade>;
}

const read = async (address: string): Promise<Uint8Array> => new Uint8Array(await (await fetch(address)).arrayBuffer());

/** The program that makes closed solids, fetched only where a ring is wanted. */
async function solidsMaker() {
  const [{ default: load }, wasmBinary] = await Promise.all([import('manifold-3d'), read(manifold)]);
  const solids = await load({ wasmBinary, locateFile: () => manifold } as unknown as Parameters<typeof load>[0]);
  solids.setup();
  return solids;
}

serveCalls(port, {
  kinds: kindsOfPaper,
  async make(shoot, wanted) {
    const [a, b, c, d, e] = await Promise.all([read(regular), read(strong), read(italic), read(wide), read(wideStrong)]);
    const solids = wanted.kinds.includes('rings') ? await solidsMaker() : undefined;
    return makePapers(shoot, { regular: a, strong: b, italic: c, wide: d, wideStrong: e }, wanted, (progress) => port.postMessage({ news: progress }), solids);
  },
} satisfies PapersDesk);
