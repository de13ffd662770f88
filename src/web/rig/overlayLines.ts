import { BufferGeometry, type Color, Group, Line, LineBasicMaterial, LineDashedMaterial, Mesh, MeshBasicMaterial, QuadraticBezierCurve3, SphereGeometry, Vector3 } from 'three';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { RigView } from '../../jobs/views/rigView.ts';
import type { Shown } from './RigScene.ts';

type Paint = (name: string) => Color;

const REACH_MM = 900;

/** Thin lines over the solids: the axis and what the camera sees, the centre of mass, cables. */
export function overlayLines({ view, build, overlays }: Shown, paint: Paint): Group {
  const group = new Group();
  if (overlays.has('view') && view.sees?.build === build) group.add(...sight(view.sees, paint));
  if (overlays.has('mass')) group.add(...masses(view, build, paint));
  if (overlays.has('lines')) group.add(...view.lines.filter((line) => line.build === build).map((line) => cable(line, paint)));
  return group;
}

/** The optical axis, and the edges of the view from the sensor on. */
function sight({ acrossDeg, upDeg }: NonNullable<RigView['sees']>, paint: Paint): Line[] {
  const [x, y] = [Math.tan((acrossDeg * Math.PI) / 180) * REACH_MM, Math.tan((upDeg * Math.PI) / 180) * REACH_MM];
  const corners: Vector[] = [[x, y, REACH_MM], [-x, y, REACH_MM], [-x, -y, REACH_MM], [x, -y, REACH_MM]];
  const axis = new LineDashedMaterial({ color: paint('--accent'), dashSize: 12, gapSize: 6 });
  const edge = new LineBasicMaterial({ color: paint('--line') });
  const through = line([[0, 0, -80], [0, 0, REACH_MM]], axis);
  through.computeLineDistances();
  return [through, ...corners.map((corner) => line([[0, 0, 0], corner], edge)), line([...corners, corners[0] ?? [0, 0, 0]], edge)];
}

function masses(view: RigView, build: string, paint: Paint): (Line | Mesh)[] {
  const material = new MeshBasicMaterial({ color: paint('--accent'), depthTest: false });
  const thin = new LineBasicMaterial({ color: paint('--accent'), depthTest: false });
  return view.masses.filter((one) => one.build === build).flatMap(({ centreMm: [x, y, z] }) => {
    const ball = new Mesh(new SphereGeometry(6, 16, 12), material);
    ball.position.set(x, y, z);
    ball.renderOrder = 2;
    return [ball, line([[x - 60, y, z], [x + 60, y, z]], thin), line([[x, y, z - 60], [x, y, z + 60]], thin), line([[x, y, z], [x, y - 400, z]], thin)];
  });
}

/** A cable hangs a little. */
function cable({ kind, from, to }: RigView['lines'][number], paint: Paint): Line {
  const [a, b] = [new Vector3(...from), new Vector3(...to)];
  const middle = a.clone().lerp(b, 0.5);
  middle.y -= 0.25 * a.distanceTo(b) + 15;
  const geometry = new BufferGeometry().setFromPoints(new QuadraticBezierCurve3(a, middle, b).getPoints(24));
  const material = kind === 'video' ? new LineBasicMaterial({ color: paint('--video') }) : new LineDashedMaterial({ color: paint(`--${kind}`), dashSize: kind === 'power' ? 10 : 3, gapSize: 4 });
  const drawn = new Line(geometry, material);
  drawn.computeLineDistances();
  return drawn;
}

function line(points: readonly Vector[], material: LineBasicMaterial | LineDashedMaterial): Line {
  return new Line(new BufferGeometry().setFromPoints(points.map((point) => new Vector3(...point))), material);
}
