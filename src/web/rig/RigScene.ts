import {
  AmbientLight, BufferGeometry, type Color, DirectionalLight, EdgesGeometry, Group, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial, PerspectiveCamera, Scene, Sphere, Vector3, WebGLRenderer, Box3,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { RigBody, RigView } from '../../jobs/views/rigView.ts';
import type { RigForces } from '../../jobs/views/rigForces.ts';
import type { Swing } from '../../jobs/views/swingView.ts';
import { type Arrow, arrowsOf, spanMm } from './arrows.ts';
import { forceArrows, seen, tipOf } from './forceArrows.ts';
import { aim, step } from './gliding.ts';
import type { ArrowPlaces } from './ForceLabels.tsx';
import { overlayLines } from './overlayLines.ts';
import { colour, groundNow, tone } from './paints.ts';
import { Pointing } from './Pointing.ts';
import { solidGeometry } from './solidGeometry.ts';
import { Swinging } from './Swinging.ts';
import { PERIOD_MS } from './swingPeriod.ts';

export type Overlay = 'labels' | 'view' | 'mass' | 'lines' | 'collisions' | 'forces' | 'swing';
export type Side = 'three quarter' | 'side' | 'top' | 'front';

export interface Shown {
  readonly view: RigView;
  readonly build: string;
  readonly selected: string | undefined;
  readonly overlays: ReadonlySet<Overlay>;
  /** The way the selected piece can be pulled, for a step of one millimetre. */
  readonly pull: Vector | undefined;
  /** Forces to draw as arrows. */
  readonly forces: RigForces | undefined;
  /** The key of the arrow that is pointed at. */
  readonly pointed: string | undefined;
  /** A swing to show, so many times as far as it is stated. */
  readonly swing: { readonly swing: Swing; readonly magnified: number } | undefined;
  /** Where in the swing it is held still, −1 to 1; or that it plays. */
  readonly held: number | 'plays';
}

/** A place on the canvas, for a label laid over it. */
export interface Spot {
  readonly key: string;
  readonly x: number;
  readonly y: number;
}

export interface SceneEvents {
  readonly pick: (ref: string | undefined) => void;
  /** The selected piece has been dragged so many millimetres along its free way, in all since it was taken up. */
  readonly drag: (mm: number, done: boolean) => void;
  /** Something was drawn: labels follow. */
  readonly drawn: () => void;
  /** How far the swing has come while it plays. */
  readonly swung: (share: number) => void;
}

/** As near to an arrow as one means it. */
const FINGER_PX = 7;

const DIRECTIONS: Readonly<Record<Side, Vector>> = { 'three quarter': [0.75, 0.5, 0.8], side: [1, 0.0001, 0], top: [0.0001, 1, 0.0002], front: [0, 0.0001, 1] };

/** The drawing in three dimensions: matt solids with clean edges, drawn only when something has changed. */
export class RigScene {
  readonly #canvas: HTMLCanvasElement;
  readonly #events: SceneEvents;
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(24, 1, 10, 20_000);
  readonly #controls: OrbitControls;
  readonly #bodies = new Map<string, Group>();
  #overlays = new Group();
  #shown: Shown | undefined;
  #framed = '';
  #asked = false;
  #gone = false;
  #swinging: Swinging | undefined;
  #swingsOf: { readonly swing: Shown['swing']; readonly ground: string | undefined } | undefined;
  readonly #pointing: Pointing;

  constructor(canvas: HTMLCanvasElement, events: SceneEvents) {
    this.#canvas = canvas;
    this.#events = events;
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    const key = new DirectionalLight(0xffffff, 1.6);
    key.position.set(0.6, 1, 0.5);
    this.#scene.add(new AmbientLight(0xffffff, 1.7), key, this.#overlays);
    this.#controls = new OrbitControls(this.#camera, canvas);
    this.#controls.addEventListener('change', () => this.draw());
    this.#pointing = new Pointing(canvas, this.#camera, this.#controls, { bodies: () => [...this.#bodies.values()], pullable: () => (this.#shown?.swing === undefined ? this.#shown : undefined), events });
  }

  /** Shows a state of the rig; pieces that were there before glide to their new places. */
  show(shown: Shown): void {
    this.#endSwing(shown);
    const glide = this.#shown !== undefined && shown.swing === undefined && !matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.#shown = shown;
    const wanted = shown.view.bodies.filter(({ build }) => build === shown.build);
    const gone = [...this.#bodies.keys()].filter((ref) => !wanted.some((body) => body.ref === ref));
    for (const ref of gone) this.#drop(ref);
    for (const body of wanted) this.#place(body, glide);
    this.#overlays.removeFromParent();
    this.#overlays.traverse((one) => one instanceof Mesh && (one.geometry as BufferGeometry).dispose());
    this.#overlays = overlayLines(shown, colour);
    if (shown.forces !== undefined) this.#overlays.add(forceArrows(arrowsOf(shown.forces, shown.selected), { span: spanMm(shown.forces), moments: shown.selected !== undefined, pointed: shown.pointed, paint: colour }));
    this.#scene.add(this.#overlays);
    this.#beginSwing(shown);
    if (this.#framed !== shown.build) this.look('three quarter');
    this.draw();
  }

  /** Looks at the whole build from a side. */
  look(side: Side): void {
    const box = new Box3();
    for (const body of this.#bodies.values()) box.expandByObject(body);
    if (box.isEmpty()) return;
    this.#framed = this.#shown?.build ?? '';
    const sphere = box.getBoundingSphere(new Sphere());
    const distance = (sphere.radius * 0.96) / Math.tan((this.#camera.fov * Math.PI) / 360) / Math.min(1, this.#camera.aspect);
    this.#controls.target.copy(sphere.center);
    this.#camera.position.copy(sphere.center).addScaledVector(new Vector3(...DIRECTIONS[side]).normalize(), distance);
    this.#camera.near = Math.max(1, distance - sphere.radius * 4);
    this.#camera.far = distance + sphere.radius * 12;
    this.#camera.updateProjectionMatrix();
    this.#controls.update();
    this.draw();
  }

  resize(width: number, height: number): void {
    this.#renderer.setSize(width, height, false);
    this.#camera.aspect = width / Math.max(1, height);
    this.#camera.updateProjectionMatrix();
    this.draw();
  }

  /** Where pieces are on the canvas, for labels laid over it. */
  labels(): Spot[] {
    return [...this.#bodies].map(([ref, body]) => ({ key: ref, ...this.#onCanvas(new Box3().setFromObject(body).getCenter(new Vector3())) }));
  }

  /** Where the arrows that are drawn end, and how far the rig reaches to either side, for labels beside it. */
  arrowPlaces(): ArrowPlaces {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    const corners = [...this.#bodies.values()].flatMap((body) => cornersOf(new Box3().setFromObject(body))).map((corner) => this.#onCanvas(corner).x);
    return { width, height, left: Math.min(width / 2, ...corners), right: Math.max(width / 2, ...corners), tips: this.#arrows().map(({ key, tip }) => ({ key, ...this.#onCanvas(tip) })) };
  }

  /** The arrow that passes under a place on the canvas. */
  arrowAt(x: number, y: number): string | undefined {
    const near = this.#arrows().map(({ key, arrow, tip }) => ({ key, px: fromStretch({ x, y }, this.#onCanvas(new Vector3(...arrow.atMm)), this.#onCanvas(tip)) }));
    return near.filter(({ px }) => px < FINGER_PX).toSorted((a, b) => a.px - b.px)[0]?.key;
  }

  #arrows(): { readonly key: string; readonly arrow: Arrow; readonly tip: Vector3 }[] {
    const { forces, selected } = this.#shown ?? {};
    if (forces === undefined) return [];
    const arrows = arrowsOf(forces, selected);
    const strongestN = Math.max(...arrows.map(({ forceN }) => Math.hypot(...forceN)), 1e-9);
    return seen(arrows).map((arrow) => ({ key: arrow.key, arrow, tip: tipOf(arrow, spanMm(forces), strongestN) }));
  }

  #onCanvas(at: Vector3): { readonly x: number; readonly y: number } {
    const { clientWidth, clientHeight } = this.#canvas;
    const { x, y } = at.project(this.#camera);
    return { x: ((x + 1) / 2) * clientWidth, y: ((1 - y) / 2) * clientHeight };
  }

  #beginSwing({ swing, held, view }: Shown): void {
    if (swing !== undefined && this.#swinging === undefined) {
      const roles = new Map(view.bodies.map(({ ref, role }) => [ref, role]));
      this.#swinging = new Swinging(this.#bodies, view, swing, { ghost: colour('--line'), edge: colour('--ink'), fillOf: (ref) => tone(roles.get(ref) ?? 'support') });
      this.#swingsOf = { swing, ground: groundNow() };
      this.#scene.add(this.#swinging.group);
    }
    if (held !== 'plays') this.#swinging?.pose(held);
  }

  /** A swing lasts until another is shown, or the rig it belongs to is no longer there. */
  #endSwing({ swing, view, build }: Shown): void {
    const same = swing !== undefined && swing === this.#swingsOf?.swing && groundNow() === this.#swingsOf.ground && view === this.#shown?.view && build === this.#shown.build;
    if (this.#swinging === undefined || same) return;
    this.#swinging.end();
    this.#swinging = undefined;
  }

  /** Says whether a swing plays on. */
  #play(time: number): boolean {
    if (this.#swinging === undefined || this.#shown?.held !== 'plays') return false;
    const share = Math.sin((2 * Math.PI * time) / PERIOD_MS);
    this.#swinging.pose(share);
    this.#events.swung(share);
    return true;
  }

  /** Asks for one drawing at the next frame. */
  draw(): void {
    if (this.#asked) return;
    this.#asked = true;
    requestAnimationFrame((time) => {
      this.#asked = false;
      if (this.#gone) return;
      if ([this.#glide(time), this.#play(time)].includes(true)) this.draw();
      this.#renderer.render(this.#scene, this.#camera);
      this.#events.drawn();
    });
  }

  dispose(): void {
    this.#gone = true;
    this.#pointing.dispose();
    this.#controls.dispose();
    for (const ref of this.#bodies.keys()) this.#drop(ref);
    this.#renderer.dispose();
  }

  #drop(ref: string): void {
    const body = this.#bodies.get(ref);
    body?.traverse((part) => {
      if (part instanceof Mesh || part instanceof LineSegments) (part.geometry as BufferGeometry).dispose();
    });
    body?.removeFromParent();
    this.#bodies.delete(ref);
  }

  #place(body: RigBody, glide: boolean): void {
    const before = this.#bodies.get(body.ref);
    const shape = JSON.stringify(body.solids.map(({ solid }) => solid));
    const group = before?.userData['shape'] === shape ? before : this.#make(body, shape);
    const tint = this.#tint(body);
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
    this.#bodies.set(ref, group);
    this.#scene.add(group);
    return group;
  }

  #tint({ ref, role }: RigBody): { fill: Color; edge: Color } {
    const { selected, overlays, view, forces } = this.#shown ?? {};
    const hit = overlays?.has('collisions') === true && view?.collisions.some(({ a, b }) => a === ref || b === ref) === true;
    if (selected === ref) return { fill: colour('--accent').lerp(colour('--ground'), forces === undefined ? 0.35 : 0.75), edge: colour('--accent') };
    if (hit) return { fill: colour('--fails-fill'), edge: colour('--fails') };
    // Pale under arrows, so that the arrows stand out.
    return forces === undefined ? { fill: tone(role), edge: colour('--ink') } : { fill: tone(role).lerp(colour('--ground'), 0.6), edge: colour('--line') };
  }

  /** Moves what is on its way; says whether anything still is. */
  #glide(time: number): boolean {
    let moving = false;
    for (const group of this.#bodies.values()) {
      for (const one of group.children) moving = step(one, time) || moving;
    }
    return moving;
  }
}

const cornersOf = ({ min, max }: Box3): Vector3[] => [min.x, max.x].flatMap((x) => [min.y, max.y].flatMap((y) => [min.z, max.z].map((z) => new Vector3(x, y, z))));

interface Place {
  readonly x: number;
  readonly y: number;
}

/** How far a place is from a stretch between two others. */
function fromStretch({ x, y }: Place, a: Place, b: Place): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / Math.max(dx * dx + dy * dy, 1e-9)));
  return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
}
