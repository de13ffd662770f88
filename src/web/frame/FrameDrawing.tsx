import type { CanvasRect } from '../../check/quantities/deliveryFrame.ts';
import type { BlockLight, FrameView } from '../../jobs/views/frameView.ts';

/** The recorded area with circle and lines, in millimetres on the sensor; widened, as it is seen. A circle in the scene shows what the squeeze does. */
export function FrameDrawing({ frame, widened, title }: { readonly frame: FrameView; readonly widened: boolean; readonly title: string }) {
  const wide = widened ? frame.squeeze : 1;
  const { sensorWidthMm: width, sensorHeightMm: height } = frame;
  const reach = Math.max(width, height, frame.imageCircleMm ?? 0) * 0.53;
  const reachY = Math.max(height, Math.min(frame.imageCircleMm ?? 0, height * 2)) * 0.53;
  const box = (rect: CanvasRect) => ({
    x: (rect.xPx / frame.canvasWidthPx - 0.5) * width * wide, y: (rect.yPx / frame.canvasHeightPx - 0.5) * height,
    width: (rect.widthPx / frame.canvasWidthPx) * width * wide, height: (rect.heightPx / frame.canvasHeightPx) * height,
  });
  const inner = box(frame.frame);
  const ball = Math.min(inner.height * 0.34, (inner.width / wide) * 0.34 * frame.squeeze);
  return (
    <figure className="frame-drawing">
      <svg viewBox={`${-reach * wide} ${-reachY} ${2 * reach * wide} ${2 * reachY}`} role="img" aria-label={`The frame ${title}`}>
        <rect className="outside" x={(-width / 2) * wide} y={-height / 2} width={width * wide} height={height} />
        <rect className="inside" {...inner} />
        {frame.light !== undefined && <Shade light={frame.light} width={width * wide} height={height} />}
        <ellipse className="ball" rx={(ball / frame.squeeze) * wide} ry={ball} />
        <path className="cross" d={`M${-inner.width / 2} 0h${inner.width}M0 ${-inner.height / 2}v${inner.height}`} />
        <rect className="guarded" {...box(frame.guarded)} />
        <rect className="frame-line" {...inner} />
        <rect className="sensor" x={(-width / 2) * wide} y={-height / 2} width={width * wide} height={height} />
        {frame.imageCircleMm !== undefined && <ellipse className="circle" rx={(frame.imageCircleMm / 2) * wide} ry={frame.imageCircleMm / 2} />}
      </svg>
      <figcaption>{title}</figcaption>
    </figure>
  );
}

/** Where the block lets less light through: the darker, the less. The quarter is mirrored to all four corners. */
function Shade({ light: { columns, rows, shares }, width, height }: { readonly light: BlockLight; readonly width: number; readonly height: number }) {
  const [w, h] = [width / 2 / columns, height / 2 / rows];
  return (
    <g className="shade">
      {shares.flatMap((share, at) => {
        if (share > 0.995) return [];
        const [x, y] = [(at % columns) * w, Math.floor(at / columns) * h];
        return [[x, y], [-x - w, y], [x, -y - h], [-x - w, -y - h]].map(([left, top]) => <rect key={`${left} ${top}`} x={left} y={top} width={w} height={h} opacity={(1 - share) * 0.85} />);
      })}
    </g>
  );
}
