import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface Frame {
  xPx: number;
  yPx: number;
  widthPx: number;
  heightPx: number;
  usedFraction: number;
  desqueezedAspect: number;
}

/** The frame in canvas pixels, unrounded: whoever draws it chooses how to round, and a frame may be framed again. */
export const frame = calculator(
  {
    name: 'picture.frame',
    sentence: 'The largest centred frame of a delivery aspect in a recorded canvas, which may be squeezed.',
    inputs: inputs({
      canvasWidthPx: positive('px', 'width of the canvas as recorded'),
      canvasHeightPx: positive('px', 'height of the canvas as recorded'),
      squeeze: positive('ratio', 'how many times the picture is widened on viewing; 1 for spherical'),
      aspect: positive('ratio', 'width to height of the delivered picture'),
    }),
    results: {
      xPx: 'px, left edge of the frame from the left of the canvas',
      yPx: 'px, upper edge of the frame from the top of the canvas',
      widthPx: 'px, recorded width of the frame, before it is widened',
      heightPx: 'px, height of the frame',
      usedFraction: 'share of the canvas area inside the frame',
      desqueezedAspect: 'width to height of the whole canvas once widened',
    },
    formula: 'W·s/H against the aspect a: where it is wider, height = H and width = a·H/s; else width = W and height = W·s/a. Centred, unrounded',
    source: 'Geometry; the frame of the ASC Framing Decision List with protection 0, before its rounding',
    examples: [
      {
        given: { canvasWidthPx: 4096, canvasHeightPx: 2160, squeeze: 1, aspect: 2.39 },
        gives: { widthPx: '4096', heightPx: '1713.8', xPx: '0' },
        source: '4096/2.39; the DCI scope container is 1716 high by decree, not by this division',
      },
      {
        given: { canvasWidthPx: 4448, canvasHeightPx: 3096, squeeze: 1, aspect: 2 },
        gives: { widthPx: '4448', heightPx: '2224', xPx: '0', yPx: '436' },
        source: 'ASC Framing Decision List, a published 2:1 case, its protected frame',
      },
      {
        given: { canvasWidthPx: 4096, canvasHeightPx: 3432, squeeze: 2, aspect: 2.39 },
        gives: { widthPx: '4096', heightPx: '3427.6', xPx: '0' },
        source: 'ASC Framing Decision List, a published squeezed case: 4096 × 3428 once rounded up to even',
      },
    ],
  },
  ({ canvasWidthPx, canvasHeightPx, squeeze, aspect }): Frame => {
    const desqueezedAspect = (canvasWidthPx * squeeze) / canvasHeightPx;
    const cutsSides = desqueezedAspect > aspect;
    const widthPx = cutsSides ? (aspect * canvasHeightPx) / squeeze : canvasWidthPx;
    const heightPx = cutsSides ? canvasHeightPx : (canvasWidthPx * squeeze) / aspect;
    return {
      xPx: (canvasWidthPx - widthPx) / 2,
      yPx: (canvasHeightPx - heightPx) / 2,
      widthPx,
      heightPx,
      usedFraction: cutsSides ? aspect / desqueezedAspect : desqueezedAspect / aspect,
      desqueezedAspect,
    };
  },
);
