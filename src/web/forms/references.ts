import type { Shoot } from '../../shoot/schema/shoot.ts';
import { personName } from '../shoot/names.ts';

export interface Choice {
  readonly id: string;
  readonly name: string;
}

/** What a key of this name may refer to, or nothing where it is free text. `above` is the entry it stands in. */
export function referencesOf(shoot: Shoot, key: string, above: Readonly<Record<string, unknown>>): readonly Choice[] | undefined {
  const named = (map: Readonly<Record<string, { readonly name?: string | undefined }>> | undefined) => Object.entries(map ?? {}).map(([id, { name }]) => ({ id, name: name ?? id }));
  const parts = () => [...named(shoot.kit.parts), ...named(shoot.kit.copies)];
  const known: Readonly<Record<string, () => readonly Choice[]>> = {
    setup: () => named(shoot.setups),
    glass: () => named(shoot.glasses),
    day: () => named(shoot.days),
    who: () => people(shoot),
    pulledBy: () => people(shoot),
    of: parts,
    diopter: () => named(filtered(shoot, 'closeUp')),
    cable: () => named(filtered(shoot, 'cable')),
    camera: () => named('pieces' in above ? pieceNames(above) : shoot.builds),
    root: () => named(pieceNames(above)),
    mode: () => modesOf(shoot, above),
    screen: () => screens(shoot),
  };
  return Object.hasOwn(known, key) ? known[key]?.() : undefined;
}

const people = (shoot: Shoot): Choice[] => Object.keys(shoot.crew ?? {}).map((id) => ({ id, name: personName(shoot.crew, id) }));

function filtered({ kit }: Shoot, facet: 'closeUp' | 'cable'): Record<string, { name: string }> {
  return Object.fromEntries(Object.entries(kit.parts).filter(([, part]) => part[facet] !== undefined));
}

function pieceNames(build: Readonly<Record<string, unknown>>): Record<string, { name?: string }> {
  return (build['pieces'] ?? {}) as Record<string, { name?: string }>;
}

/** Modes of the camera of a setup, or of the part a piece is made of. */
function modesOf(shoot: Shoot, above: Readonly<Record<string, unknown>>): Choice[] {
  const part = (id: unknown) => shoot.kit.parts[shoot.kit.copies?.[String(id)]?.of ?? String(id)];
  const build = shoot.builds[String(above['camera'])];
  const of = 'of' in above ? part(above['of']) : part(build?.pieces[build.camera ?? '']?.of);
  const modes = of?.body?.modes ?? of?.radio?.modes ?? {};
  return Object.entries(modes).map(([id, { name }]) => ({ id, name }));
}

function screens(shoot: Shoot): Choice[] {
  return Object.entries(shoot.builds).flatMap(([buildId, build]) =>
    Object.entries(build.pieces).flatMap(([pieceId, piece]) => {
      const part = shoot.kit.parts[shoot.kit.copies?.[piece.of]?.of ?? piece.of];
      return part?.screen === undefined ? [] : { id: `${buildId}/${pieceId}`, name: `${piece.name ?? part.name}, ${build.name}` };
    }),
  );
}
