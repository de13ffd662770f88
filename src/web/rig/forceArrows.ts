import { BufferGeometry, type Color, ConeGeometry, CylinderGeometry, Group, Line, LineDashedMaterial, type Material, Mesh, MeshBasicMaterial, Quaternion, TorusGeometry, Vector3 } from 'three';
import { length } from '../../assembly/placing/Transform.ts';
import type { Arrow } from './arrows.ts';

type Paint = (name: string) => Color;

/** The longest arrow, as a share of the span of all places; shorter than a hair is left out, but not from the list. */
const LONGEST = 0.42;
const HAIR = 0.015;
const COLOURS: Readonly<Record<Arrow['kind'], string>> = { joint: '--accent', weight: '--quiet', wind: '--video', hand: '--ink', teeth: '--ink', ground: '--ink' };
const ALONG_Y = new Vector3(0, 1, 0);
const ALONG_Z = new Vector3(0, 0, 1);

export interface Wanted {
  readonly span: number;
  readonly moments: boolean;
  /** The arrow that is pointed at: the others step back. */
  readonly pointed: string | undefined;
  readonly paint: Paint;
}

/** Arrows over the solids, as long as their forces are strong; moments as bent arrows where they are wanted. */
export function forceArrows(arrows: readonly Arrow[], { span, moments, pointed, paint }: Wanted): Group {
  const group = new Group();
  const strongest = Math.max(...arrows.map(({ forceN }) => length(forceN)), 1e-9);
  const hardest = Math.max(...arrows.map(({ momentNm }) => length(momentNm)), 1e-9);
  for (const arrow of arrows) {
    const own = arrow.key === pointed;
    const material = new MeshBasicMaterial({ color: paint(own ? '--accent' : COLOURS[arrow.kind]), depthTest: false, transparent: true, opacity: pointed === undefined || own ? 1 : 0.25 });
    const [force, moment] = [length(arrow.forceN) / strongest, length(arrow.momentNm) / hardest];
    if (force > HAIR) group.add(straight(arrow, span, force, material));
    if ((moments || own) && moment > 0.05) group.add(bent(arrow, span * (0.03 + 0.05 * moment), material));
  }
  group.traverse((one) => (one.renderOrder = 3));
  return group;
}

/** Arrows long enough to be drawn. */
export function seen(arrows: readonly Arrow[]): Arrow[] {
  const strongest = Math.max(...arrows.map(({ forceN }) => length(forceN)), 1e-9);
  return arrows.filter(({ forceN }) => length(forceN) > HAIR * strongest);
}

/** The end of an arrow that stands free of the place where the force acts. */
export function tipOf({ atMm, forceN, kind }: Arrow, span: number, strongestN: number): Vector3 {
  const at = new Vector3(...atMm);
  return kind === 'ground' ? at.sub(new Vector3(...forceN).multiplyScalar((LONGEST * span) / strongestN)) : at.add(new Vector3(...forceN).multiplyScalar((LONGEST * span) / strongestN));
}

/** From where the force acts; what holds the rig up pushes from outside, so its arrow ends there. */
function straight({ atMm, forceN, kind }: Arrow, span: number, share: number, material: Material): Group {
  const way = new Vector3(...forceN).normalize();
  const long = LONGEST * span * share;
  const thick = span * (kind === 'ground' ? 0.009 : 0.006);
  const head = Math.min(long, span * 0.05);
  const group = new Group();
  const cone = new Mesh(new ConeGeometry(Math.max(thick * 2, head * 0.32), head, 12), material);
  cone.position.y = long - head / 2;
  group.add(cone, shaft(long - head, thick, kind, material));
  group.quaternion.copy(new Quaternion().setFromUnitVectors(ALONG_Y, way));
  group.position.set(...atMm);
  if (kind === 'ground') group.position.addScaledVector(way, -long);
  return group;
}

/** Weights are dashed lines, so that they are told from what joints do without colour. */
function shaft(long: number, thick: number, kind: Arrow['kind'], material: Material): Line | Mesh {
  if (kind !== 'weight') {
    const rod = new Mesh(new CylinderGeometry(thick, thick, long, 8), material);
    rod.position.y = long / 2;
    return rod;
  }
  const dashes = new Line(new BufferGeometry().setFromPoints([new Vector3(), new Vector3(0, long, 0)]), new LineDashedMaterial({ color: (material as MeshBasicMaterial).color, opacity: material.opacity, dashSize: 6, gapSize: 4, depthTest: false, transparent: true }));
  dashes.computeLineDistances();
  return dashes;
}

/** Three quarters of a turn about the moment's axis, right-handed. */
function bent({ atMm, momentNm }: Arrow, radius: number, material: Material): Group {
  const turn = 1.5 * Math.PI;
  const thick = radius * 0.07;
  const group = new Group();
  const cone = new Mesh(new ConeGeometry(thick * 3.2, radius * 0.55, 10), material);
  cone.position.set(radius * Math.cos(turn), radius * Math.sin(turn), 0);
  cone.quaternion.setFromUnitVectors(ALONG_Y, new Vector3(-Math.sin(turn), Math.cos(turn), 0));
  group.add(new Mesh(new TorusGeometry(radius, thick, 6, 32, turn), material), cone);
  group.quaternion.setFromUnitVectors(ALONG_Z, new Vector3(...momentNm).normalize());
  group.position.set(...atMm);
  return group;
}
