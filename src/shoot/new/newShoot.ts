import type { Build, Glass, Piece } from '../schema/build.ts';
import type { Needs } from '../schema/day.ts';
import type { Part } from '../schema/part.ts';
import { FORMAT, type Shoot, VERSION } from '../schema/shoot.ts';
import { typicalPart, typicalParts } from '../typical/typicalParts.ts';
import { type FirstAnswers, squeezeOf } from './firstQuestions.ts';
import { feedAll, platesOf } from './feeding.ts';
import { bringPicture, bringPictureFar } from './pictureWay.ts';
import { type Wiring, connect } from './wiring.ts';

/** A first shoot of typical parts, wired and powered, without geometry: enough for `check` to answer usefully. */
export function newShoot(answers: FirstAnswers): Shoot {
  const builds = assemble(answers);
  const glass = glassOf(answers);
  const lines = Object.values(builds).flatMap(({ lines: own = {} }) => Object.values(own));
  const used = [...Object.values(builds).flatMap(({ pieces }) => Object.values(pieces)), ...Object.values(glass.pieces)].flatMap(({ of, packs = [] }) => [of, ...packs]);
  const cables = lines.flatMap(({ cable = [] }) => cable);
  return {
    format: FORMAT,
    version: VERSION,
    title: answers.title,
    note: 'Made of typical parts: every figure is an estimate until it is measured or read from a sheet.',
    needs: needsOf(answers),
    crew: { operator: { role: 'cinematographer and operator' }, puller: { role: 'first assistant camera' }, director: { role: 'director' } },
    kit: { parts: kitOf([...used, ...cables], answers, lines) },
    builds,
    glasses: { first: glass },
    setups: { first: { name: 'First setup', camera: 'camera', stations: Object.keys(builds).filter((id) => id !== 'camera'), glasses: ['first'], mode: answers.mode, frameRateHz: 25 } },
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

const present = (id: string): boolean => id !== 'none';
const bare = (pieces: Record<string, Piece>): Wiring => ({ pieces, lines: {}, takenAfar: new Set() });

/** Camera and stations: first what is there and how the picture gets to it, then what feeds all of it. */
function assemble(answers: FirstAnswers): Record<string, Build> {
  const [camera, stations] = [cameraWiring(answers), stationWirings(answers)];
  if (answers.link === 'cable') {
    const nears = [{ id: 'camera', wiring: camera }, ...Object.entries(stations).map(([id, wiring]) => ({ id, wiring }))];
    Object.values(stations).forEach((wiring, at) => bringPictureFar(nears.slice(0, at + 1), wiring, 'monitor'));
  }
  return {
    camera: { name: 'Camera', purpose: 'tripod', camera: 'body', ...powered(camera, answers), root: 'body' },
    ...Object.fromEntries(Object.entries(stations).map(([id, wiring]) => [id, { ...STATIONS[id === 'puller' ? 'puller' : 'director'], station: true, ...powered(wiring, answers) }])),
  };
}

const STATIONS = { puller: { name: 'Puller’s station', purpose: 'focus station' }, director: { name: 'Director’s monitor', purpose: 'viewing station' } } as const;

/** With packs on plates, and a cable to everything that draws; a motor is fed through its receiver. */
function powered(wiring: Wiring, { pack }: FirstAnswers): Pick<Build, 'root' | 'pieces' | 'lines'> {
  const drawing = Object.keys(wiring.pieces).filter((piece) => piece !== 'motor');
  const plates = platesOf(pack, drawing);
  Object.assign(wiring.pieces, plates);
  feedAll(wiring, drawing);
  return { root: Object.keys(plates)[0] ?? 'monitor', pieces: wiring.pieces, lines: wiring.lines };
}

function cameraWiring(answers: FirstAnswers): Wiring {
  const radio = answers.link !== 'cable' && (present(answers.puller) || present(answers.director));
  const motor = present(answers.motor);
  const wiring = bare({
    body: { of: answers.body },
    ...(present(answers.operator) ? { monitor: { of: answers.operator, squeeze: squeezeOf(answers) } } : {}),
    ...(radio ? { transmitter: { of: `transmitter-${answers.link}`, net: 'picture', mode: modeFor(`transmitter-${answers.link}`, answers) } } : {}),
    ...(motor ? { motor: { of: answers.motor }, 'motor-receiver': { of: 'motor-receiver', net: 'focus', mode: 'normal' } } : {}),
  });
  if (present(answers.operator)) bringPicture(wiring, 'monitor');
  if (radio) bringPicture(wiring, 'transmitter');
  if (motor) connect(wiring, 'control', 'motor-receiver', 'motor');
  return wiring;
}

/** One transmitter has one mode for everybody: the puller wants no delay, and without one the detail comes first (common practice). */
function modeFor(radio: string, { puller }: FirstAnswers): string {
  const modes = Object.entries(typicalParts[radio]?.radio?.modes ?? {});
  const cost = ({ delayMs, heightPx }: (typeof modes)[number][1]): number => (present(puller) ? Number(delayMs) : -Number(heightPx));
  return modes.toSorted(([, one], [, other]) => cost(one) - cost(other))[0]?.[0] ?? '';
}

function stationWirings(answers: FirstAnswers): Record<string, Wiring> {
  return {
    ...(present(answers.puller) ? { puller: station(answers, { screen: answers.puller, pulls: true }) } : {}),
    ...(present(answers.director) ? { director: station(answers, { screen: answers.director, pulls: false }) } : {}),
  };
}

/** Pullers punch in to judge focus (common practice). */
function punchIn(screen: string): Pick<Piece, 'zoom'> {
  const zooms = typicalParts[screen]?.screen?.zooms ?? [];
  return zooms.length === 0 ? {} : { zoom: Math.max(...zooms) };
}

function station(answers: FirstAnswers, { screen, pulls }: { screen: string; pulls: boolean }): Wiring {
  const radio = answers.link !== 'cable';
  const wiring = bare({
    monitor: { of: screen, squeeze: squeezeOf(answers), ...(pulls ? punchIn(screen) : {}) },
    ...(radio ? { receiver: { of: `receiver-${answers.link}`, net: 'picture', mode: modeFor(`receiver-${answers.link}`, answers) } } : {}),
    ...(pulls && present(answers.motor) ? { 'hand-unit': { of: 'hand-unit', net: 'focus', mode: 'normal' } } : {}),
  });
  if (radio) bringPicture(wiring, 'monitor');
  return wiring;
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
