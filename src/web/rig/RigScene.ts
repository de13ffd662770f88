import { AmbientLight, Box3, type BufferGeometry, DirectionalLight, Group, Mesh, PerspectiveCamera, Scene, Sphere, Vector3, WebGLRenderer } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { RigForces } from '../../jobs/views/rigForces.ts';
import type { RigView } from '../../jobs/views/rigView.ts';
import type { Swing } from '../../jobs/views/swingView.ts';
import { arrowsOf, spanMm } from './arrows.ts';
import { Bodies } from './Bodies.ts';
import type { ArrowPlaces } from './ForceLabels.tsx';
import { forceArrows } from './forceArrows.ts';
import { overlayLines } from './overlayLines.ts';
import { colour, groundNow, tone } from './paints.ts';
import { Pointing } from './Pointing.ts';
import { type OnCanvas, arrowUnder, shownArrows } from './shownArrows.ts';
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
export interface Spot extends OnCanvas {
  readonly key: string;
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

const DIRECTIONS: Readonly<Record<Side, Vector>> = { 'three quarter': [0.75, 0.5, 0.8], side: [1, 0.0001, 0], top: [0.0001, 1, 0.0002], front: [0, 0.0001, 1] };

/** The drawing in three dimensions: matt solids with clean edges, drawn only when something has changed. */
export class RigScene {
  readonly #canvas: HTMLCanvasElement;
  readonly #events: SceneEvents;
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(24, 1, 10, 20_000);
  readonly #controls: OrbitControls;
  readonly #bodies = new Bodies(this.#scene);
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
    this.#pointing = new Pointing(canvas, this.#camera, this.#controls, { bodies: () => [...this.#bodies.groups.values()], pullable: () => (this.#shown?.swing === undefined ? this.#shown : undefined), events });
  }

  /** Shows a state of the rig; pieces that were there before glide to their new places. */
  show(shown: Shown): void {
    this.#endSwing(shown);
    const glide = this.#shown !== undefined && shown.swing === undefined && !matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.#shown = shown;
    this.#bodies.show(shown, glide);
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
    const box = this.#bodies.box();
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
    return [...this.#bodies.groups].map(([ref, body]) => ({ key: ref, ...this.#onCanvas(new Box3().setFromObject(body).getCenter(new Vector3())) }));
  }

  /** Where the arrows that are drawn end, and how far the rig reaches to either side, for labels beside it. */
  arrowPlaces(): ArrowPlaces {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    const corners = [...this.#bodies.groups.values()].flatMap((body) => cornersOf(new Box3().setFromObject(body))).map((corner) => this.#onCanvas(corner).x);
    return { width, height, left: Math.min(width / 2, ...corners), right: Math.max(width / 2, ...corners), tips: shownArrows(this.#shown ?? NOTHING).map(({ key, tip }) => ({ key, ...this.#onCanvas(tip) })) };
  }

  /** The arrow that passes under a place on the canvas. */
  arrowAt(x: number, y: number): string | undefined {
    return arrowUnder({ x, y }, shownArrows(this.#shown ?? NOTHING), (at) => this.#onCanvas(at));
  }

  #onCanvas(at: Vector3): OnCanvas {
    const { clientWidth, clientHeight } = this.#canvas;
    const { x, y } = at.project(this.#camera);
    return { x: ((x + 1) / 2) * clientWidth, y: ((1 - y) / 2) * clientHeight };
  }

  #beginSwing({ swing, held, view }: Shown): void {
    if (swing !== undefined && this.#swinging === undefined) {
      const roles = new Map(view.bodies.map(({ ref, role }) => [ref, role]));
      this.#swinging = new Swinging(this.#bodies.groups, view, swing, { ghost: colour('--line'), edge: colour('--ink'), fillOf: (ref) => tone(roles.get(ref) ?? 'support') });
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
      if ([this.#bodies.glide(time), this.#play(time)].includes(true)) this.draw();
      this.#renderer.render(this.#scene, this.#camera);
      this.#events.drawn();
    });
  }

  dispose(): void {
    this.#gone = true;
    this.#pointing.dispose();
    this.#controls.dispose();
    this.#bodies.dispose();
    this.#renderer.dispose();
  }
}

const NOTHING = { forces: undefined, selected: undefined };

const cornersOf = ({ min, max }: Box3): Vector3[] => [min.x, max.x].flatMap((x) => [min.y, max.y].flatMap((y) => [min.z, max.z].map((z) => new Vector3(x, y, z))));
