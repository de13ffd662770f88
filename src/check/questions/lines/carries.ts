import { layoutOpen, needOf } from '../../../assembly/lines/carriage.ts';
import { hdmiNeed } from '../../../calc/video/hdmiNeed.ts';
import { videoTrace } from '../../../assembly/lines/videoTrace.ts';
import { isSound } from '../../../assembly/lines/lineFaults.ts';
import { hdmiLevel } from '../../../standards/hdmiLevels.ts';
import { sdiLevel } from '../../../standards/sdiLevels.ts';
import { LOOKALIKES, signalMapping } from '../../../standards/signalMapping.ts';
import type { Mend, Side } from '../../answer.ts';
import { judgeYes } from '../../judge.ts';
import { lineName, pictureName, refusalWords } from '../../quantities/lineWords.ts';
import { eachLine, lineOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import type { Refusal } from '../../../assembly/lines/carriage.ts';
import type { Picture } from '../../../assembly/lines/picture.ts';
import type { WiredLine, WiredPort } from '../../../assembly/lines/wiring.ts';

export const carries = question({
  id: 'lines.carries',
  asks: 'Does the picture pass every line, and does the far end take it?',
  kind: 'immediate',
  explains:
    'A picture needs a rate that follows from its raster with blanking, its frame rate, sampling and depth; sender, cable and receiver must all have that level. The far end must list the size and the rate ' +
    '(23.976 is not 24), whole or interlaced, and take the layout: level A or B, segments, sampling. Where a device lists nothing it is taken to accept all that its level carries.',
  sources: ['SMPTE ST 259, 292-1, 424, 425-1, 2081-10, 2082-10', 'HDMI levels as in published tables', 'CTA-861'],
  subjects: (ledger) => eachLine(ledger, 'video'),
  ask: (asking, subject) => {
    const line = lineOf(asking, subject);
    const { setup, glass } = withGlass(asking.ledger, subject);
    const trace = videoTrace(asking.ledger, setup, glass);
    const picture = trace.at.get(line.from.key)?.picture;
    const arrives = trace.at.get(line.to.key);
    if (picture === undefined || !isSound(line) || arrives?.line?.key !== line.key) return null;
    const refused = arrives.dark?.kind === 'refused' ? arrives.dark.refusals : [];
    const open = layoutOpen(line, picture);
    const [name, where] = [pictureName(picture), lineName(line)];
    const sides = sidesOf(line, picture);
    return judgeYes({
      yes: refused.length === 0,
      caution: open,
      says: {
        holds: `${name} passes from ${where}.`,
        tight: `${name} passes from ${where} if both are set to the same layout, level A or B.`,
        fails: `${name} does not pass from ${where}: ${refused[0] === undefined ? '' : refusalWords(refused[0])}.`,
      },
      ...sides,
      steps: refused.slice(1).map((refusal) => ({ says: refusalWords(refusal) })),
      mends: refused.flatMap((refusal) => cures(refusal, picture)),
    });
  },
});

/** Rate needed, and the rate of the slower of the two sockets. */
function sidesOf({ from, to }: WiredLine, picture: Picture): { needs?: Side; has?: Side } {
  const need = needOf(picture);
  if (typeof need === 'string') return {};
  const isSdi = to.port.video?.signal === 'SDI';
  const rateOf = (name: string | null) => (isSdi ? sdiLevel(name ?? '') : hdmiLevel(name ?? ''))?.rateGbps;
  const slower = slowerOf(from, to, rateOf);
  const level = isSdi ? need.sdiLevel : need.hdmiLevel;
  const needsGbps = isSdi ? (need.sdiGbps ?? undefined) : hdmiNeed({ ...picture, pixelClockMHz: need.pixelClockMHz }).linkGbps;
  if (level === null || needsGbps === undefined || slower === undefined) return {};
  return {
    needs: { amount: { value: needsGbps, unit: 'Gb/s' }, from: `${picture.sampling}, ${picture.bitDepth} bit: level ${level}` },
    has: { amount: { value: slower.gbps, unit: 'Gb/s' }, from: `level ${slower.level} of ${slower.port.piece.name}` },
  };
}

function slowerOf(from: WiredPort, to: WiredPort, rateOf: (level: string) => number | undefined) {
  const rated = [from, to].flatMap((port) => {
    const level = port.port.video?.level ?? '';
    const gbps = rateOf(level);
    return gbps === undefined ? [] : { port, level, gbps };
  });
  return rated.toSorted((a, b) => a.gbps - b.gbps)[0];
}

function cures(refusal: Refusal, picture: Picture): Mend[] {
  switch (refusal.kind) {
    case 'mapping': return [{ says: (signalMapping(refusal.sent)?.cure ?? 'Set both ends alike.').replace(/\.$/, '') }];
    case 'raster': return picture.widthPx === 2048 ? [{ says: (LOOKALIKES[0]?.cure ?? '').replace(/\.$/, '') }] : listed(refusal, picture);
    case 'rate': return [{ says: (LOOKALIKES[1]?.cure ?? '').replace(/\.$/, '') }];
    case 'fields': return [{ says: 'set the sender to what the far end takes' }];
    case 'level': return refusal.needs === null ? [] : [{ says: 'set the sender to a smaller picture or a lower rate, or put a converter that scales between' }];
    default: return [];
  }
}

/** The largest size that the far end lists at this rate. */
function listed(refusal: Refusal & { kind: 'raster' | 'rate' | 'fields' }, picture: Picture): Mend[] {
  const sizes = (refusal.port.port.video?.accepts ?? []).filter(({ heightPx }) => heightPx <= picture.heightPx).toSorted((a, b) => b.heightPx - a.heightPx);
  const best = sizes[0];
  return best === undefined ? [] : [{ says: `set the sender to ${best.widthPx} × ${best.heightPx}` }];
}
