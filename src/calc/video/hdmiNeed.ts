import { HDMI_LEVELS } from '../../standards/hdmiLevels.ts';
import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';
import { bitDepthInput, samplingInput, type BitDepth, type Sampling } from './sampling.ts';

export interface HdmiNeed {
  linkGbps: number;
  hdmiLevel: string | null;
}

/** What a picture needs of an HDMI link, and the smallest level that carries it. */
export const hdmiNeed = calculator(
  {
    name: 'video.hdmiNeed',
    sentence: 'Rate of an HDMI link that a picture needs, coding included, and the smallest level that carries it.',
    inputs: inputs({
      pixelClockMHz: positive('MHz', 'pixel clock, blanking included'),
      sampling: samplingInput,
      bitDepth: bitDepthInput,
    }),
    results: {
      linkGbps: 'Gb/s, all lanes together, 10 bits sent for 8 as up to level 2.0',
      hdmiLevel: 'smallest level that carries it: 1.4, 2.0 or 2.1; null: none does without compression',
    },
    formula:
      'need = clock · bits · 10/8; bits a pixel: 4:4:4 3·depth, 4:2:2 always 24, 4:2:0 1.5·depth. Carried to 10.2 (1.4) and 18.0 Gb/s (2.0); ' +
      '2.1: clock · bits ≤ 48 · 16/18. 4:2:0 is defined from 2.0 on',
    source: 'HDMI 1.4, 2.0 and 2.1 as in published tables',
    examples: [
      {
        given: { pixelClockMHz: 297, sampling: '4:4:4', bitDepth: 8 }, gives: { linkGbps: '8.91', hdmiLevel: '1.4' },
        source: 'published tables: 2160p30',
      },
      {
        given: { pixelClockMHz: 297, sampling: '4:4:4', bitDepth: 10 }, gives: { linkGbps: '11.1375', hdmiLevel: '2.0' },
        source: 'published tables: 2160p30',
      },
      {
        given: { pixelClockMHz: 297, sampling: '4:4:4', bitDepth: 12 }, gives: { linkGbps: '13.365', hdmiLevel: '2.0' },
        source: 'published tables: 2160p30',
      },
      {
        given: { pixelClockMHz: 594, sampling: '4:4:4', bitDepth: 8 }, gives: { linkGbps: '17.82', hdmiLevel: '2.0' },
        source: 'published tables: 2160p60',
      },
      { given: { pixelClockMHz: 594, sampling: '4:4:4', bitDepth: 10 }, gives: { hdmiLevel: '2.1' }, source: 'published tables: 2160p60' },
      {
        given: { pixelClockMHz: 594, sampling: '4:2:2', bitDepth: 12 }, gives: { linkGbps: '17.82', hdmiLevel: '2.0' },
        source: 'published tables: 2160p60',
      },
      {
        given: { pixelClockMHz: 594, sampling: '4:2:0', bitDepth: 8 }, gives: { linkGbps: '8.91', hdmiLevel: '2.0' },
        source: 'published tables: 2160p60',
      },
    ],
  },
  ({ pixelClockMHz, sampling, bitDepth }): HdmiNeed => {
    const pictureGbps = (pixelClockMHz * bitsPerPixel(sampling, bitDepth)) / 1000;
    const level = HDMI_LEVELS.find(
      ({ rateGbps, share, carries420 }) => pictureGbps <= rateGbps * share * (1 + 1e-9) && (carries420 || sampling !== '4:2:0'),
    );
    return { linkGbps: (pictureGbps * 10) / 8, hdmiLevel: level?.name ?? null };
  },
);

/** 4:2:2 travels in a slot of 24 bits whatever its depth. */
function bitsPerPixel(sampling: Sampling, bitDepth: BitDepth): number {
  return { '4:4:4': 3 * bitDepth, '4:2:2': 24, '4:2:0': 1.5 * bitDepth }[sampling];
}
