import { NoAnswer } from '../../calc/calculator.ts';
import { type Signal, signal } from '../../calc/video/signal.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { Port } from '../../shoot/schema/electrics.ts';
import { HDMI_LEVELS } from '../../standards/hdmiLevels.ts';
import { SDI_LEVELS } from '../../standards/sdiLevels.ts';
import { sameRate } from '../../standards/signalMapping.ts';
import type { Picture } from './picture.ts';
import type { WiredLine, WiredPort } from './wiring.ts';

/** Why a line does not carry a picture, or its far end does not take it. */
export type Refusal =
  /** `needs` is `null` where no level carries it at all. */
  | { readonly kind: 'level'; readonly needs: string | null; readonly has: string; readonly where: WiredPort | PartView }
  | { readonly kind: 'unknown level'; readonly level: string; readonly where: WiredPort | PartView }
  | { readonly kind: 'unknown raster'; readonly says: string }
  | { readonly kind: 'raster' | 'rate' | 'fields'; readonly port: WiredPort }
  | { readonly kind: 'mapping'; readonly sent: string; readonly port: WiredPort }
  | { readonly kind: 'sampling'; readonly sent: string; readonly port: WiredPort };

/** Everything that keeps a picture from passing a line, from what it needs at all to how it is laid out. */
export function refusals(line: WiredLine, picture: Picture): Refusal[] {
  const { from, to, cable } = line;
  const kind = to.port.video?.signal ?? from.port.video?.signal ?? 'SDI';
  const needed = needOf(picture);
  if (typeof needed === 'string') return [{ kind: 'unknown raster', says: needed }];
  const need = kind === 'SDI' ? needed.sdiLevel : needed.hdmiLevel;
  const cableLevel = kind === 'HDMI' ? cable?.facet('cable')?.hdmiLevel : undefined;
  const links: [WiredPort | PartView, string | undefined][] = [[from, from.port.video?.level], [to, to.port.video?.level]];
  if (cable !== undefined && cableLevel !== undefined) links.push([cable, cableLevel]);
  const levels = links.flatMap(([where, level]) => (level === undefined ? [] : tooLow(kind, need, level, where)));
  return [...levels, ...(takesRaster(to.port, picture) ?? []).map((what): Refusal => ({ kind: what, port: to })), ...layout(to, picture, need)];
}

/** What a picture needs of a line, or in words why that cannot be told. */
export function needOf({ mapping: _mapping, segmented: _segmented, ...picture }: Picture): Signal | string {
  try {
    return signal(picture);
  } catch (thrown) {
    if (thrown instanceof NoAnswer) return thrown.message;
    throw thrown;
  }
}

function tooLow(kind: 'SDI' | 'HDMI', need: string | null, level: string, where: WiredPort | PartView): Refusal[] {
  const names: readonly string[] = (kind === 'SDI' ? SDI_LEVELS : HDMI_LEVELS).map(({ name }) => name);
  const has = names.indexOf(level.replace(/^HDMI /i, ''));
  if (has < 0) return [{ kind: 'unknown level', level, where }];
  return need !== null && names.indexOf(need) <= has ? [] : [{ kind: 'level', needs: need, has: level, where }];
}

/** What of a picture a port does not take; nothing where it takes it or does not say. */
export function takesRaster({ video }: Port, picture: Picture): ('raster' | 'rate' | 'fields')[] | undefined {
  const listed = video?.accepts;
  if (listed === undefined) return undefined;
  const sized = listed.filter(({ widthPx, heightPx }) => widthPx === picture.widthPx && heightPx === picture.heightPx);
  if (sized.length === 0) return ['raster'];
  const timed = sized.filter(({ ratesHz }) => ratesHz.some((rate) => sameRate(rate, picture.frameRateHz)));
  if (timed.length === 0) return ['rate'];
  return timed.some(({ interlaced = false }) => interlaced === picture.interlaced) ? [] : ['fields'];
}

/** Layout matters on a serial line of the 3G level, and where frames are sent in segments. */
function layout(to: WiredPort, picture: Picture, need: string | null): Refusal[] {
  const { mappings, samplings } = to.port.video ?? {};
  const refused: Refusal[] = [];
  if (mappings !== undefined && picture.segmented && !mappings.includes('segmented')) refused.push({ kind: 'mapping', sent: 'segmented', port: to });
  if (mappings !== undefined && need === '3G' && picture.mapping !== undefined && !mappings.includes(picture.mapping)) refused.push({ kind: 'mapping', sent: picture.mapping, port: to });
  if (samplings !== undefined && !samplings.includes(picture.sampling)) refused.push({ kind: 'sampling', sent: picture.sampling, port: to });
  return refused;
}

/** Where a line may carry the picture or not: the far end takes one layout only, and the sender does not say which it sends. */
export function layoutOpen({ to }: WiredLine, picture: Picture): boolean {
  const mappings = to.port.video?.mappings?.filter((one) => one !== 'segmented');
  if (mappings === undefined || mappings.length !== 1 || picture.mapping !== undefined) return false;
  const need = needOf(picture);
  return typeof need !== 'string' && need.sdiLevel === '3G';
}
