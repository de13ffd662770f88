import type { Build, Glass, Piece } from '../schema/build.ts';
import type { Needs } from '../schema/day.ts';
import type { Part } from '../schema/part.ts';
import { FORMAT, type Shoot, VERSION } from '../schema/shoot.ts';
import { typicalPart, typicalParts } from '../typical/typicalParts.ts';
import type { FirstAnswers } from './firstQuestions.ts';
import { type Wiring, connect, connectFar, feed } from './wiring.ts';

/** A first shoot of typical parts, wired and powered, without geometry: enough for `check` to answer usefully. */
export function newShoot(answers: FirstAnswers): Shoot {
  const camera = cameraBuild(answers);
  const stations = stationBuilds(answers, camera.wiring);
  const glass = glassOf(answers);
  const assemblies = [camera, ...Object.values(stations)];
  const used = [...assemblies.flatMap(({ build }) => Object.values(build.pieces)), ...Object.values(glass.pieces)].flatMap(({ of, packs = [] }) => [of, ...packs]);
  const cables = assemblies.flatMap(({ wiring }) => [...wiring.cables]);
  return {
    format: FORMAT,
    version: VERSION,
    title: answers.title,
    note: 'Made of typical parts: every figure is an estimate until it is measured or read from a sheet.',
    needs: needsOf(answers),
    crew: { operator: { role: 'cinematographer and operator' }, puller: { role: 'first assistant camera' }, director: { role: 'director' } },
    kit: { parts: kitOf([...used, ...cables], answers, Object.values(camera.build.lines ?? {}).concat(Object.values(stations).flatMap(({ build }) => Object.values(build.lines ?? {})))) },
    builds: { camera: camera.build, ...Object.fromEntries(Object.entries(stations).map(([id, { build }]) => [id, build])) },
    glasses: { first: glass },
    setups: { first: { name: 'First setup', camera: 'camera', stations: Object.keys(stations), glasses: ['first'], mode: answers.mode, frameRateHz: 25 } },
    shots: {
      first: {
        name: 'First shot', setup: 'first', glass: 'first', day: 'first', tStop: answers.tStop, subject: [{ atS: 0, distanceMm: Number.isFinite(answers.distanceMm) ? answers.distanceMm : 'infinity' }],
        pulledBy: answers.puller === 'none' ? 'operator' : 'puller', method: 'both', linkDistanceM: guessed(15),
      },
    },
    days: { first: { name: 'First day', temperatureC: guessed(15), illuminanceLux: guessed(5000), workHours: 8 } },
  };
}

/** What nobody was asked: it must not pass for a figure off a sheet. */
const guessed = (value: number): { value: number; basis: 'estimate' } => ({ value, basis: 'estimate' });

interface Assembled {
  readonly build: Build;
  readonly wiring: Wiring;
}

const newWiring = (pieces: Record<string, Piece>): Wiring => ({ pieces, lines: {}, cables: new Set(), takenAfar: new Set() });
const present = (id: string): boolean => id !== 'none';

function plateFor(pack: string): string {
  const nominalV = Number(typicalParts[pack]?.pack?.nominalV);
  return nominalV < 10 ? 'plate-small' : nominalV > 20 ? 'plate-26v' : 'plate-hot-swap';
}

function squeezeOf({ lens, block }: FirstAnswers): number {
  return Number(typicalParts[lens]?.lens?.squeeze ?? 1) * Number(typicalParts[block]?.block?.squeeze ?? 1);
}

function cameraBuild(answers: FirstAnswers): Assembled {
  const radio = answers.link !== 'cable' && (present(answers.puller) || present(answers.director));
  const motor = present(answers.motor);
  const powered: Record<string, Piece> = { plate: { of: plateFor(answers.pack), packs: [answers.pack] } };
  const wiring = newWiring({
    body: { of: answers.body },
    ...(present(answers.operator) ? { monitor: { of: answers.operator, squeeze: squeezeOf(answers) } } : {}),
    ...(radio ? { transmitter: { of: `transmitter-${answers.link}`, net: 'picture', mode: firstMode(`transmitter-${answers.link}`) } } : {}),
    ...(motor ? { motor: { of: answers.motor }, 'motor-receiver': { of: 'motor-receiver', net: 'focus', mode: 'normal' } } : {}),
    ...powered,
  });
  const sources = Object.keys(powered);
  if (present(answers.operator)) connect(wiring, 'video', 'body', 'monitor');
  if (radio && !connect(wiring, 'video', 'body', 'transmitter') && present(answers.operator)) connect(wiring, 'video', 'monitor', 'transmitter');
  if (motor) connect(wiring, 'control', 'motor-receiver', 'motor');
  feedAll(wiring, sources, ['body', 'monitor', 'transmitter', 'motor-receiver']);
  return { wiring, build: { name: 'Camera', purpose: 'tripod', root: 'body', camera: 'body', pieces: wiring.pieces, lines: wiring.lines } };
}

