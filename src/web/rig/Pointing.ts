import { type Group, Mesh, type PerspectiveCamera, Plane, Raycaster, Vector2, Vector3 } from 'three';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { SceneEvents, Shown } from './RigScene.ts';

interface Pointed {
  readonly bodies: () => readonly Group[];
  /** What is chosen and how it can be pulled; nothing where nothing may be. */
  readonly pullable: () => Pick<Shown, 'selected' | 'pull'> | undefined;
  readonly events: Pick<SceneEvents, 'pick' | 'drag'>;
}

/** What a finger or mouse does to the drawing beside turning it: chooses a piece, and drags the one chosen along its way. */
export class Pointing {
  readonly #canvas: HTMLCanvasElement;
  readonly #camera: PerspectiveCamera;
  readonly #controls: OrbitControls;
  readonly #pointed: Pointed;
  #held: { readonly from: Vector3; readonly along: Vector3; readonly plane: Plane } | undefined;
  #start = { x: 0, y: 0 };

  constructor(canvas: HTMLCanvasElement, camera: PerspectiveCamera, controls: OrbitControls, pointed: Pointed) {
    this.#canvas = canvas;
    this.#camera = camera;
    this.#controls = controls;
    this.#pointed = pointed;
    canvas.addEventListener('pointerdown', this.#down);
    canvas.addEventListener('pointermove', this.#move);
    canvas.addEventListener('pointerup', this.#up);
  }

  dispose(): void {
    this.#canvas.removeEventListener('pointerdown', this.#down);
    this.#canvas.removeEventListener('pointermove', this.#move);
    this.#canvas.removeEventListener('pointerup', this.#up);
  }

  #ray(event: PointerEvent): Raycaster {
    const box = this.#canvas.getBoundingClientRect();
    const caster = new Raycaster();
    caster.setFromCamera(new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2), this.#camera);
    return caster;
  }

  #under(event: PointerEvent): { readonly ref: string; readonly point: Vector3 } | undefined {
    const [hit] = this.#ray(event).intersectObjects(this.#pointed.bodies().flatMap(({ children }) => children.filter((one) => one instanceof Mesh)), false);
    const ref = hit?.object.parent?.userData['ref'] as string | undefined;
    return hit === undefined || ref === undefined ? undefined : { ref, point: hit.point };
  }

  #down = (event: PointerEvent): void => {
    this.#start = { x: event.clientX, y: event.clientY };
    const { selected, pull } = this.#pointed.pullable() ?? {};
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
    if (mm !== undefined) this.#pointed.events.drag(mm, false);
  };

  #up = (event: PointerEvent): void => {
    const mm = this.#pulled(event);
    this.#held = undefined;
    this.#controls.enabled = true;
    const still = Math.hypot(event.clientX - this.#start.x, event.clientY - this.#start.y) < 4;
    if (mm !== undefined && !still) this.#pointed.events.drag(mm, true);
    else if (still) this.#pointed.events.pick(this.#under(event)?.ref);
  };

  /** How far along its way the piece has been pulled. */
  #pulled(event: PointerEvent): number | undefined {
    if (this.#held === undefined) return undefined;
    const { from, along, plane } = this.#held;
    const at = this.#ray(event).ray.intersectPlane(plane, new Vector3());
    return at === null ? undefined : at.sub(from).dot(along) / along.lengthSq();
  }
}
