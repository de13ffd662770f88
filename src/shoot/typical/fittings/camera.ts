import { type Fit, box, point, screw, size, tapped } from './fitting.ts';

/** Bodies that take power off a block are the larger ones: width, height and length. Common practice. */
const CINEMA = [120, 115, 120] as const;
const SMALL = [130, 95, 60] as const;

/** The mount where its flange says; below it a thread, on top a thread or, on small ones, a shoe. */
export const body: Fit = ({ body: own, ports }) => {
  const flangeMm = size(own?.flangeMm, 18);
  const cinema = ports?.['sdi-out'] !== undefined;
  const [width, height, length] = cinema ? CINEMA : SMALL;
  const middle = flangeMm - length / 2;
  return {
    points: {
      mount: point('lens mount', [0, 0, flangeMm], 'forward', { ...(own?.mount === undefined ? {} : { class: own.mount }), sex: 'female' }),
      base: tapped([0, -height / 2, middle], 'down', '1/4-20', cinema ? { pins: true } : {}),
      top: cinema ? tapped([0, height / 2, middle], 'up') : point('shoe', [0, height / 2, middle], 'up', { sex: 'female' }),
      ...(cinema ? { back: tapped([0, 0, flangeMm - length], 'back', '1/4-20', { screws: 2 }) } : {}),
    },
    solids: [box([width, height, length], [0, 0, middle])],
  };
};

/** A floor, a roof and two walls, open ahead and behind, round a cinema body; the roof reaches to its back. */
export const cage: Fit = () => ({
  points: {
    body: screw([0, 0, 0], 'up', '1/4-20', { pins: true, contactMm: [3, 18] }),
    base: tapped([0, -8, 0], 'down', '1/4-20', { pins: true }),
    top: tapped([0, 128, 0], 'up', '1/4-20', { pins: true }),
    front: tapped([0, 128, 35], 'up'),
    left: tapped([78, 60, 0], 'left'),
    right: tapped([-78, 60, 0], 'right'),
    back: tapped([0, 124, -64], 'back', '1/4-20', { screws: 2 }),
  },
  solids: [
    box([156, 8, 90], [0, -4, 0], 'floor'), box([156, 8, 109], [0, 124, -9.5], 'roof'), box([8, 120, 30], [74, 60, 0], 'left wall'), box([8, 120, 30], [-74, 60, 0], 'right wall'),
  ],
});
