import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { network } from './network.ts';

interface PrintedFrame {
  readonly source: string;
  readonly units: { readonly lengthMm: number; readonly forceN: number };
  readonly youngForcePerArea: number;
  readonly shearForcePerArea: number;
  readonly section: { readonly area: number; readonly iy: number; readonly iz: number; readonly j: number };
  readonly nodes: Record<string, [number, number, number]>;
  readonly free: string;
  readonly members: { readonly from: string; readonly to: string; readonly localY: [number, number, number] }[];
  readonly force: [number, number, number];
  readonly moment: [number, number, number];
  readonly printed: { readonly shift: string[]; readonly turn: string[] };
}
const frames = JSON.parse(readFileSync('reference/mechanics/frames.json', 'utf8')) as Record<string, PrintedFrame>;

type Triple = [number, number, number];
const NONE: [Triple, Triple, Triple] = [[0, 0, 0], [0, 0, 0], [0, 0, 0]];
const scaled = (v: readonly number[], factor: number) => v.map((x) => x * factor) as Triple;

function solved(input: unknown) {
  const answer = network.answer(input);
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults));
  return answer.value;
}

function expectPrinted(actual: number, printed: string): void {
  const [mantissa = '', exponent = '0'] = printed.split('e');
  const lastDigit = 10 ** (Number(exponent) - (mantissa.split('.')[1] ?? '').length);
  expect(Math.abs(actual - Number(printed)), `${actual} against printed ${printed}`).toBeLessThanOrEqual(0.5001 * lastDigit);
}

test.each(Object.entries(frames))('the frame %s gives the digits its book prints', (_, frame) => {
  const { lengthMm, forceN } = frame.units;
  const place = (node: string) => scaled(frame.nodes[node]!, lengthMm);
  const modulus = (value: number) => (value * forceN) / lengthMm ** 2 / 1000;
  const { area, iy, iz, j } = frame.section;
  const { bodies, frequenciesHz } = solved({
    bodies: Object.keys(frame.nodes).map((name) => ({ name, massG: 0, centreMm: place(name), inertiaKgM2: NONE, fixed: name !== frame.free })),
    springs: [],
    beams: frame.members.map(({ from, to, localY }) => ({
      a: from, b: to, fromMm: place(from), toMm: place(to), localY,
      youngGPa: modulus(frame.youngForcePerArea), shearGPa: modulus(frame.shearForcePerArea),
      areaMm2: area * lengthMm ** 2, iyMm4: iy * lengthMm ** 4, izMm4: iz * lengthMm ** 4, jMm4: j * lengthMm ** 4,
    })),
    loads: [
      { body: frame.free, forceN: scaled(frame.force, forceN), momentNm: scaled(frame.moment, (forceN * lengthMm) / 1000), atMm: place(frame.free) },
    ],
  });
  const free = bodies.find(({ name }) => name === frame.free)!;
  frame.printed.shift.forEach((printed, i) => expectPrinted(free.shiftMm[i]! / lengthMm, printed));
  frame.printed.turn.forEach((printed, i) => expectPrinted((free.turnDeg[i]! * Math.PI) / 180, printed));
  expect(frequenciesHz).toEqual([]);
});

test('springs of 1000, 2000 and 3000 in series, 5000 at the second node: 10/11 and 15/11 (Logan, example 2.1)', () => {
  const stiffness = (x: number) => ({ xNPerMm: x, yNPerMm: 1e3, zNPerMm: 1e3, xNmPerRad: 1, yNmPerRad: 1, zNmPerRad: 1 });
  const node = (name: string, fixed = false) => ({ name, massG: 0, centreMm: [0, 0, 0], inertiaKgM2: NONE, fixed });
  const { bodies } = solved({
    bodies: [node('left', true), node('first'), node('second'), node('right', true)],
    springs: [
      ['left', 'first', 1000], ['first', 'second', 2000], ['second', 'right', 3000],
    ].map(([a, b, x]) => ({ a, b, atMm: [0, 0, 0], stiffness: stiffness(Number(x)) })),
    beams: [],
    loads: [{ body: 'second', forceN: [5000, 0, 0], momentNm: [0, 0, 0], atMm: [0, 0, 0] }],
  });
  expect(bodies.map(({ name }) => name)).toEqual(['left', 'first', 'second', 'right']);
  expect(bodies[1]!.shiftMm[0]).toBeCloseTo(10 / 11, 12);
  expect(bodies[2]!.shiftMm[0]).toBeCloseTo(15 / 11, 12);
  expect(bodies[3]).toEqual({ name: 'right', shiftMm: [0, 0, 0], turnDeg: [0, 0, 0] });
});

const tube = { youngGPa: 207, shearGPa: 79.3, outerMm: 15, innerMm: 12 };
const wallAndEnd = (massG: number) => [
  { name: 'wall', centreMm: [0, 0, 0], fixed: true }, { name: 'end', massG, centreMm: [0, 0, 200], inertiaKgM2: NONE },
];

