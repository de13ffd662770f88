import {
  AmbientLight, BufferGeometry, Color, DirectionalLight, EdgesGeometry, Group, LineBasicMaterial, LineSegments, Matrix4, Mesh, MeshLambertMaterial, type Object3D, PerspectiveCamera, Plane, Quaternion, Raycaster, Scene, Sphere, Vector2,
  Vector3, WebGLRenderer, Box3,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Transform, Vector } from '../../assembly/placing/Transform.ts';
import type { RigBody, RigView, Role } from '../../jobs/views/rigView.ts';
import { overlayLines } from './overlayLines.ts';
import { solidGeometry } from './solidGeometry.ts';

export type Overlay = 'labels' | 'view' | 'mass' | 'lines' | 'collisions';
export type Side = 'three quarter' | 'side' | 'top' | 'front';

export interface Shown {
  readonly view: RigView;
  readonly build: string;
  readonly selected: string | undefined;
  readonly overlays: ReadonlySet<Overlay>;
  /** The way the selected piece can be pulled, for a step of one millimetre. */
  readonly pull: Vector | undefined;
}

export interface SceneEvents {
  readonly pick: (ref: string | undefined) => void;
  /** The selected piece has been dragged so many millimetres along its free way, in all since it was taken up. */
  readonly drag: (mm: number, done: boolean) => void;
  /** Something was drawn: labels follow. */
  readonly drawn: () => void;
}

const MOVE_MS = 180;
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
  #held: { readonly from: Vector3; readonly along: Vector3; readonly plane: Plane } | undefined;

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
    canvas.addEventListener('pointerdown', this.#down);
    canvas.addEventListener('pointermove', this.#move);
    canvas.addEventListener('pointerup', this.#up);
  }

  /** Shows a state of the rig; pieces that were there before glide to their new places. */
  show(shown: Shown): void {
    const glide = this.#shown !== undefined && !matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.#shown = shown;
    const wanted = shown.view.bodies.filter(({ build }) => build === shown.build);
    const gone = [...this.#bodies.keys()].filter((ref) => !wanted.some((body) => body.ref === ref));
    for (const ref of gone) this.#drop(ref);
    for (const body of wanted) this.#place(body, glide);
    this.#overlays.removeFromParent();
    this.#overlays = overlayLines(shown, colour);
    this.#scene.add(this.#overlays);
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
  labels(): { readonly ref: string; readonly x: number; readonly y: number }[] {
    const { clientWidth, clientHeight } = this.#canvas;
    return [...this.#bodies].map(([ref, body]) => {
      const at = new Box3().setFromObject(body).getCenter(new Vector3()).project(this.#camera);
      return { ref, x: ((at.x + 1) / 2) * clientWidth, y: ((1 - at.y) / 2) * clientHeight };
    });
  }

  /** Asks for one drawing at the next frame. */
  draw(): void {
    if (this.#asked) return;
    this.#asked = true;
    requestAnimationFrame((time) => {
      this.#asked = false;
      if (this.#glide(time)) this.draw();
      this.#renderer.render(this.#scene, this.#camera);
      this.#events.drawn();
    });
  }

  dispose(): void {
    this.#canvas.removeEventListener('pointerdown', this.#down);
    this.#canvas.removeEventListener('pointermove', this.#move);
    this.#canvas.removeEventListener('pointerup', this.#up);
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
    const { selected, overlays, view } = this.#shown ?? {};
    const hit = overlays?.has('collisions') === true && view?.collisions.some(({ a, b }) => a === ref || b === ref) === true;
    if (selected === ref) return { fill: colour('--accent').lerp(colour('--ground'), 0.35), edge: colour('--accent') };
    if (hit) return { fill: colour('--fails-fill'), edge: colour('--fails') };
    return { fill: tone(role), edge: colour('--ink') };
  }

  /** Moves what is on its way; says whether anything still is. */
  #glide(time: number): boolean {
    let moving = false;
    for (const group of this.#bodies.values()) {
      for (const one of group.children) moving = step(one, time) || moving;
    }
    return moving;
  }

  #ray(event: PointerEvent): Raycaster {
    const box = this.#canvas.getBoundingClientRect();
    const caster = new Raycaster();
    caster.setFromCamera(new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2), this.#camera);
    return caster;
  }

  #under(event: PointerEvent): { readonly ref: string; readonly point: Vector3 } | undefined {
    const [hit] = this.#ray(event).intersectObjects([...this.#bodies.values()].flatMap(({ children }) => children.filter((one) => one instanceof Mesh)), false);
    const ref = hit?.object.parent?.userData['ref'] as string | undefined;
    return hit === undefined || ref === undefined ? undefined : { ref, point: hit.point };
  }

  #start = { x: 0, y: 0 };

  #down = (event: PointerEvent): void => {
    this.#start = { x: event.clientX, y: event.clientY };
    const { selected, pull } = this.#shown ?? {};
    const hit = this.#under(event);
    if (hit === undefined || pull === undefined || hit.ref !== selected) return;
    const along = new Vector3(...pull);
    const facing = this.#camera.position.clone().sub(hit.point);
    const normal = facing.sub(along.clone().multiplyScalar(facing.dot(along) / along.lengthSq())).normalize();
    this.#held = { from: hit.point, along, plane: new Plane().setFromNormalAndCoplanarPoint(normal, hit.point) };
    this.#controls.enabled = false;
    this.#canvas.setPointerCapture(event.pointerId);
  };

  #move = (event: PointerEvent): void => {
    const mm = this.#pulled(event);
    if (mm !== undefined) this.#events.drag(mm, false);
  };

  #up = (event: PointerEvent): void => {
    const mm = this.#pulled(event);
    this.#held = undefined;
    this.#controls.enabled = true;
    const still = Math.hypot(event.clientX - this.#start.x, event.clientY - this.#start.y) < 4;
    if (mm !== undefined && !still) this.#events.drag(mm, true);
    else if (still) this.#events.pick(this.#under(event)?.ref);
  };

  /** How far along its way the piece has been pulled. */
  #pulled(event: PointerEvent): number | undefined {
    if (this.#held === undefined) return undefined;
    const { from, along, plane } = this.#held;
    const at = this.#ray(event).ray.intersectPlane(plane, new Vector3());
    return at === null ? undefined : at.sub(from).dot(along) / along.lengthSq();
  }
}

