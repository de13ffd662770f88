import { needOf } from './carriage.ts';
import type { Picture } from './picture.ts';
import type { WiredLine, WiredPort } from './wiring.ts';
import { HDMI_LEVELS } from '../../standards/hdmiLevels.ts';
import { sameRate } from '../../standards/signalMapping.ts';

/**
 * The picture that two ends of an HDMI line agree on where the sender does not fix one: the largest that both list, at the
 * project's rate, and that both levels carry. `undefined` where there is nothing to agree on.
 */
export function negotiated(port: WiredPort, line: WiredLine | undefined, frameRateHz: number): Picture | undefined {
  const [ours, theirs] = [port.port.video, line?.to.port.video];
  if (ours?.signal !== 'HDMI' || theirs?.signal !== 'HDMI') return undefined;
  const [first, second] = ours.accepts === undefined ? [theirs.accepts, undefined] : [ours.accepts, theirs.accepts];
  const common = (first ?? []).filter((one) => second === undefined || second.some((other) => other.widthPx === one.widthPx && other.heightPx === one.heightPx));
  const pictures = common
    .filter(({ ratesHz, interlaced }) => interlaced !== true && ratesHz.some((rate) => sameRate(rate, frameRateHz)))
    .map(({ widthPx, heightPx }): Picture => ({ widthPx, heightPx, frameRateHz, interlaced: false, segmented: false, mapping: undefined, sampling: '4:2:2', bitDepth: 8 }))
    .filter((picture) => carriedBy(picture, ours.level) && carriedBy(picture, theirs.level));
  return pictures.toSorted((a, b) => b.widthPx * b.heightPx - a.widthPx * a.heightPx)[0];
}

function carriedBy(picture: Picture, level: string): boolean {
  const need = needOf(picture);
  if (typeof need === 'string' || need.hdmiLevel === null) return false;
  const names: readonly string[] = HDMI_LEVELS.map(({ name }) => name);
  return names.indexOf(need.hdmiLevel) <= names.indexOf(level);
}
