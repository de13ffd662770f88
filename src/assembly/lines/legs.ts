import { type Figure, assume } from '../../shoot/ledger/figures.ts';
import type { CameraMode } from '../../shoot/schema/optics.ts';
import { lines as assumed } from '../../standards/assumptions/lines.ts';
import { type SetupPiece, pieceSetting } from '../setupPieces.ts';
import { refusals, takesRaster } from './carriage.ts';
import { isSound } from './lineFaults.ts';
import { radioMode } from './nets.ts';
import { negotiated } from './negotiated.ts';
import type { Dark, Leg, LegDelay, Picture } from './picture.ts';
import type { WiredLine, WiredPort } from './wiring.ts';

type CameraOutput = NonNullable<CameraMode['outputs']>[string];

const BARE = { before: undefined, port: undefined, line: undefined, mode: undefined, picture: undefined, dark: undefined, delay: undefined, desqueezedBy: [] } as const;

/** A place without anything before it that could send. */
export function sourceLeg(piece: SetupPiece, port: WiredPort | undefined, dark: Dark): Leg {
  return { ...BARE, kind: 'source', piece, port, dark };
}

/** What a camera sends from an output while it records in a mode. */
export function cameraLeg(port: WiredPort, mode: string, frameRateHz: number, line: WiredLine | undefined): Leg {
  const { piece } = port;
  const path = `${mode}/outputs/${port.id}`;
  const output = piece.part.read(path) as CameraOutput | undefined;
  const leg = { ...BARE, kind: 'camera' as const, piece, port };
  if (output === undefined) return { ...leg, dark: { kind: 'not entered', missing: [{ part: piece.part, path }] } };
  if (!output.live) return { ...leg, dark: { kind: 'dead output', port } };
  const rateHz = piece.part.figure(`${path}/frameRateHz`)?.value ?? frameRateHz;
  const picture = output.widthPx !== undefined && output.heightPx !== undefined ? pictureOf({ ...output, widthPx: output.widthPx, heightPx: output.heightPx }, rateHz) : negotiated(port, line, rateHz);
  const dark: Dark | undefined = picture === undefined ? { kind: 'not entered', missing: [{ part: piece.part, path: `${path}/widthPx` }, { part: piece.part, path: `${path}/heightPx` }] } : undefined;
  return { ...leg, picture, dark, delay: delayAt(piece, `${path}/delayMs`), desqueezedBy: output.desqueezed === true ? [piece] : [] };
}

function pictureOf(output: CameraOutput & { widthPx: number; heightPx: number }, frameRateHz: number): Picture {
  const { widthPx, heightPx, interlaced = false, segmented = false, mapping, sampling = '4:2:2', bitDepth = 10 } = output;
  return { widthPx, heightPx, frameRateHz, interlaced, segmented, mapping, sampling, bitDepth: bitDepth >= 12 ? 12 : bitDepth >= 10 ? 10 : 8 };
}

/** A cable into an input. */
export function cableLeg(before: Leg | undefined, line: WiredLine | undefined, port: WiredPort): Leg {
  const leg = { ...BARE, kind: 'cable' as const, piece: port.piece, port, line, before, desqueezedBy: before?.desqueezedBy ?? [] };
  if (line === undefined) return { ...leg, dark: { kind: 'unfed', port } };
  if (before === undefined || !isSound(line)) return { ...leg, dark: { kind: 'unsound line', line } };
  const { picture } = before;
  if (picture === undefined) return { ...leg, dark: before.dark };
  const refused = refusals(line, picture);
  return refused.length > 0 ? { ...leg, dark: { kind: 'refused', line, picture, refusals: refused } } : { ...leg, picture };
}

/** Through a device to one of its outputs. A device without inputs, with rasters it makes, is a source of its own. */
export function deviceLeg(before: Leg | undefined, port: WiredPort, frameRateHz: number): Leg {
  const { piece, id } = port;
  const video = port.port.video;
  const leg = { ...BARE, kind: 'device' as const, piece, port, before };
  if (before === undefined) {
    const own = video?.accepts?.[0];
    if (own === undefined) return { ...leg, kind: 'source', dark: { kind: 'passes nothing on', port } };
    return { ...leg, kind: 'source', picture: pictureOf({ live: true, ...own }, own.ratesHz[0] ?? frameRateHz) };
  }
  const desqueezedBy = video?.desqueezes === true ? [...before.desqueezedBy, piece] : before.desqueezedBy;
  const delay = passingDelay(before, port);
  if (before.picture === undefined) return { ...leg, dark: before.dark, delay, desqueezedBy };
  const made = remade(before.picture, port);
  const unable = takesRaster(port.port, made) ?? [];
  const dark: Dark | undefined = unable.length > 0 ? { kind: 'cannot make', port, picture: made } : undefined;
  return { ...leg, picture: dark === undefined ? made : undefined, dark, delay, desqueezedBy };

  function passingDelay(from: Leg, to: WiredPort): LegDelay {
    const entered = piece.part.figure(`ports/${id}/video/delayMs`);
    if (entered !== undefined) return { figure: entered };
    if (from.kind === 'air') return { figure: nothing(piece, id) };
    const changes = from.port?.port.video?.signal !== to.port.video?.signal || video?.scalesTo !== undefined || video?.desqueezes === true;
    return { figure: assume(piece.part.ledger, changes ? assumed.converterDelayMs : assumed.loopDelayMs) };
  }
}

