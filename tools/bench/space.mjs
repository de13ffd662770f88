/** Sixty pieces placed for twenty lenses, collisions, a shared setting; beside bare chains of as many transforms. Parts invented. */
import { readFileSync } from 'node:fs';
import { median, timed } from './timed.mjs';
import { compose } from '../../src/assembly/placing/Transform.ts';
import { placeSetup } from '../../src/assembly/placing/placeSetup.ts';
import { collisions } from '../../src/assembly/space/collisions.ts';
import { worldSolids } from '../../src/assembly/space/worldSolids.ts';
import { Checker } from '../../src/check/Checker.ts';
import { questions } from '../../src/check/questions/index.generated.ts';
import { Ledger } from '../../src/shoot/ledger/Ledger.ts';

const PIECES = 60;
const LENSES = 20;
const CHAIN = 500;

export async function bench() {
  const own = bigShoot('perLens');
  const shared = bigShoot('shared');
  const glasses = own.setups['jetty-sticks'].glasses;
  const placeAll = (shoot) => {
    const ledger = new Ledger(shoot);
    for (const glass of glasses) placeSetup(ledger, 'jetty-sticks', glass);
    return ledger;
  };
  const place = () => timed(() => placeAll(own)) / LENSES;
  const together = () => timed(() => placeAll(shared));
  const collide = () => {
    const ledger = placeAll(own);
    for (const glass of glasses) worldSolids(ledger, 'jetty-sticks', glass);
    return timed(() => glasses.forEach((glass) => collisions(ledger, 'jetty-sticks', glass))) / LENSES;
  };
  const step = { r: [0.8, -0.6, 0, 0.6, 0.8, 0, 0, 0, 1], t: [1, 2, 3] };
  const chains = () => timed(() => {
    for (let piece = 0, at = step; piece < PIECES; piece += 1) for (let link = 0; link < 4; link += 1) at = compose(at, step);
  });
  const asked = questions.filter(({ id }) => id.startsWith('space.'));
  const chain = (links) => {
    const shoot = chainShoot(links);
    return () => timed(() => new Checker(shoot, asked).answers());
  };
  const [half, whole] = [chain(CHAIN / 2), chain(CHAIN)];
  for (const run of [place, together, collide, chains]) for (let i = 0; i < 8; i += 1) run();
  const floorMs = median(25, chains);
  const floorName = `${PIECES * 4} bare transforms`;
  return [
    { name: `space: ${PIECES} pieces placed, a lens`, ms: median(15, place), aimMs: 3, floorName, floorMs, limitRatio: 200 },
    { name: `space: a setting shared by ${LENSES} lenses, all placed`, ms: median(15, together), aimMs: 100, floorName, floorMs, limitRatio: 4000 },
    { name: `space: collisions of ${PIECES} pieces, a lens`, ms: median(15, collide), aimMs: 5, floorName, floorMs, limitRatio: 300 },
    { name: `space: all its questions of a chain of ${CHAIN} pieces`, ms: median(7, whole), floorName: 'half the chain', floorMs: median(7, half) },
  ];
}

/** The demo's tripod with plates of small boxes added up to sixty pieces, and twenty lenses of growing length. */
export function bigShoot(scope) {
  const shoot = JSON.parse(readFileSync(new URL('../../examples/demo.shoot.json', import.meta.url), 'utf8'));
  const build = shoot.builds.tripod;
  const face = (at, way) => ({ kind: 'thread', class: '1/4-20', sex: way > 0 ? 'female' : 'male', at: [0, at, 0], out: [0, way, 0], up: [0, 0, 1] });
  shoot.kit.parts.block = { name: 'Small box', kind: 'other', massG: 100, points: { under: face(0, -1), over: face(20, 1) }, solids: [{ shape: 'box', sizeMm: [40, 19, 40], atMm: [0, 10, 0] }, { shape: 'tube', diameterMm: 16, boreMm: 8, lengthMm: 30, along: 'z', atMm: [0, 10, 0] }] };
  shoot.kit.parts.shelf = { name: 'Shelf', kind: 'plate', massG: 300, points: { foot: face(0, -1), ...Object.fromEntries([0, 1, 2, 3, 4, 5].map((n) => [`seat-${n}`, { ...face(6, 1), at: [n * 60 - 150, 6, -200] }])) }, solids: [{ shape: 'box', sizeMm: [360, 6, 60], atMm: [0, 3, -200] }] };
  build.pieces.shelf = { of: 'shelf' };
  build.joints.shelf = { a: 'cage/top', b: 'shelf/foot' };
  for (let n = 0; Object.keys(build.pieces).length < PIECES - 2; n += 1) {
    build.pieces[`box-${n}`] = { of: 'block' };
    build.joints[`box-${n}`] = n < 6 ? { a: `shelf/seat-${n}`, b: `box-${n}/under` } : { a: `box-${n - 6}/over`, b: `box-${n}/under` };
  }
  for (const key of ['turnDeg', 'slideMm']) build.joints['motor-clamp'].settings[key].auto = scope;
  shoot.setups['jetty-sticks'].glasses = Array.from({ length: LENSES }, (_, n) => {
    const lens = structuredClone(shoot.kit.parts['set-50']);
    lens.points.gear.at[2] += n;
    lens.points.front.at[2] += 2 * n;
    lens.lengthMm += 2 * n;
    shoot.kit.parts[`lens-${n}`] = lens;
    const glass = structuredClone(shoot.glasses['set-50']);
    glass.pieces.lens.of = `lens-${n}`;
    shoot.glasses[`glass-${n}`] = glass;
    return `glass-${n}`;
  });
  return shoot;
}

/** The tiny example with a chain of small plates screwed one on the other on top of its camera, each turned a little further. */
function chainShoot(links) {
  const shoot = JSON.parse(readFileSync(new URL('../../examples/tiny.shoot.json', import.meta.url), 'utf8'));
  const build = Object.values(shoot.builds)[0];
  const face = (at, way) => ({ kind: 'thread', class: '1/4-20', sex: way > 0 ? 'male' : 'female', at: [0, at, 0], out: [0, way, 0], up: [0, 0, 1] });
  shoot.kit.parts.link = { name: 'Small plate', kind: 'plate', massG: 80, points: { under: face(-10, -1), over: face(10, 1) }, solids: [{ shape: 'box', sizeMm: [40, 20, 40] }] };
  shoot.kit.parts[build.pieces[build.camera].of].points['over-all'] = face(60, 1);
  build.joints ??= {};
  for (let n = 0; n < links; n += 1) {
    build.pieces[`link-${n}`] = { of: 'link' };
    build.joints[`link-${n}`] = { a: n === 0 ? `${build.camera}/over-all` : `link-${n - 1}/over`, b: `link-${n}/under`, settings: { turnDeg: (n * 37) % 360 } };
  }
  return shoot;
}
