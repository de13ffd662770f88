import { setupPieces } from '../assembly/setupPieces.ts';
import { printNumber } from '../units/print.ts';
import { type Canvas, canvases } from './frames/canvases.ts';
import { type FramePicture, frameLines as drawn, frameSvg, inRaster } from './frames/framePicture.ts';
import { writeFdl } from './frames/writeFdl.ts';
import { writePng } from './frames/writePng.ts';
import { type MakingOfSetup, type PaperFile, paper, textFile } from './paper.ts';

/** Frames to load into cameras and screens, and the framing decision list. */
export const frameLines = paper({
  id: 'frame-lines',
  says: 'Frame lines and framing decision list',
  per: 'setup',
  make: (making) => {
    const found = canvases(making);
    if (found.length === 0) return [];
    const files = new Map(found.flatMap((canvas) => picturesOf(making, canvas)).flatMap(({ name, picture }): [string, PaperFile][] => [
      [`${name}.png`, { path: `${name}.png`, bytes: writePng(drawn(picture)) }],
      [`${name}.svg`, textFile(`${name}.svg`, frameSvg(picture))],
    ]));
    return [textFile(`${making.setup}/framing.fdl`, writeFdl({ label: making.shoot, context: making.setupName, canvases: found })), ...files.values()];
  },
});

/** At the camera's raster and at each screen's, squeezed and de-squeezed. */
function picturesOf({ ledger, setup, setupName, glasses }: MakingOfSetup, canvas: Canvas): { name: string; picture: FramePicture }[] {
  const rects = { frame: canvas.frame, protected: canvas.protection === 0 ? undefined : canvas.protected };
  const squeeze = `${printNumber(canvas.squeeze)}x`;
  const rasters = [
    { id: 'camera', says: `camera, ${canvas.modeName}`, widthPx: canvas.widthPx, heightPx: canvas.heightPx, grows: true },
    ...screenRasters(ledger, setup, glasses),
  ];
  const ways = canvas.squeeze === 1 ? [{ word: 'as-shot', widened: 1 }] : [{ word: `${squeeze}-squeezed`, widened: 1 }, { word: `${squeeze}-desqueezed`, widened: canvas.squeeze }];
  return rasters.flatMap(({ id, says, grows, ...size }) => ways.map(({ word, widened }) => {
    const raster = grows === true ? { widthPx: Math.round(size.widthPx * widened), heightPx: size.heightPx } : size;
    return {
      name: `${setup}/frame-lines/${id}-${raster.widthPx}x${raster.heightPx}-${word}`,
      picture: { title: `${setupName}: ${says}, ${word}`, ...raster, ...inRaster(canvas, rects, raster, widened) },
    };
  }));
}

function screenRasters(ledger: MakingOfSetup['ledger'], setup: string, glasses: readonly string[]): { id: string; says: string; widthPx: number; heightPx: number; grows?: true }[] {
  const screens = new Map(glasses.flatMap((glass) => [...setupPieces(ledger, setup, glass).values()]).filter(({ part }) => part.has('screen')).map((piece) => [piece.part.id, piece] as const));
  return [...screens].flatMap(([id, piece]) => {
    const panel = piece.part.facet('screen');
    return panel === undefined ? [] : [{ id, says: piece.part.name, widthPx: panel.widthPx, heightPx: panel.heightPx }];
  });
}