/** Feeds each piece that needs power; where outlets run out, a splitter takes the last ones; another voltage gets a regulator. What finds no feed stays unfed, and the check says so. */
function feedAll(wiring: Wiring, sources: readonly string[], pieces: readonly string[]): void {
  const there = pieces.filter((piece) => wiring.pieces[piece] !== undefined);
  const viaTap = there.filter((piece) => !barrelFed(wiring, piece));
  const outlets = sources.flatMap((source) => Object.values(typicalParts[wiring.pieces[source]?.of ?? '']?.ports ?? {})).filter(({ way }) => way === 'out').length;
  const feeds = [...sources];
  if (there.length > outlets) feeds.push(...added(wiring, 'tap-splitter', sources));
  for (const piece of there.filter((one) => !viaTap.includes(one))) if (!feed(wiring, feeds, piece)) feed(wiring, added(wiring, 'regulator-8v', feeds), piece);
  for (const piece of viaTap) feed(wiring, feeds, piece);
}

/** A helper between source and device, where it can itself be fed: its id, or nothing. */
function added(wiring: Wiring, of: string, sources: readonly string[]): string[] {
  wiring.pieces[of] = { of };
  if (feed(wiring, sources, of)) return [of];
  delete wiring.pieces[of];
  return [];
}

const barrelFed = ({ pieces }: Wiring, piece: string): boolean => typicalParts[pieces[piece]?.of ?? '']?.ports?.['dc-in']?.connector.startsWith('barrel') === true;

const firstMode = (radio: string): string => Object.keys(typicalParts[radio]?.radio?.modes ?? {}).at(-1) ?? '';

function stationBuilds(answers: FirstAnswers, camera: Wiring): Record<string, Assembled> {
  const stations: Record<string, Assembled> = {};
  if (present(answers.puller)) stations['puller'] = station(answers, answers.puller, 'Puller’s station', 'focus station', present(answers.motor));
  if (present(answers.director)) stations['director'] = station(answers, answers.director, 'Director’s monitor', 'viewing station', false);
  if (answers.link !== 'cable') return stations;
  const [near, far] = [stations['puller'], stations['director']];
  if (near !== undefined) connectFar(camera, 'camera', near.wiring, 'monitor');
  if (far !== undefined && !connectFar(camera, 'camera', far.wiring, 'monitor') && near !== undefined) connectFar(near.wiring, 'puller', far.wiring, 'monitor');
  return stations;
}

function station(answers: FirstAnswers, screen: string, name: string, purpose: Build['purpose'], handUnit: boolean): Assembled {
  const radio = answers.link !== 'cable';
  const wiring = newWiring({
    monitor: { of: screen, squeeze: squeezeOf(answers) },
    ...(radio ? { receiver: { of: `receiver-${answers.link}`, net: 'picture', mode: firstMode(`receiver-${answers.link}`) } } : {}),
    ...(handUnit ? { 'hand-unit': { of: 'hand-unit', net: 'focus', mode: 'normal' } } : {}),
    plate: { of: plateFor(answers.pack), packs: [answers.pack] },
  });
  if (radio) connect(wiring, 'video', 'receiver', 'monitor');
  feedAll(wiring, ['plate'], ['monitor', 'receiver', 'hand-unit']);
  return { wiring, build: { name, purpose, station: true, root: 'plate', pieces: wiring.pieces, lines: wiring.lines } };
}

function glassOf({ body, lens, block, focuser }: FirstAnswers): Glass {
  const adapter = typicalParts[lens]?.lens?.mount === typicalParts[body]?.body?.mount ? 'none' : 'mount-adapter-long-short';
  const chosen = { 'mount-adapter': adapter, lens, block, focuser };
  const there = Object.entries(chosen).filter(([, of]) => present(of));
  const name = there.filter(([id]) => id !== 'mount-adapter').map(([, of]) => typicalParts[of]?.name ?? of).join(' + ');
  return { name, stack: there.map(([id]) => id), pieces: Object.fromEntries(there.map(([id, of]) => [id, { of }])) };
}

function needsOf(answers: FirstAnswers): Needs {
  const seen = (who: string, job: 'operate' | 'pull focus' | 'direct', screen: string, distanceMm: number) => ({ [who]: { who, job, screen, distanceMm: guessed(distanceMm) } });
  return {
    delivery: { aspect: answers.aspect, widthPx: Math.round(answers.widthPx) },
    viewers: {
      ...(present(answers.operator) ? seen('operator', 'operate', 'camera/monitor', 450) : {}),
      ...(present(answers.puller) ? seen('puller', 'pull focus', 'puller/monitor', 600) : {}),
      ...(present(answers.director) ? seen('director', 'direct', 'director/monitor', 1200) : {}),
    },
  };
}

/** The kit holds every class in use, as often as it is used; the packs as many as there are. */
function kitOf(used: readonly string[], answers: FirstAnswers, lines: readonly { cable?: string | undefined }[]): Record<string, Part> {
  const parts: Record<string, Part> = {};
  for (const id of new Set(used)) {
    const part = typicalPart(id);
    if (part === undefined) continue;
    const uses = part.kind === 'cable' ? lines.filter(({ cable }) => cable === id).length : used.filter((one) => one === id).length;
    parts[id] = { ...part, count: id === answers.pack ? Math.round(answers.packs) : uses };
  }
  const ring = answers.focuserToSensorMm;
  const focuser = parts[answers.focuser];
  if (ring !== undefined && ring > 0 && focuser !== undefined) parts[answers.focuser] = { ...focuser, focuser: { ...focuser.focuser, toSensorMm: { value: ring, basis: 'estimate' } } };
  return parts;
}