/** A receiver's delay is told with the transmitter's mode; its output adds none of its own. */
const nothing = (piece: SetupPiece, id: string): Figure => ({ value: 0, low: 0, high: 0, unit: 'ms', basis: piece.part.basis, path: `${piece.part.path}/ports/${id}/video/delayMs` });

function remade(picture: Picture, { port: { video } }: WiredPort): Picture {
  const { widthPx, heightPx } = video?.scalesTo ?? picture;
  const sampling = video?.samplings === undefined || video.samplings.includes(picture.sampling) ? picture.sampling : (video.samplings[0] ?? picture.sampling);
  const mapping = video?.signal === 'SDI' && video.mappings?.length === 1 && video.mappings[0] !== 'segmented' ? video.mappings[0] : picture.mapping;
  return { ...picture, widthPx, heightPx, sampling, mapping };
}

/** Over the air, in the one mode that the transmitter has for all its receivers. */
export function airLeg(before: Leg | undefined, transmitter: SetupPiece | undefined, receiver: SetupPiece): Leg {
  const leg = { ...BARE, kind: 'air' as const, piece: receiver, before, desqueezedBy: before?.desqueezedBy ?? [] };
  if (pieceSetting(receiver, 'net') === undefined) return { ...leg, dark: { kind: 'no net', piece: receiver } };
  if (transmitter === undefined) return { ...leg, dark: { kind: 'no transmitter', piece: receiver } };
  const mode = radioMode(transmitter);
  if (mode === undefined) return { ...leg, dark: { kind: 'no mode set', piece: transmitter } };
  const linked = { ...leg, mode, delay: airDelay(transmitter, receiver, mode) };
  const apart = modesApart(transmitter, receiver, mode);
  if (apart !== undefined) return { ...linked, dark: { kind: apart, transmitter, receiver, mode } };
  if (before === undefined) return { ...linked, dark: { kind: 'no transmitter', piece: receiver } };
  const { picture } = before;
  if (picture === undefined) return { ...linked, dark: before.dark };
  const path = `radio/modes/${mode}`;
  const mostHz = transmitter.part.figure(`${path}/maxFrameRateHz`)?.value ?? Infinity;
  if (picture.frameRateHz > mostHz * (1 + 1e-6)) return { ...linked, dark: { kind: 'too many frames', transmitter, receiver, mode } };
  return { ...linked, picture: sentPicture(picture, transmitter, path) };
}

function modesApart(transmitter: SetupPiece, receiver: SetupPiece, mode: string): 'mode unknown to the receiver' | 'set to another mode' | 'another band' | undefined {
  const [sends, takes] = [transmitter.part, receiver.part];
  if (takes.read(`radio/modes/${mode}`) === undefined) return 'mode unknown to the receiver';
  const set = pieceSetting(receiver, 'mode');
  if (set !== undefined && set !== mode) return 'set to another mode';
  const [a, b] = [sends.figure('radio/bandMHz')?.value, takes.figure('radio/bandMHz')?.value];
  return a !== undefined && b !== undefined && Math.abs(a - b) > 0.2 * a ? 'another band' : undefined;
}

/** A mode never sends more lines than it has, and never makes more of fewer. */
function sentPicture(picture: Picture, { part }: SetupPiece, path: string): Picture {
  const widthPx = part.read(`${path}/widthPx`) as number | undefined;
  const heightPx = part.read(`${path}/heightPx`) as number | undefined;
  const whole = { ...picture, mapping: undefined, segmented: false, interlaced: false };
  if (widthPx === undefined || heightPx === undefined || heightPx >= picture.heightPx) return whole;
  return { ...whole, widthPx, heightPx };
}

function airDelay(transmitter: SetupPiece, receiver: SetupPiece, mode: string): LegDelay {
  const path = `radio/modes/${mode}/delayMs`;
  const figure = transmitter.part.figure(path) ?? receiver.part.figure(path);
  return figure === undefined ? { missing: { part: transmitter.part, path } } : { figure };
}

function delayAt(piece: SetupPiece, path: string): LegDelay {
  const figure = piece.part.figure(path);
  return figure === undefined ? { missing: { part: piece.part, path } } : { figure };
}
