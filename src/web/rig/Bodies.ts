import { Box3, type BufferGeometry, type Color, EdgesGeometry, Group, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial, type Scene } from 'three';
import type { RigBody } from '../../jobs/views/rigView.ts';
import { aim, step } from './gliding.ts';
import { colour, tone } from './paints.ts';
import type { Shown } from './RigScene.ts';
import { solidGeometry } from './solidGeometry.ts';

/** The pieces of the build shown, as they stand in the scene: each a group of solids with their edges. */
export class Bodies {
  readonly #scene: Scene;
  readonly #groups = new Map<string, Group>();

  constructor(scene: Scene) {
    this.#scene = scene;
  }

  get groups(): ReadonlyMap<string, Group> {
    return this.#groups;
  }

  /** Puts every piece in its place, or on its way there; what is no longer there goes. */
  show(shown: Shown, glide: boolean): void {
    const wanted = shown.view.bodies.filter(({ build }) => build === shown.build);
    const gone = [...this.#groups.keys()].filter((ref) => !wanted.some((body) => body.ref === ref));
    for (const ref of gone) this.#drop(ref);
    for (const body of wanted) this.#place(body, tintOf(body, shown), glide);
  }

  /** The box round them all. */
  box(): Box3 {
    const box = new Box3();
    for (const group of this.#groups.values()) box.expandByObject(group);
    return box;
  }

  /** Moves what is on its way; says whether anything still is. */
  glide(time: number): boolean {
    let moving = false;
    for (const group of this.#groups.values()) {
      for (const one of group.children) moving = step(one, time) || moving;
    }
    return moving;
  }

  dispose(): void {
    for (const ref of this.#groups.keys()) this.#drop(ref);
  }

  #drop(ref: string): void {
    const group = this.#groups.get(ref);
    group?.traverse((part) => {
      if (part instanceof Mesh || part instanceof LineSegments) (part.geometry as BufferGeometry).dispose();
    });
    group?.removeFromParent();
    this.#groups.delete(ref);
  }

  #place(body: RigBody, tint: Tint, glide: boolean): void {
    const before = this.#groups.get(body.ref);
    const shape = JSON.stringify(body.solids.map(({ solid }) => solid));
    const group = before?.userData['shape'] === shape ? before : this.#make(body, shape);
    group.children.forEach((one, at) => {
      const solid = body.solids[Math.floor(at / 2)];
      if (solid !== undefined) aim(one, solid.place, glide && before === group);
      if (one instanceof Mesh) (one.material as MeshLambertMaterial).color.copy(tint.fill);
      else if (one instanceof LineSegments) (one.material as LineBasicMaterial).color.copy(tint.edge);
    });
  }

  #make({ ref, solids }: RigBody, shape: string): Group {
    this.#drop(ref);
    const group = new Group();
    group.userData = { ref, shape };
    for (const { solid, coarse } of solids) {
      const geometry = solidGeometry(solid);
      const mesh = new Mesh(geometry, new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1, transparent: coarse, opacity: coarse ? 0.55 : 1 }));
      group.add(mesh, new LineSegments(new EdgesGeometry(geometry, 30), new LineBasicMaterial()));
    }
    this.#groups.set(ref, group);
    this.#scene.add(group);
    return group;
  }
}

interface Tint {
  readonly fill: Color;
  readonly edge: Color;
}

function tintOf({ ref, role }: RigBody, { selected, overlays, view, forces }: Shown): Tint {
  const hit = overlays.has('collisions') && view.collisions.some(({ a, b }) => a === ref || b === ref);
  if (selected === ref) return { fill: colour('--accent').lerp(colour('--ground'), forces === undefined ? 0.35 : 0.75), edge: colour('--accent') };
  if (hit) return { fill: colour('--fails-fill'), edge: colour('--fails') };
  // Pale under arrows, so that the arrows stand out.
  return forces === undefined ? { fill: tone(role), edge: colour('--ink') } : { fill: tone(role).lerp(colour('--ground'), 0.6), edge: colour('--line') };
}
