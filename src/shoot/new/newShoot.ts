import type { Build, Glass, Piece } from '../schema/build.ts';
import type { Needs } from '../schema/day.ts';
import type { Part } from '../schema/part.ts';
import { FORMAT, type Shoot, VERSION } from '../schema/shoot.ts';
import { typicalPart, typicalParts } from '../typical/typicalParts.ts';
import { type FirstAnswers, squeezeOf } from './firstQuestions.ts';
import { feedAll, platesOf } from './feeding.ts';
import { type Wiring, connect, connectFar } from './wiring.ts';

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
        pulledBy: answers.puller === 'none' ? 'operator' : 'puller', method: 'both', linkDistanceM: guessed(15), place: outside(answers) ? 'exterior' : 'interior',
      },
    },
    days: { first: { name: 'First day', temperatureC: guessed(15), illuminanceLux: guessed(outside(answers) ? OVERCAST_LUX : ROOM_LUX), workHours: 8 } },
  };
}

/** Light that falls on a screen. Common practice: a lit room, and a day without sun. */
const ROOM_LUX = 500;
const OVERCAST_LUX = 5000;
const outside = ({ place }: FirstAnswers): boolean => place === 'exterior';

/** What nobody was asked: it must not pass for a figure off a sheet. */
const guessed = (value: number): { value: number; basis: 'estimate' } => ({ value, basis: 'estimate' });

interface Assembled {
  readonly build: Build;
  readonly wiring: Wiring;
}

const newWiring = (pieces: Record<string, Piece>): Wiring => ({ pieces, lines: {}, cables: new Set(), takenAfar: new Set() });
const present = (id: string): boolean => id !== 'none';

function cameraBuild(answers: FirstAnswers): Assembled {
  const radio = answers.link !== 'cable' && (present(answers.puller) || present(answers.director));
  const motor = present(answers.motor);
  const devices: Record<string, Piece> = {
    body: { of: answers.body },
    ...(present(answers.operator) ? { monitor: { of: answers.operator, squeeze: squeezeOf(answers) } } : {}),
    ...(radio ? { transmitter: { of: `transmitter-${answers.link}`, net: 'picture', mode: modeFor(`transmitter-${answers.link}`, answers) } } : {}),
    ...(motor ? { motor: { of: answers.motor }, 'motor-receiver': { of: 'motor-receiver', net: 'focus', mode: 'normal' } } : {}),
  };
  const drawing = Object.keys(devices).filter((piece) => piece !== 'motor');
  const wiring = newWiring({ ...devices, ...platesOf(answers.pack, drawing) });
  if (present(answers.operator)) connect(wiring, 'video', 'body', 'monitor');
  if (radio && !connect(wiring, 'video', 'body', 'transmitter') && present(answers.operator)) connect(wiring, 'video', 'monitor', 'transmitter');
  if (motor) connect(wiring, 'control', 'motor-receiver', 'motor');
  feedAll(wiring, drawing);
  return { wiring, build: { name: 'Camera', purpose: 'tripod', root: 'body', camera: 'body', pieces: wiring.pieces, lines: wiring.lines } };
}

/** One transmitter has one mode for everybody: the puller wants no delay, and without one the detail comes first (common practice). */
function modeFor(radio: string, { puller }: FirstAnswers): string {
  const modes = Object.entries(typicalParts[radio]?.radio?.modes ?? {});
  const cost = ({ delayMs, heightPx }: (typeof modes)[number][1]): number => (present(puller) ? Number(delayMs) : -Number(heightPx));
  return modes.toSorted(([, one], [, other]) => cost(one) - cost(other))[0]?.[0] ?? '';
}

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

/** Pullers punch in to judge focus (common practice). */
function punchIn(screen: string): Pick<Piece, 'zoom'> {
  const zooms = typicalParts[screen]?.screen?.zooms ?? [];
  return zooms.length === 0 ? {} : { zoom: Math.max(...zooms) };
}

function station(answers: FirstAnswers, screen: string, name: string, purpose: Build['purpose'], handUnit: boolean): Assembled {
  const radio = answers.link !== 'cable';
  const devices: Record<string, Piece> = {
    monitor: { of: screen, squeeze: squeezeOf(answers), ...(purpose === 'focus station' ? punchIn(screen) : {}) },
    ...(radio ? { receiver: { of: `receiver-${answers.link}`, net: 'picture', mode: modeFor(`receiver-${answers.link}`, answers) } } : {}),
    ...(handUnit ? { 'hand-unit': { of: 'hand-unit', net: 'focus', mode: 'normal' } } : {}),
  };
  const plates = platesOf(answers.pack, Object.keys(devices));
  const wiring = newWiring({ ...devices, ...plates });
  if (radio) connect(wiring, 'video', 'receiver', 'monitor');
  feedAll(wiring, Object.keys(devices));
  return { wiring, build: { name, purpose, station: true, root: Object.keys(plates)[0] ?? 'monitor', pieces: wiring.pieces, lines: wiring.lines } };
}

function glassOf({ body, lens, block, focuser }: FirstAnswers): Glass {
  const [lensMount, bodyMount] = [typicalParts[lens]?.lens?.mount, typicalParts[body]?.body?.mount];
  const adapter = Object.keys(typicalParts).find((id) => typicalParts[id]?.mountAdapter?.lensMount === lensMount && typicalParts[id]?.mountAdapter?.bodyMount === bodyMount);
  const chosen = { 'mount-adapter': adapter ?? 'none', lens, block, focuser };
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
      ...(present(answers.director) ? seen('director', 'direct', 'director/monitor', designDistanceMm(answers.director)) : {}),
    },
  };
}

/** Where a picture of 1080 lines is watched from, with as many lines as the eye resolves: 3.2 heights of a 16:9 panel (ITU-R BT.500, from memory); small ones are held in the hands. */
function designDistanceMm(screen: string): number {
  const heightMm = (Number(typicalParts[screen]?.screen?.diagonalMm) * 9) / Math.hypot(16, 9);
  return Math.max(400, Math.round((3.2 * heightMm) / 50) * 50);
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
