import { findRaster, knownRasters } from '../../standards/rasters.ts';
import { smallestSdiLevel } from '../../standards/sdiLevels.ts';
import { NoAnswer, calculator } from '../calculator.ts';
import { flag, inputs, positive, whole } from '../inputs.ts';
import { hdmiNeed } from './hdmiNeed.ts';
import { SAMPLES_PER_PIXEL, bitDepthInput, samplingInput, type BitDepth, type Sampling } from './sampling.ts';

export interface Signal {
  totalWidthPx: number;
  totalHeightPx: number;
  pixelClockMHz: number;
  payloadGbps: number;
  sdiLevel: string | null;
  sdiGbps: number | null;
  hdmiLevel: string | null;
}

/** What a picture needs of a video line. Active pixels alone would flatter it: 2.488 instead of 2.97 Gb/s for 1080p60. */
export const signal = calculator(
  {
    name: 'video.signal',
    sentence: 'Totals with blanking, clock and payload of a video raster, and the smallest SDI and HDMI levels that carry it on one cable.',
    inputs: inputs({
      widthPx: whole(1, 'px', 'picture width'),
      heightPx: whole(1, 'px', 'picture height, both fields together'),
      frameRateHz: positive('Hz', 'frames (not fields) a second; 23.98 and 23.976 mean 24/1.001'),
      interlaced: flag('sent as two fields'),
      sampling: samplingInput,
      bitDepth: bitDepthInput,
    }),
    results: {
      totalWidthPx: 'px, samples a line, blanking included',
      totalHeightPx: 'px, lines a frame, blanking included',
      pixelClockMHz: 'MHz',
      payloadGbps: 'Gb/s, blanking included',
      sdiLevel: 'smallest SDI level for one link: SD, HD, 3G, 6G or 12G; null: none carries it',
      sdiGbps: 'Gb/s, rate on that link, over 1.001 where the picture runs so; null: none carries it',
      hdmiLevel: 'smallest HDMI level: 1.4, 2.0 or 2.1; null: none carries it without compression',
    },
    formula:
      'clock = total width · total height · frame rate; payload = clock · samples · depth; samples a pixel: 4:2:2 2, 4:4:4 3, 4:2:0 1.5. ' +
      'SDI sends 8 bits in words of 10, and 4:2:0 in the room of 4:2:2. HDMI as in video.hdmiNeed',
    source: 'SMPTE ST 259, 274, 292-1, 296, 424, 425-1, 2081-10, 2082-10; CTA-861; HDMI levels as in published tables',
    examples: [
      {
        given: { widthPx: 1920, heightPx: 1080, frameRateHz: 60, interlaced: false, sampling: '4:2:2', bitDepth: 10 },
        gives: {
          totalWidthPx: '2200', totalHeightPx: '1125', pixelClockMHz: '148.5', payloadGbps: '2.970', sdiLevel: '3G', sdiGbps: '2.970',
          hdmiLevel: '1.4',
        },
        source: 'SMPTE ST 274, ST 424, ST 425-1',
      },
      {
        given: { widthPx: 3840, heightPx: 2160, frameRateHz: 30, interlaced: false, sampling: '4:4:4', bitDepth: 10 },
        gives: { totalWidthPx: '4400', totalHeightPx: '2250', pixelClockMHz: '297', sdiLevel: '12G', sdiGbps: '11.88', hdmiLevel: '2.0' },
        source: 'SMPTE ST 2082-10; HDMI as in published tables',
      },
    ],
  },
  ({ sampling, bitDepth, ...asked }): Signal => {
    const found = findRaster(asked);
    if (found === undefined) throw unknownRaster(asked);
    const { totalWidthPx, totalHeightPx, frameRateHz } = found.raster;
    const slower = frameRateHz / found.exactRateHz;
    const pixelClockMHz = (totalWidthPx * totalHeightPx * found.exactRateHz) / 1e6;
    const level = smallestSdiLevel((pixelClockMHz * slower * sdiBitsPerPixel(sampling, bitDepth)) / 1000);
    return {
      totalWidthPx, totalHeightPx, pixelClockMHz,
      payloadGbps: (pixelClockMHz * SAMPLES_PER_PIXEL[sampling] * bitDepth) / 1000,
      sdiLevel: level?.name ?? null,
      sdiGbps: level === undefined ? null : level.rateGbps / slower,
      hdmiLevel: hdmiNeed({ pixelClockMHz, sampling, bitDepth }).hdmiLevel,
    };
  },
);

/** SDI knows words of 10 bits (12 in some layouts), and gives 4:2:0 the room of 4:2:2 (ST 2081-12:2019, scope, maps both alike). */
function sdiBitsPerPixel(sampling: Sampling, bitDepth: BitDepth): number {
  return (sampling === '4:4:4' ? 3 : 2) * Math.max(10, bitDepth);
}

function unknownRaster(asked: { widthPx: number; heightPx: number; frameRateHz: number; interlaced: boolean }): NoAnswer {
  const shown = `${asked.widthPx} × ${asked.heightPx}${asked.interlaced ? ' interlaced' : ''} at ${asked.frameRateHz} frames a second`;
  const sizeKnown = findRasterOfSize(asked);
  const known = `Known, multiples of 24 and 30 also over 1.001: ${knownRasters()}.`;
  return new NoAnswer(sizeKnown ? 'frameRateHz' : 'widthPx', `Found ${shown}, which is no known raster. ${known}`);
}

function findRasterOfSize(asked: { widthPx: number; heightPx: number; interlaced: boolean }): boolean {
  return [24, 25, 30].some((frameRateHz) => findRaster({ ...asked, frameRateHz }) !== undefined);
}