test('a tube of 15 × 12 mm, 200 mm out: 20 N sags it by 0.17561 mm and 1.3171 mrad, 5 N·m by 0.32927 mm and 3.2927 mrad (Shigley)', () => {
  const beams = [{ a: 'wall', b: 'end', fromMm: [0, 0, 0], toMm: [0, 0, 200], ...tube }];
  const under = (load: object) => solved({ bodies: wallAndEnd(0), springs: [], beams, loads: [{ body: 'end', ...load }] }).bodies[1]!;
  const pulled = under({ forceN: [0, -20, 0] });
  expect(pulled.shiftMm[1]).toBeCloseTo(-0.175_61, 5);
  expect((pulled.turnDeg[0] * Math.PI) / 0.18).toBeCloseTo(1.3171, 4);
  const bent = under({ momentNm: [5, 0, 0] });
  expect(bent.shiftMm[1]).toBeCloseTo(-0.329_27, 5);
  expect((bent.turnDeg[0] * Math.PI) / 0.18).toBeCloseTo(3.2927, 4);
});

test('a body on four springs swings at the six frequencies derived for it', () => {
  const corners = [[100, 60], [-100, 60], [100, -60], [-100, -60]];
  const { frequenciesHz } = solved({
    bodies: [
      { name: 'ground', centreMm: [0, 0, 0], fixed: true }, { name: 'body', massG: 10_000, centreMm: [0, 0, 0], inertiaKgM2: [0.05, 0.07, 0.06] },
    ],
    springs: corners.map(([x, y]) => ({ a: 'ground', b: 'body', atMm: [x, y, -80], stiffness: { xNPerMm: 20, yNPerMm: 20, zNPerMm: 50 } })),
    loads: [],
  });
  ['10.0985', '12.3686', '21.4318', '22.5079', '26.9221', '30.9622'].forEach((printed, k) => expectPrinted(frequenciesHz[k]!, printed));
});

test('one kilogram at the tip of an aluminium tube, 0.2357 of the tube with it: 31.33 Hz, each way', () => {
  const tubeG = 2.7e-3 * 63.617 * 200;
  const { frequenciesHz } = solved({
    bodies: wallAndEnd(1000 + 0.2357 * tubeG),
    beams: [{ a: 'wall', b: 'end', fromMm: [0, 0, 0], toMm: [0, 0, 200], ...tube, youngGPa: 71, shearGPa: 26.2 }],
  });
  expectPrinted(frequenciesHz[0]!, '31.33');
  expect(frequenciesHz[1]! / frequenciesHz[0]!).toBeCloseTo(1, 9);
  expect(frequenciesHz).toHaveLength(3);
});

test('a bar cut into many pieces, with its own mass at the tip, nears the published 1.557298, 16.25009, 50.89584', () => {
  const { youngGPa, outerMm, innerMm } = tube;
  const [lengthMm, bendingMm4, barG] = [400, 1467.17, 200];
  const scale = Math.sqrt((youngGPa * 1e9 * bendingMm4 * 1e-12) / ((barG / 1000) * (lengthMm / 1000) ** 3));
  const roots = (pieces: number) => {
    const at = (k: number) => [0, 0, (lengthMm * k) / pieces];
    const names = Array.from({ length: pieces + 1 }, (_, k) => `p${k}`);
    const { frequenciesHz } = solved({
      // Half a piece's mass goes to each of its ends.
      bodies: names.map((name, k) => ({
        name, centreMm: at(k), massG: k === pieces ? barG + barG / pieces / 2 : barG / pieces, inertiaKgM2: NONE, fixed: k === 0,
      })),
      beams: names.slice(1).map((b, k) => ({ a: names[k]!, b, fromMm: at(k), toMm: at(k + 1), youngGPa, shearGPa: 79.3, outerMm, innerMm })),
    });
    return [0, 2, 4].map((k) => (2 * Math.PI * frequenciesHz[k]!) / scale);
  };
  const [coarse, fine] = [roots(20), roots(40)];
  // Lumping errs by the square of the piece: the two together remove it.
  const limit = fine.map((value, k) => value + (value - coarse[k]!) / 3);
  [1.557_298, 16.250_09, 50.895_84].forEach((published, k) => expect(Math.abs(limit[k]! / published - 1)).toBeLessThan(3e-5));
});

const faults = (input: object) => {
  const answer = network.answer(input);
  expect(answer.ok).toBe(false);
  return answer.ok ? [] : answer.faults;
};
const ground = { name: 'ground', centreMm: [0, 0, 0], fixed: true };
const arm = { name: 'arm', massG: 500, centreMm: [0, 0, 100], inertiaKgM2: NONE };
const monitor = { name: 'monitor', massG: 700, centreMm: [0, 100, 100], inertiaKgM2: NONE };
const firm = { xNPerMm: 100, yNPerMm: 100, zNPerMm: 100, xNmPerRad: 100, yNmPerRad: 100, zNmPerRad: 100 };

