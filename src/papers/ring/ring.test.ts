import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { outsideProgram } from '../../../test/outsideTool.ts';
import { openFonts, solidsMaker } from '../../cli/press.ts';
import type { SolidsMaker } from '../paper.ts';
import { ringFiles } from './ringFiles.ts';
import { type RingWanted, ringFault } from './ringSolid.ts';

const folder = mkdtempSync(join(tmpdir(), 'ring-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const admesh = outsideProgram('admesh');
const unzip = outsideProgram('unzip');
const spacer: RingWanted = { kind: 'spacer', innerMm: 110, outerMm: 114, widthMm: 12, slitMm: 2, clearanceMm: 0.2 };

let solids: SolidsMaker;
beforeAll(async () => {
  solids = await solidsMaker();
});

/** π(R² − r²)·w less the slit, which is as good as a box through the wall. */
const formula = ({ innerMm, outerMm, widthMm, slitMm, clearanceMm }: RingWanted): number => {
  const [r, R] = [(innerMm + clearanceMm) / 2, (outerMm - clearanceMm) / 2];
  return Math.PI * (R * R - r * r) * widthMm - slitMm * (R - r) * widthMm;
};

describe('a spacer ring', () => {
  test.skipIf(admesh.missing)('admesh reads the STL: closed, one part, its volume the formula’s', () => {
    const { files } = ringFiles(solids, spacer, 'spacer');
    const path = join(folder, 'spacer.stl');
    writeFileSync(path, files.find((file) => file.path.endsWith('.stl'))?.bytes ?? new Uint8Array());
    const said = admesh.run([path]);
    expect(said).toMatch(/Total disconnected facets\s+:\s+0\s+0/);
    expect(said).toMatch(/Number of parts\s+:\s+1/);
    const volume = Number(/Volume\s+:\s+([\d.]+)/.exec(said)?.[1]);
    expect(Math.abs(volume / formula(spacer) - 1)).toBeLessThan(0.002);
  });

  test.skipIf(unzip.missing)('the 3MF unzips; its triangles close and hold the same volume', () => {
    const path = join(folder, 'spacer.3mf');
    writeFileSync(path, ringFiles(solids, spacer, 'spacer').files.find((file) => file.path.endsWith('.3mf'))?.bytes ?? new Uint8Array());
    const model = unzip.run(['-p', path, '3D/3dmodel.model']);
    expect(unzip.run(['-l', path])).toMatch(/\[Content_Types\]\.xml[\s\S]*_rels\/\.rels/);
    const vertices = [...model.matchAll(/<vertex x="([^"]+)" y="([^"]+)" z="([^"]+)"/g)].map(([, x, y, z]) => [Number(x), Number(y), Number(z)] as const);
    const triangles = [...model.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"/g)].map(([, a, b, c]) => [Number(a), Number(b), Number(c)] as const);
    const edges = new Map<string, number>();
    let volume = 0;
    for (const [a, b, c] of triangles) {
      for (const [from, to] of [[a, b], [b, c], [c, a]] as const) edges.set(`${from} ${to}`, (edges.get(`${from} ${to}`) ?? 0) + 1);
      const [p, q, r] = [vertices[a], vertices[b], vertices[c]] as [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];
      volume += (p[0] * (q[1] * r[2] - q[2] * r[1]) + p[1] * (q[2] * r[0] - q[0] * r[2]) + p[2] * (q[0] * r[1] - q[1] * r[0])) / 6;
    }
    for (const [edge, count] of edges) expect([count, edges.get(edge.split(' ').toReversed().join(' '))], edge).toEqual([1, 1]);
    expect(Math.abs(volume / formula(spacer) - 1)).toBeLessThan(0.002);
    expect(model).toContain('no safety part');
  });

  test('the same ring gives the same bytes, and says what it weighs and is not', () => {
    const [one, other] = [ringFiles(solids, spacer, 'a'), ringFiles(solids, spacer, 'a')];
    one.files.forEach((file, at) => expect(Buffer.compare(Buffer.from(file.bytes), Buffer.from(other.files[at]?.bytes ?? new Uint8Array()))).toBe(0));
    // 3.6 mm of wall in all on 112 mm: π·112·1.8·12 is 7.6 cm³, 9.4 g in PLA.
    expect(one.says).toMatch(/7\.5\d? cm³; solid 9\.\d+ g in PLA/);
  });
});

test.skipIf(admesh.missing)('a split clamp with the warning cut into it is closed too, and lighter by no more than the letters', () => {
  const path = join(folder, 'clamp.stl');
  const wanted: RingWanted = { ...spacer, kind: 'clamp', innerMm: 88, outerMm: 100 };
  const { files, mesh } = ringFiles(solids, wanted, 'clamp', openFonts());
  writeFileSync(path, files[0]?.bytes ?? new Uint8Array());
  expect(admesh.run([path])).toMatch(/Total disconnected facets\s+:\s+0\s+0[\s\S]*Number of parts\s+:\s+1/);
  const cut = ringFiles(solids, wanted, 'plain').mesh.volumeMm3 - mesh.volumeMm3;
  // Twelve letters about 6 × 4 mm, a third of it ink, 0.4 mm deep: some 40 mm³.
  expect(cut).toBeGreaterThan(15);
  expect(cut).toBeLessThan(120);
});

test('what cannot be printed is refused in words', () => {
  expect(ringFault({ ...spacer, outerMm: 111 })).toMatch(/wall would be 0\.30 mm/);
  expect(ringFault({ ...spacer, innerMm: 120 })).toMatch(/wall/);
  expect(ringFault({ ...spacer, widthMm: Number.NaN })).toMatch(/number/);
  expect(ringFault({ ...spacer, kind: 'clamp', widthMm: 6 })).toMatch(/M4/);
});
