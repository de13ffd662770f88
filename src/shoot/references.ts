import type { Fault } from '../faults/Fault.ts';
import { circleIn } from './circleIn.ts';
import { impossibleShapes } from './impossibleShapes.ts';
import { missing } from './missing.ts';
import type { Build, Glass, Joint, Line, Piece } from './schema/build.ts';
import type { Part } from './schema/part.ts';
import type { Shoot } from './schema/shoot.ts';

/** Every place in a shoot that names something which is not there, and every circle of things that wait for each other. */
export function brokenReferences(shoot: Shoot): Fault[] {
  return [...kitReferences(shoot), ...assemblyReferences(shoot), ...setupReferences(shoot), ...needReferences(shoot), ...shotReferences(shoot)];
}

/** Entries of a list that must not stand in it more than once. */
function twice(path: string, list: readonly string[]): Fault[] {
  return list.flatMap((name, at) => (list.indexOf(name) < at ? [{ path: `${path}/${at}`, message: `"${name}" stands here twice.`, cure: 'Take one of them away.' }] : []));
}

function kitReferences({ kit }: Shoot): Fault[] {
  const copies = Object.entries(kit.copies ?? {}).flatMap(([id, copy]) => [
    ...missing(`kit/copies/${id}/of`, copy.of, 'part', kit.parts),
    ...(Object.hasOwn(kit.parts, id) ? [{ path: `kit/copies/${id}`, message: `"${id}" is the name of a part already.`, cure: 'Give the copy another key.' }] : []),
  ]);
  return [...copies, ...Object.entries(kit.parts).flatMap(([id, part]) => partReferences(id, part))];
}

function partReferences(id: string, part: Part): Fault[] {
  const ports = part.ports ?? {};
  const feeds = Object.entries(part.ports ?? {}).flatMap(([portId, port]) =>
    [port.video?.from, port.power?.from, port.shares].flatMap((from) =>
      from === undefined || (from === 'pack' && (part.pack !== undefined || part.batteryPlate !== undefined)) ? [] : missing(`kit/parts/${id}/ports/${portId}`, from, 'port', ports),
    ),
  );
  const outputs = Object.entries(part.body?.modes ?? {}).flatMap(([mode, { outputs = {} }]) =>
    Object.keys(outputs).flatMap((port) => missing(`kit/parts/${id}/body/modes/${mode}/outputs/${port}`, port, 'port', ports)),
  );
  const circle = circleIn(Object.fromEntries(Object.entries(part.ports ?? {}).map(([key, port]) => [key, [port.video?.from, port.power?.from].filter((from) => from !== undefined)])));
  const circles = circle === undefined ? [] : [{ path: `kit/parts/${id}/ports`, message: `These ports feed each other in a circle: ${circle.join(' → ')}.`, cure: 'Take one "from" away.' }];
  return [...feeds, ...outputs, ...circles, ...impossibleShapes(`kit/parts/${id}`, part)];
}

/** What a piece is made of, for its points and ports. */
function partOf({ kit }: Shoot, piece: Piece | undefined): Part | undefined {
  return piece === undefined ? undefined : (own(kit.parts, piece.of) ?? own(kit.parts, own(kit.copies ?? {}, piece.of)?.of ?? ''));
}

/** An entry of a map by its key; a key such as "constructor" finds nothing that is not written in the file. */
const own = <T>(map: Readonly<Record<string, T>>, key: string): T | undefined => (Object.hasOwn(map, key) ? map[key] : undefined);

function assemblyReferences(shoot: Shoot): Fault[] {
  const builds = Object.entries(shoot.builds).flatMap(([id, build]) => [
    ...(build.root === undefined ? [] : missing(`builds/${id}/root`, build.root, 'piece', build.pieces)),
    ...(build.camera === undefined ? [] : missing(`builds/${id}/camera`, build.camera, 'piece', build.pieces)),
    ...piecesAndEnds(shoot, `builds/${id}`, build, glassesAround(shoot, id).map((glass) => glass.pieces)),
  ]);
  const glasses = Object.entries(shoot.glasses).flatMap(([id, glass]) => [
    ...glass.stack.flatMap((piece, at) => missing(`glasses/${id}/stack/${at}`, piece, 'piece', glass.pieces)),
    ...twice(`glasses/${id}/stack`, glass.stack),
    ...piecesAndEnds(shoot, `glasses/${id}`, glass, buildsAround(shoot, id).map((build) => build.pieces)),
  ]);
  return [...builds, ...glasses, ...sameKeys(shoot)];
}

/** Pieces of a glass count to the camera's build while they are on it: under one key, nothing could tell two of them apart. */
function sameKeys({ builds, glasses, setups }: Shoot): Fault[] {
  const paths = new Map<string, Fault>();
  for (const { camera, glasses: used } of Object.values(setups)) {
    const build = own(builds, camera);
    if (build === undefined) continue;
    for (const glass of used) {
      for (const piece of Object.keys(own(glasses, glass)?.pieces ?? {})) {
        const path = `glasses/${glass}/pieces/${piece}`;
        if (Object.hasOwn(build.pieces, piece)) paths.set(path, { path, message: `"${piece}" is a piece of ${build.name} too (builds/${camera}/pieces/${piece}), and a setup uses both.`, cure: 'Give one of the two another key.' });
      }
    }
  }
  return [...paths.values()];
}

