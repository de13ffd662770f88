import { type Fit, box, point, size, tapped } from './fitting.ts';

/** Larger screens stand on a stand's stud. Common practice. */
const ON_A_STAND_MM = 300;

/** Round the panel a frame of 8 mm, and 25 mm deep, as where only the panel is known; the foot below its middle. */
export const monitor: Fit = ({ screen: own }) => {
  const [diagonal, across, down] = [size(own?.diagonalMm, 127), size(own?.widthPx, 1920), size(own?.heightPx, 1080)];
  const scale = diagonal / Math.hypot(across, down);
  const [width, height] = [across * scale + 16, down * scale + 16];
  const foot = [0, -height / 2, 0] as const;
  return {
    points: { foot: diagonal > ON_A_STAND_MM ? point('spud', [...foot], 'down', { class: '16 mm', sex: 'female', tool: 'hand' }) : tapped([...foot], 'down') },
    solids: [box([width, height, 25], [0, 0, 0])],
  };
};

export const radio: Fit = ({ massG }) => {
  // The lighter, the smaller: near a gram to the 1.2 cm³ (common practice).
  const depth = Math.min(40, Math.max(20, size(massG, 200) / 10));
  return { points: { foot: tapped([0, 0, 0], 'down') }, solids: [box([70, 100, depth], [0, 50, 0])] };
};