test('a hinge names what hangs on it and the axis it turns about; what lies loose is named too', () => {
  const [fault] = faults({
    bodies: [ground, arm, monitor, { ...arm, name: 'loose strap' }],
    springs: [
      { a: 'ground', b: 'arm', atMm: [0, 0, 50], stiffness: firm },
      { a: 'arm', b: 'monitor', atMm: [0, 30, 100], stiffness: { ...firm, xNmPerRad: 0 } },
    ],
  });
  expect(fault!.message).toContain('"monitor" (turning about the axis (1, 0, 0) through (0, 30, 100) mm)');
  expect(fault!.message).toContain('"loose strap" (in 6 ways)');
  expect(fault!.message).not.toContain('"arm"');
});

test('a slide is called one', () => {
  const [fault] = faults({ bodies: [ground, arm], springs: [{ a: 'ground', b: 'arm', atMm: [0, 0, 0], stiffness: { ...firm, zNPerMm: 0 } }] });
  expect(fault!.message).toContain('"arm" (sliding along (0, 0, 1))');
});

const bar = { a: 'ground', b: 'arm', fromMm: [0, 0, 0], toMm: [0, 0, 9] };
const moduli = { youngGPa: 71, shearGPa: 26.2 };

test.each([
  ['bodies/1/name', { bodies: [ground, { ...arm, name: 'ground' }] }, 'two bodies named'],
  ['springs/0/b', { bodies: [ground, arm], springs: [{ a: 'ground', b: 'arn', atMm: [0, 0, 0], stiffness: firm }] }, 'Did you mean "arm"?'],
  ['springs/0', { bodies: [ground, arm], springs: [{ a: 'arm', b: 'arm', atMm: [0, 0, 0], stiffness: firm }] }, 'Both ends'],
  [
    'springs/0/axes',
    { bodies: [ground, arm], springs: [{ a: 'ground', b: 'arm', atMm: [0, 0, 0], axes: [[1, 0, 0], [1, 0, 0], [0, 0, 1]], stiffness: firm }] },
    'square to one another',
  ],
  [
    'springs/0/stiffness/xNPerMm',
    { bodies: [ground, arm], springs: [{ a: 'ground', b: 'arm', atMm: [0, 0, 0], stiffness: { ...firm, xNPerMm: null } }] }, 'all six',
  ],
  [
    'beams/0/toMm', { bodies: [ground, arm], beams: [{ a: 'ground', b: 'arm', fromMm: [0, 0, 0], toMm: [0, 0, 0], ...tube }] },
    'begins where it ends',
  ],
  [
    'beams/0/innerMm', { bodies: [ground, arm], beams: [{ a: 'ground', b: 'arm', fromMm: [0, 0, 0], toMm: [0, 0, 9], ...tube, innerMm: 15 }] },
    'must be less',
  ],
  [
    'beams/0/jMm4',
    { bodies: [ground, arm], beams: [{ ...bar, ...moduli, areaMm2: 1, iyMm4: 1, izMm4: 1 }] }, 'missing',
  ],
  ['beams/0/areaMm2', { bodies: [ground, arm], beams: [{ ...bar, ...tube, areaMm2: 1 }] }, 'one or the other'],
  [
    'loads/0/body', { bodies: [ground, arm], springs: [{ a: 'ground', b: 'arm', atMm: [0, 0, 0], stiffness: firm }], loads: [{ body: 'nobody' }] },
    'no body named',
  ],
  ['bodies/1/massG', { bodies: [ground, { name: 'arm', centreMm: [0, 0, 0] }] }, 'has no mass'],
  ['bodies/1/inertiaKgM2', { bodies: [ground, { ...arm, inertiaKgM2: [[1, 2, 0], [2, 1, 0], [0, 0, 1]] }] }, 'negative energy'],
  ['bodies', { bodies: [] }, 'no body'],
])('bad input at %s is named', (path, input, says) => {
  const [fault] = faults(input);
  expect(fault).toMatchObject({ path, message: expect.stringContaining(says) });
});

test('a rigid joint makes one body of two, and of what it holds to the ground a part of the ground', () => {
  const rigid = { xNPerMm: null, yNPerMm: null, zNPerMm: null, xNmPerRad: null, yNmPerRad: null, zNmPerRad: null };
  const { bodies, frequenciesHz } = solved({
    bodies: [ground, arm, monitor],
    springs: [{ a: 'ground', b: 'arm', atMm: [0, 0, 0], stiffness: rigid }, { a: 'arm', b: 'monitor', atMm: [0, 100, 100], stiffness: firm }],
    loads: [{ body: 'monitor', forceN: [0, -7, 0] }, { body: 'arm', forceN: [0, -5, 0] }],
  });
  expect(bodies[1]!.shiftMm).toEqual([0, 0, 0]);
  expect(bodies[2]!.shiftMm[1]).toBeCloseTo(-0.07, 12);
  expect(frequenciesHz[0]).toBeCloseTo(Math.sqrt(1e5 / 0.7) / (2 * Math.PI), 9);
});