/** The glasses a build is used with; one that no setup uses yet may reach any. */
function glassesAround(shoot: Shoot, build: string): Glass[] {
  const used = Object.values(shoot.setups).filter(({ camera }) => camera === build).flatMap(({ glasses }) => glasses.flatMap((glass) => own(shoot.glasses, glass) ?? []));
  return used.length > 0 ? used : Object.values(shoot.glasses);
}

function buildsAround(shoot: Shoot, glass: string): Build[] {
  const used = Object.values(shoot.setups).filter(({ glasses }) => glasses.includes(glass)).flatMap(({ camera }) => own(shoot.builds, camera) ?? []);
  return used.length > 0 ? used : Object.values(shoot.builds);
}

type Assembly = { pieces: Record<string, Piece>; joints?: Record<string, Joint> | undefined; lines?: Record<string, Line> | undefined };

function piecesAndEnds(shoot: Shoot, path: string, assembly: Assembly, neighbours: Record<string, Piece>[]): Fault[] {
  const stock = [shoot.kit.parts, shoot.kit.copies ?? {}] as const;
  const pieces = Object.entries(assembly.pieces).flatMap(([id, piece]) => [
    ...missing(`${path}/pieces/${id}/of`, piece.of, 'part or copy', ...stock),
    ...plateReference(shoot, `${path}/pieces/${id}/packs`, piece),
    ...(piece.packs ?? []).flatMap((pack, at) => packReference(shoot, `${path}/pieces/${id}/packs/${at}`, pack)),
    ...modeReference(shoot, `${path}/pieces/${id}/mode`, piece),
  ]);
  const known = [assembly.pieces, ...neighbours];
  const joints = Object.entries(assembly.joints ?? {}).flatMap(([id, { a, b }]) => [
    ...endReference(shoot, `${path}/joints/${id}/a`, a, 'points', known),
    ...endReference(shoot, `${path}/joints/${id}/b`, b, 'points', known),
  ]);
  const oddJoints = jointsToNothing(`${path}/joints`, Object.entries(assembly.joints ?? {}));
  const lines = Object.entries(assembly.lines ?? {}).flatMap(([id, { from, to, cable }]) => [
    ...endReference(shoot, `${path}/lines/${id}/from`, from, 'ports', known),
    ...endReference(shoot, `${path}/lines/${id}/to`, to, 'ports', known),
    ...(cable === undefined ? [] : missing(`${path}/lines/${id}/cable`, cable, 'part or copy', ...stock)),
  ]);
  return [...pieces, ...joints, ...oddJoints, ...lines];
}

/** A piece fixed to itself holds nothing, and two points joined twice would hold twice as firmly as they do. */
function jointsToNothing(path: string, joints: readonly (readonly [string, Joint])[]): Fault[] {
  const first = new Map<string, string>();
  return joints.flatMap(([id, { a, b }]): Fault[] => {
    if (pieceOfEnd(a) === pieceOfEnd(b)) return [{ path: `${path}/${id}`, message: `"${a}" and "${b}" are on the same piece, which cannot be fixed to itself.`, cure: 'Name a point of another piece, or take the joint away.' }];
    const pair = [a, b].toSorted().join(' ');
    const before = first.get(pair);
    if (before !== undefined) return [{ path: `${path}/${id}`, message: `"${a}" and "${b}" are joined already, by ${path}/${before}.`, cure: 'Take one of the two joints away.' }];
    first.set(pair, id);
    return [];
  });
}

const pieceOfEnd = (end: string): string => end.slice(0, end.lastIndexOf('/'));

/** Packs on what holds none would feed nothing, unseen. */
function plateReference(shoot: Shoot, path: string, piece: Piece): Fault[] {
  const part = partOf(shoot, piece);
  if (part === undefined || piece.packs === undefined || piece.packs.length === 0 || part.batteryPlate !== undefined) return [];
  return [{ path, message: `${part.name} is no battery plate, so that no pack goes on it.`, cure: 'Name the packs on the plate, or give the part "batteryPlate".' }];
}

function packReference(shoot: Shoot, path: string, pack: string): Fault[] {
  const unknown = missing(path, pack, 'part or copy', shoot.kit.parts, shoot.kit.copies ?? {});
  const part = partOf(shoot, { of: pack });
  if (part === undefined || part.pack !== undefined) return unknown;
  return [{ path, message: `${part.name} is no battery pack.`, cure: 'Name a part that has "pack".' }];
}

/** A radio is set in the build; what a camera records is the setup's to say, so that a mode of it here would change nothing. */
function modeReference(shoot: Shoot, path: string, piece: Piece): Fault[] {
  const part = partOf(shoot, piece);
  if (piece.mode === undefined || part === undefined) return [];
  if (part.body !== undefined && part.radio === undefined) {
    return [{ path, message: `The mode of a camera is stated by the setup, so that "${piece.mode}" here changes nothing.`, cure: 'Take it out here; "mode" of the setup says what is recorded.', severity: 'warning' }];
  }
  return missing(path, piece.mode, `mode of ${part.name}`, part.radio?.modes ?? {});
}