/** A colour of the page's ground, as it stands just now. */
function colour(name: string): Color {
  return new Color(getComputedStyle(document.documentElement).getPropertyValue(name).trim());
}

const TONES: Readonly<Record<Role, readonly [string, number]>> = {
  camera: ['--ink', 0.35], glass: ['--video', 0.55], screen: ['--ink', 0.6], radio: ['--control', 0.6], power: ['--power', 0.62], focus: ['--tight', 0.6], support: ['--line', 0.35],
};

const tone = (role: Role): Color => colour(TONES[role][0]).lerp(colour('--ground'), TONES[role][1]);

interface Way {
  readonly from: { readonly position: Vector3; readonly turn: Quaternion };
  readonly to: { readonly position: Vector3; readonly turn: Quaternion };
  readonly start: number;
}

function aim(object: Object3D, { r, t }: Transform, glide: boolean): void {
  const matrix = new Matrix4().set(r[0], r[1], r[2], t[0], r[3], r[4], r[5], t[1], r[6], r[7], r[8], t[2], 0, 0, 0, 1);
  const position = new Vector3();
  const turn = new Quaternion();
  matrix.decompose(position, turn, new Vector3());
  if (!glide || (position.distanceToSquared(object.position) < 1e-6 && turn.angleTo(object.quaternion) < 1e-4)) {
    delete object.userData['way'];
    object.position.copy(position);
    object.quaternion.copy(turn);
    return;
  }
  object.userData['way'] = { from: { position: object.position.clone(), turn: object.quaternion.clone() }, to: { position, turn }, start: performance.now() } satisfies Way;
}

function step(object: Object3D, time: number): boolean {
  const way = object.userData['way'] as Way | undefined;
  if (way === undefined) return false;
  const share = Math.min(1, Math.max(0, (time - way.start) / MOVE_MS));
  const eased = 1 - (1 - share) ** 3;
  object.position.lerpVectors(way.from.position, way.to.position, eased);
  object.quaternion.slerpQuaternions(way.from.turn, way.to.turn, eased);
  if (share === 1) delete object.userData['way'];
  return share < 1;
}
