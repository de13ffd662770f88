import { Document, WebIO } from '@gltf-transform/core';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import type { Part } from '../../shoot/schema/part.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type WorldSolid, worldSolids } from '../../assembly/space/worldSolids.ts';
import { cross, quaternionOf, unit } from '../../assembly/placing/Transform.ts';

/**
 * A placed setup with one of its glasses as binary glTF 2.0: metres, +Y up, +Z to the subject; one node a piece under its name, one
 * material a kind of part. Stations stand beside the camera, two metres apart.
 */
export async function rigGltf(ledger: Ledger, setup: string, glass: string): Promise<Uint8Array> {
  const document = new Document();
  const buffer = document.createBuffer();
  const title = (ledger.at(`setups/${setup}/name`) as string | undefined) ?? setup;
  const scene = document.createScene(`${title}, ${(ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass}`);
  const solids = worldSolids(ledger, setup, glass);
  const builds = [...new Set(solids.map(({ piece }) => piece.build))];
  const materials = new Map<string, ReturnType<Document['createMaterial']>>();
  const materialFor = (kind: Part['kind']) => {
    const known = materials.get(kind) ?? document.createMaterial(kind).setBaseColorFactor([...TONES[kind] ?? GREY, 1]).setMetallicFactor(0).setRoughnessFactor(0.9);
    materials.set(kind, known);
    return known;
  };
  for (const ref of new Set(solids.map(({ piece }) => piece.ref))) {
    const own = solids.filter(({ piece }) => piece.ref === ref);
    const piece = (own[0] as WorldSolid).piece;
    const node = document.createNode(piece.name).setTranslation([builds.indexOf(piece.build) * 2, 0, 0]).setExtras({ piece: ref, build: piece.build });
    for (const world of own) node.addChild(solidNode(document, world).setMesh(meshOf(document, buffer, world, materialFor(piece.part.kind))));
    scene.addChild(node);
  }
  return new WebIO().writeBinary(document);
}

const GREY: Tone = [0.55, 0.55, 0.53];
type Tone = readonly [number, number, number];
/** Quiet tones by function. */
const TONES: Partial<Record<Part['kind'], Tone>> = {
  body: [0.22, 0.24, 0.27], lens: [0.36, 0.4, 0.45], block: [0.36, 0.4, 0.45], focuser: [0.36, 0.4, 0.45], motor: [0.5, 0.42, 0.3], monitor: [0.3, 0.38, 0.4], battery: [0.42, 0.38, 0.3], rod: [0.7, 0.7, 0.68],
};

function solidNode(document: Document, { place, solid }: WorldSolid) {
  return document.createNode(solid.name ?? solid.shape).setTranslation([place.t[0] / 1000, place.t[1] / 1000, place.t[2] / 1000]).setRotation(quaternionOf(place));
}

function meshOf(document: Document, buffer: ReturnType<Document['createBuffer']>, { solid }: WorldSolid, material: ReturnType<Document['createMaterial']>) {
  const { positions, normals, indices } = solidMesh(solid);
  const accessor = (type: 'VEC3' | 'SCALAR', array: Float32Array | Uint16Array) => document.createAccessor().setType(type).setArray(array as Float32Array<ArrayBuffer>).setBuffer(buffer);
  const primitive = document.createPrimitive()
    .setAttribute('POSITION', accessor('VEC3', new Float32Array(positions.map((mm) => mm / 1000))))
    .setAttribute('NORMAL', accessor('VEC3', new Float32Array(normals)))
    .setIndices(accessor('SCALAR', new Uint16Array(indices)))
    .setMaterial(material);
  return document.createMesh(solid.name ?? solid.shape).addPrimitive(primitive);
}

/** A solid as triangles about its own middle, mm; flat faces, outward and anticlockwise. */
export interface SolidMesh {
  readonly positions: readonly number[];
  readonly normals: readonly number[];
  readonly indices: readonly number[];
}

const SIDES = 48;

export function solidMesh(solid: Solid): SolidMesh {
  const mesh = { positions: [] as number[], normals: [] as number[], indices: [] as number[] };
  const face = (corners: readonly (readonly number[])[]): void => {
    const normal = faceNormal(corners);
    const first = mesh.positions.length / 3;
    for (const corner of corners) {
      mesh.positions.push(...corner);
      mesh.normals.push(...normal);
    }
    for (let at = 2; at < corners.length; at += 1) mesh.indices.push(first, first + at - 1, first + at);
  };
  if (solid.shape === 'box') boxFaces(solid.sizeMm).forEach(face);
  else roundFaces(solid.along, solid.diameterMm / 2, solid.shape === 'tube' ? solid.boreMm / 2 : 0, solid.lengthMm / 2).forEach(face);
  return mesh;
}

/** The way out of a flat face of three or four corners. */
function faceNormal(corners: readonly (readonly number[])[]): [number, number, number] {
  const [a, b, c, d = a] = corners as [Corner, Corner, Corner, Corner?];
  const [u, v]: Corner[] = [[c[0] - a[0], c[1] - a[1], c[2] - a[2]], [d[0] - b[0], d[1] - b[1], d[2] - b[2]]];
  const normal = cross(u as Corner, v as Corner);
  return unit(normal, [0, 0, 1]) as [number, number, number];
}

type Corner = [number, number, number];

function boxFaces([x, y, z]: readonly number[]): number[][][] {
  const at = (i: number, j: number, k: number) => [(i * (x ?? 0)) / 2, (j * (y ?? 0)) / 2, (k * (z ?? 0)) / 2];
  return [
    [at(1, -1, -1), at(1, 1, -1), at(1, 1, 1), at(1, -1, 1)], [at(-1, -1, -1), at(-1, -1, 1), at(-1, 1, 1), at(-1, 1, -1)],
    [at(-1, 1, -1), at(-1, 1, 1), at(1, 1, 1), at(1, 1, -1)], [at(-1, -1, -1), at(1, -1, -1), at(1, -1, 1), at(-1, -1, 1)],
    [at(-1, -1, 1), at(1, -1, 1), at(1, 1, 1), at(-1, 1, 1)], [at(-1, -1, -1), at(-1, 1, -1), at(1, 1, -1), at(1, -1, -1)],
  ];
}

function roundFaces(along: 'x' | 'y' | 'z', outer: number, bore: number, half: number): number[][][] {
  const at = (radius: number, step: number, end: number) => {
    const angle = (2 * Math.PI * step) / SIDES;
    const [a, b, c] = [radius * Math.cos(angle), radius * Math.sin(angle), end * half];
    return along === 'z' ? [a, b, c] : along === 'x' ? [c, a, b] : [b, c, a];
  };
  return Array.from({ length: SIDES }, (_, step) => [
    [at(outer, step, -1), at(outer, step + 1, -1), at(outer, step + 1, 1), at(outer, step, 1)],
    [at(bore, step, 1), at(outer, step, 1), at(outer, step + 1, 1), ...(bore > 0 ? [at(bore, step + 1, 1)] : [])],
    [at(bore, step, -1), ...(bore > 0 ? [at(bore, step + 1, -1)] : []), at(outer, step + 1, -1), at(outer, step, -1)],
    ...(bore > 0 ? [[at(bore, step, -1), at(bore, step, 1), at(bore, step + 1, 1), at(bore, step + 1, -1)]] : []),
  ]).flat();
}
