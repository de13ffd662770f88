import { type Fault } from '../../faults/Fault.ts';
import type { Part } from '../schema/part.ts';
import type { Build, Glass, Line } from '../schema/build.ts';
import type { Shoot } from '../schema/shoot.ts';
import type { Edit, Patch } from './Edit.ts';

export interface Replacement {
  readonly edit: Edit;
  /** What did not fit the new part and was taken out, each with its place and why. */
  readonly broke: readonly Fault[];
}

/**
 * One part or copy in place of another, wherever it is used: joints and lines stay where the new part has a point or port that
 * fits, move to the first that does, and are taken out and listed where none does. The builds concerned are kept as they were
 * beside the changed ones, named "… before".
 */
export function replacePart(shoot: Shoot, oldId: string, newId: string): Replacement {
  const patches: Patch[] = [];
  const broke: Fault[] = [];
  for (const [root, assemblies] of [['builds', shoot.builds], ['glasses', shoot.glasses]] as const) {
    for (const [id, assembly] of Object.entries(assemblies) as [string, Build | Glass][]) {
      if (keptAside(shoot, id)) continue;
      const path = `${root}/${id}`;
      const pieces = Object.entries(assembly.pieces).filter(([, { of }]) => of === oldId).map(([piece]) => piece);
      const loose = looseUses(path, assembly, oldId, newId);
      if (pieces.length === 0 && loose.length === 0) continue;
      patches.push(keptBefore(shoot, root, id, assembly), ...loose, ...pieces.map((piece): Patch => ({ op: 'replace', path: `${path}/pieces/${piece}/of`, value: newId })));
      patches.push(...modePatches(shoot, path, assembly, pieces, newId), ...(pieces.length === 0 ? [] : namePatches(shoot, path, assembly, oldId, newId)));
      if ('camera' in assembly && pieces.includes(assembly.camera ?? '')) settleModes({ shoot, oldId, newId }, id, patches, broke);
      refit({ shoot, oldId, newId }, root, id, pieces, patches, broke);
    }
  }
  return { edit: { says: `${nameOf(shoot, newId)} in place of ${nameOf(shoot, oldId)}`, patches }, broke };
}

const partOf = ({ kit }: Shoot, id: string): Part | undefined => kit.parts[id] ?? kit.parts[kit.copies?.[id]?.of ?? ''];
const nameOf = (shoot: Shoot, id: string): string => shoot.kit.copies?.[id]?.name ?? partOf(shoot, id)?.name ?? id;

/** One that an earlier replacement left beside the changed one, and that no setup has taken up: it stays as it was. */
const keptAside = ({ setups }: Shoot, id: string): boolean =>
  /-before(-\d+)?$/.test(id) && !Object.values(setups).some(({ camera, stations = [], glasses }) => [camera, ...stations, ...glasses].includes(id));

/** Setups that record in a mode which the new body does not have take its first, and it is said. */
function settleModes({ shoot, newId }: Swap, build: string, patches: Patch[], broke: Fault[]): void {
  const modes = Object.keys(partOf(shoot, newId)?.body?.modes ?? {});
  const [first] = modes;
  for (const [id, { camera, mode }] of Object.entries(shoot.setups)) {
    if (camera !== build || first === undefined || modes.includes(mode)) continue;
    patches.push({ op: 'replace', path: `setups/${id}/mode`, value: first });
    broke.push({ path: `setups/${id}/mode`, message: `${nameOf(shoot, newId)} has no mode "${mode}"; "${first}" was taken.`, cure: `It has: ${modes.join(', ')}.` });
  }
}

function keptBefore(shoot: Shoot, root: 'builds' | 'glasses', id: string, assembly: Build | Glass): Patch {
  let kept = `${id}-before`;
  for (let count = 2; kept in shoot[root]; count += 1) kept = `${id}-before-${count}`;
  return { op: 'add', path: `${root}/${kept}`, value: { ...assembly, name: `${assembly.name}, before`.slice(0, 200) } };
}

/** Packs on a plate and cables of lines are used without being pieces. */
function looseUses(path: string, { pieces, lines = {} }: Build | Glass, oldId: string, newId: string): Patch[] {
  const packs = Object.entries(pieces).filter(([, { packs: on }]) => on?.includes(oldId) === true);
  const cabled = Object.entries<Line>(lines).filter(([, { cable }]) => cable === oldId);
  return [
    ...packs.map(([piece, { packs: on = [] }]): Patch => ({ op: 'replace', path: `${path}/pieces/${piece}/packs`, value: on.map((one) => (one === oldId ? newId : one)) })),
    ...cabled.map(([line]): Patch => ({ op: 'replace', path: `${path}/lines/${line}/cable`, value: newId })),
  ];
}

