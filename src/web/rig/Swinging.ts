import { type BufferGeometry, type Color, CylinderGeometry, EdgesGeometry, Group, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial, Quaternion, Vector3 } from 'three';
import type { RigView } from '../../jobs/views/rigView.ts';
import type { RodSwing, Swing } from '../../jobs/views/swingView.ts';
import { swung } from '../../jobs/views/swung.ts';
import { aim } from './gliding.ts';

const ALONG_Y = new Vector3(0, 1, 0);

interface Paints {
  readonly ghost: Color;
  readonly fillOf: (ref: string) => Color;
  readonly edge: Color;
}

/** The pieces of a rig on their swing, with their outlines where they rest. Rods are shown stretch by stretch, as they bend. */
export class Swinging {
  /** What is drawn besides the pieces themselves. */
  readonly group = new Group();
  readonly #bodies: ReadonlyMap<string, Group>;
  readonly #view: RigView;
  readonly #swing: Swing;
  readonly #magnified: number;
  readonly #rods: readonly { readonly swing: RodSwing; readonly stretches: readonly Group[] }[];

  constructor(bodies: ReadonlyMap<string, Group>, view: RigView, { swing, magnified }: { readonly swing: Swing; readonly magnified: number }, paints: Paints) {
    this.#bodies = bodies;
    this.#view = view;
    this.#swing = swing;
    this.#magnified = magnified;
    this.#rods = swing.rods.filter(({ ref }) => bodies.has(ref)).map((rod) => ({ swing: rod, stretches: rod.places.slice(1).map(() => stretch(rod.diameterMm, paints.fillOf(rod.ref), paints.edge)) }));
    const ghost = new LineBasicMaterial({ color: paints.ghost });
    for (const body of bodies.values()) this.group.add(...outline(body, ghost));
    for (const { swing: rod, stretches } of this.#rods) {
      this.group.add(...stretches);
      const whole = bodies.get(rod.ref);
      if (whole !== undefined) whole.visible = false;
    }
  }

  /** Puts every piece where it is at a share of the swing: 1 and −1 are its ends. */
  pose(share: number): void {
    const by = share * this.#magnified;
    for (const stiff of this.#swing.stiff) {
      const solids = this.#view.bodies.find(({ ref }) => ref === stiff.ref)?.solids ?? [];
      this.#bodies.get(stiff.ref)?.children.forEach((one, at) => {
        const solid = solids[Math.floor(at / 2)];
        if (solid !== undefined) aim(one, swung(stiff, solid.place, by), false);
      });
    }
    for (const { swing: { places }, stretches } of this.#rods) {
      const at = places.map(({ atMm, shiftMm }) => new Vector3(...atMm).addScaledVector(new Vector3(...shiftMm), by));
      stretches.forEach((one, k) => between(one, at[k] as Vector3, at[k + 1] as Vector3));
    }
  }

  /** Puts everything back to rest. */
  end(): void {
    this.pose(0);
    for (const { swing } of this.#rods) {
      const whole = this.#bodies.get(swing.ref);
      if (whole !== undefined) whole.visible = true;
    }
    this.group.removeFromParent();
    for (const { stretches } of this.#rods) for (const { children } of stretches) for (const one of children) (one as Mesh).geometry.dispose();
  }
}

function outline({ children }: Group, material: LineBasicMaterial): LineSegments[] {
  return children.filter((one) => one instanceof LineSegments).map((edges) => {
    const still = new LineSegments(edges.geometry as BufferGeometry, material);
    const rest = edges.userData['way'] as { to: { position: Vector3; turn: Quaternion } } | undefined;
    still.position.copy(rest?.to.position ?? edges.position);
    still.quaternion.copy(rest?.to.turn ?? edges.quaternion);
    return still;
  });
}

/** A stretch of a rod, one millimetre long until it is put between its ends. */
function stretch(diameterMm: number, fill: Color, edge: Color): Group {
  const geometry = new CylinderGeometry(diameterMm / 2, diameterMm / 2, 1, 24);
  const group = new Group();
  group.add(
    new Mesh(geometry, new MeshLambertMaterial({ color: fill, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 })),
    new LineSegments(new EdgesGeometry(geometry, 30), new LineBasicMaterial({ color: edge })),
  );
  return group;
}

function between(one: Group, from: Vector3, to: Vector3): void {
  one.position.lerpVectors(from, to, 0.5);
  one.scale.set(1, from.distanceTo(to), 1);
  one.quaternion.setFromUnitVectors(ALONG_Y, to.clone().sub(from).normalize());
}
