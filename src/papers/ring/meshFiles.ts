import { zipSync } from 'fflate';
import { escaped } from '../ink/writeSvg.ts';
import type { RingMesh } from './ringSolid.ts';

const utf8 = new TextEncoder();

/** Triangles as binary STL, mm. `note` goes into its 80 bytes of head. */
export function writeStl({ vertices, triangles }: RingMesh, note: string): Uint8Array {
  const bytes = new Uint8Array(84 + triangles.length * 50);
  // A head that begins with "solid" would be taken for the text form.
  bytes.set(utf8.encode(`Setworthy, mm. ${note}`.replaceAll(/[^\u0020-\u007E]/g, '?')).subarray(0, 80));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, triangles.length, true);
  triangles.forEach(([a, b, c], index) => {
    const corners = [a, b, c].map((at) => vertices[at] ?? [0, 0, 0]) as [number, number, number][];
    [normalOf(corners), ...corners].flat().forEach((value, at) => view.setFloat32(84 + index * 50 + at * 4, value, true));
  });
  return bytes;
}

function normalOf(corners: readonly (readonly [number, number, number])[]): [number, number, number] {
  const [a, b, c] = corners as [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];
  const [u, v] = [[b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]] as [[number, number, number], [number, number, number]];
  const normal: [number, number, number] = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const size = Math.hypot(...normal);
  return size === 0 ? [0, 0, 0] : [normal[0] / size, normal[1] / size, normal[2] / size];
}

/** Triangles as 3MF (3MF Consortium, core specification 1.x): a small zip, the times in it fixed. */
export function write3mf({ vertices, triangles }: RingMesh, { title, note }: { title: string; note: string }): Uint8Array {
  const model = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<model unit="millimeter" xml:lang="en-GB" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">',
    `<metadata name="Title">${escaped(title)}</metadata><metadata name="Description">${escaped(note)}</metadata><metadata name="Application">Setworthy</metadata>`,
    '<resources><object id="1" type="model"><mesh><vertices>',
    ...vertices.map(([x, y, z]) => `<vertex x="${x}" y="${y}" z="${z}"/>`),
    '</vertices><triangles>',
    ...triangles.map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`),
    '</triangles></mesh></object></resources><build><item objectid="1"/></build></model>',
  ].join('\n');
  const types = '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>';
  const relations = '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>';
  const stamp = { mtime: '1980-01-01T12:00:00' } as const;
  return zipSync({ '[Content_Types].xml': [utf8.encode(types), stamp], '_rels/.rels': [utf8.encode(relations), stamp], '3D/3dmodel.model': [utf8.encode(model), stamp] });
}