function endReference(shoot: Shoot, path: string, end: string, of: 'points' | 'ports', known: Record<string, Piece>[]): Fault[] {
  const [at = '', pieceId = '', build] = end.split('/').toReversed();
  if (build !== undefined) return farEnd(shoot, path, build, pieceId, at, of);
  const piece = known.find((pieces) => Object.hasOwn(pieces, pieceId))?.[pieceId];
  if (piece === undefined) return missing(path, pieceId, 'piece', ...known);
  const part = partOf(shoot, piece);
  if (part === undefined) return [];
  return missing(path, at, `${of === 'points' ? 'point' : 'port'} on ${part.name}`, part[of] ?? {});
}

/** The end of a cable in another build. */
function farEnd(shoot: Shoot, path: string, buildId: string, pieceId: string, at: string, of: 'points' | 'ports'): Fault[] {
  const build = own(shoot.builds, buildId);
  if (build === undefined) return missing(path, buildId, 'build', shoot.builds);
  return endReference(shoot, path, `${pieceId}/${at}`, of, [build.pieces, ...glassesAround(shoot, buildId).map((glass) => glass.pieces)]);
}

function setupReferences(shoot: Shoot): Fault[] {
  const { builds } = shoot;
  return Object.entries(shoot.setups).flatMap(([id, setup]) => {
    const camera = own(shoot.builds, setup.camera);
    const body = partOf(shoot, camera && own(camera.pieces, camera.camera ?? ''));
    return [
      ...missing(`setups/${id}/camera`, setup.camera, 'build', builds),
      ...(setup.stations ?? []).flatMap((station, at) => missing(`setups/${id}/stations/${at}`, station, 'build', builds)),
      ...setup.glasses.flatMap((glass, at) => missing(`setups/${id}/glasses/${at}`, glass, 'glass', shoot.glasses)),
      ...twice(`setups/${id}/stations`, setup.stations ?? []),
      ...twice(`setups/${id}/glasses`, setup.glasses),
      ...(setup.stations?.includes(setup.camera) === true ? [{ path: `setups/${id}/stations`, message: `"${setup.camera}" is the camera build here; it is no station too.`, cure: 'Take it out of the stations.' }] : []),
      ...(body === undefined ? [] : missing(`setups/${id}/mode`, setup.mode, `mode of ${body.name}`, body.body?.modes ?? {})),
    ];
  });
}

function needReferences({ needs, crew, setups, builds }: Shoot): Fault[] {
  return Object.entries(needs.viewers ?? {}).flatMap(([id, viewer]) => {
    const [build = '', piece = ''] = viewer.screen.split('/');
    const path = `needs/viewers/${id}`;
    const stands = own(builds, build);
    return [
      ...missing(`${path}/who`, viewer.who, 'person in crew', crew ?? {}),
      ...(viewer.setups ?? []).flatMap((setup, at) => missing(`${path}/setups/${at}`, setup, 'setup', setups)),
      ...missing(`${path}/screen`, build, 'build', builds),
      ...(stands === undefined ? [] : missing(`${path}/screen`, piece, `piece in ${stands.name}`, stands.pieces)),
    ];
  });
}

function shotReferences({ shots = {}, setups, crew = {}, days = {}, kit }: Shoot): Fault[] {
  const faults = Object.entries(shots).flatMap(([id, shot]) => {
    const path = `shots/${id}`;
    const setup = own(setups, shot.setup);
    return [
      ...missing(`${path}/setup`, shot.setup, 'setup', setups),
      ...(setup === undefined ? [] : missing(`${path}/glass`, shot.glass, `glass of ${setup.name}`, setup.glasses)),
      ...(shot.day === undefined ? [] : missing(`${path}/day`, shot.day, 'day', days)),
      ...(shot.pulledBy === undefined ? [] : missing(`${path}/pulledBy`, shot.pulledBy, 'person in crew', crew)),
      ...(shot.diopter === undefined ? [] : missing(`${path}/diopter`, shot.diopter, 'part or copy', kit.parts, kit.copies ?? {})),
      ...(shot.after ?? []).flatMap((other, at) => missing(`${path}/after/${at}`, other, 'shot', shots)),
      ...keyframeOrder(path, shot.subject ?? []),
    ];
  });
  const circle = circleIn(Object.fromEntries(Object.entries(shots).map(([id, shot]) => [id, shot.after ?? []])));
  return circle === undefined ? faults : [...faults, { path: 'shots', message: `These shots wait for each other in a circle: ${circle.join(' → ')}.`, cure: 'Take one "after" away.' }];
}

function keyframeOrder(path: string, subject: readonly { atS: number }[]): Fault[] {
  return subject.flatMap(({ atS }, at) =>
    at > 0 && atS <= (subject[at - 1]?.atS ?? 0) ? [{ path: `${path}/subject/${at}/atS`, message: `Found ${atS} s after ${subject[at - 1]?.atS} s.`, cure: 'Keyframes run forward in time.' }] : [],
  );
}