/** An assembly that is called after the part, as a glass after its lens, is called after the new one. */
function namePatches(shoot: Shoot, path: string, { name }: Build | Glass, oldId: string, newId: string): Patch[] {
  const [was, is] = [nameOf(shoot, oldId), nameOf(shoot, newId)];
  return name.includes(was) ? [{ op: 'replace', path: `${path}/name`, value: name.replace(was, is).slice(0, 200) }] : [];
}

/** A mode or gear that the new part does not have is dropped from the piece. */
function modePatches(shoot: Shoot, path: string, assembly: Build | Glass, pieces: readonly string[], newId: string): Patch[] {
  const part = partOf(shoot, newId);
  return pieces.flatMap((piece): Patch[] => {
    const mode = assembly.pieces[piece]?.mode;
    const known = mode === undefined || mode in (part?.radio?.modes ?? {}) || mode in (part?.body?.modes ?? {});
    return known ? [] : [{ op: 'remove', path: `${path}/pieces/${piece}/mode` }];
  });
}

interface Swap {
  readonly shoot: Shoot;
  readonly oldId: string;
  readonly newId: string;
}

/** Joints and lines that touch the pieces: in the assembly itself, and in the glasses and builds it is used with. */
function refit(swap: Swap, root: 'builds' | 'glasses', id: string, pieces: readonly string[], patches: Patch[], broke: Fault[]): void {
  for (const [path, assembly] of assembliesAround(swap.shoot, root, id)) {
    const fit = (end: string, of: 'points' | 'ports') => (pieces.includes(end.split('/').at(-2) ?? '') ? fitted(swap, end, of) : end);
    for (const [joint, { a, b }] of Object.entries(assembly.joints ?? {})) settle(`${path}/joints/${joint}`, { a: [a, fit(a, 'points')], b: [b, fit(b, 'points')] }, swap, patches, broke);
    for (const [line, { from, to }] of Object.entries<Line>(assembly.lines ?? {})) settle(`${path}/lines/${line}`, { from: [from, fit(from, 'ports')], to: [to, fit(to, 'ports')] }, swap, patches, broke);
  }
}

function assembliesAround(shoot: Shoot, root: 'builds' | 'glasses', id: string): [string, Build | Glass][] {
  const own: [string, Build | Glass][] = [[`${root}/${id}`, shoot[root][id] as Build | Glass]];
  const setups = Object.values(shoot.setups);
  const others = root === 'builds' ? setups.filter(({ camera }) => camera === id).flatMap(({ glasses }) => glasses.map((glass) => `glasses/${glass}`)) : setups.filter(({ glasses }) => glasses.includes(id)).map(({ camera }) => `builds/${camera}`);
  const at = (path: string): Build | Glass | undefined => shoot[path.startsWith('builds') ? 'builds' : 'glasses'][path.slice(path.indexOf('/') + 1)];
  return [...own, ...[...new Set(others)].flatMap((path): [string, Build | Glass][] => (at(path) === undefined ? [] : [[path, at(path) as Build | Glass]]))];
}

function settle(path: string, ends: Record<string, readonly [old: string, fitted: string | undefined]>, swap: Swap, patches: Patch[], broke: Fault[]): void {
  const lost = Object.values(ends).find(([, now]) => now === undefined);
  if (lost !== undefined) {
    if (!patches.some((patch) => patch.path === path)) patches.push({ op: 'remove', path });
    broke.push({ path, message: `${nameOf(swap.shoot, swap.newId)} has nothing that fits where ${lost[0]} was; it was taken out.`, cure: 'Fix it another way.' });
    return;
  }
  for (const [key, [old, now]] of Object.entries(ends)) if (now !== undefined && now !== old) patches.push({ op: 'replace', path: `${path}/${key}`, value: now });
}

/** The same place on the new part, or the first of the same kind and class: `undefined` where there is none. */
function fitted({ shoot, oldId, newId }: Swap, end: string, of: 'points' | 'ports'): string | undefined {
  const keys = end.split('/');
  const at = keys.at(-1) ?? '';
  const before = partOf(shoot, oldId)?.[of]?.[at];
  const places = Object.entries(partOf(shoot, newId)?.[of] ?? {});
  const same = ([, place]: (typeof places)[number]) => before !== undefined && fitOf(place) === fitOf(before);
  const found = places.find((place) => place[0] === at && same(place)) ?? places.find(same);
  return found === undefined ? undefined : [...keys.slice(0, -1), found[0]].join('/');
}

/** What must agree for a point or a port to take another's place. */
function fitOf(place: object): string {
  const { kind, class: size, sex, way, connector } = place as Partial<Record<'kind' | 'class' | 'sex' | 'way' | 'connector', string>>;
  return [kind, size, sex, way, connector].join('|');
}
