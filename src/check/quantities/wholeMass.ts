import { type BuildCables, type CableEnd, cableMasses } from '../../assembly/hold/cableMasses.ts';
import { type PieceMass, pieceMasses } from '../../assembly/hold/pieceMasses.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { type MassProperties, NO_INERTIA, composite } from '../../calc/mechanics/massProperties.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { printAmount } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { counted } from '../counted.ts';
import type { SetupGlass } from '../subjects.ts';

/** What some pieces of a build weigh, with their share of the cables plugged into them. Nothing needs a place for it. */
export interface BuildLoad {
  readonly massG: number;
  readonly lowG: number;
  readonly highG: number;
  readonly weighed: readonly PieceMass[];
  readonly cables: readonly CableEnd[];
  /** Pieces, or packs on them, whose mass is not entered. */
  readonly unweighed: readonly SetupPiece[];
  readonly unweighedCables: BuildCables['unweighed'];
}

/** The one sum of masses that all questions on weight and balance go by; only pieces that `counts` takes. */
export function buildLoad(ledger: Ledger, { setup, glass }: SetupGlass, build: string, counts: (piece: SetupPiece) => boolean): BuildLoad {
  const pieces = pieceMasses(ledger, setup, glass, build);
  const lines = cableMasses(ledger, setup, glass, build);
  const weighed = pieces.weighed.filter(({ piece }) => counts(piece));
  const cables = lines.weighed.filter(({ piece }) => counts(piece));
  const sum = (key: 'massG' | 'lowG' | 'highG') => [...weighed, ...cables].reduce((all, one) => all + one[key], 0);
  return {
    massG: sum('massG'), lowG: sum('lowG'), highG: sum('highG'), weighed, cables,
    unweighed: pieces.unweighed.filter(counts), unweighedCables: lines.unweighed.filter(({ piece }) => counts(piece)),
  };
}

type CablesOf = Pick<BuildLoad, 'cables'>;
const cableCount = (cables: readonly { readonly line: string }[]): number => new Set(cables.map(({ line }) => line)).size;

/** "9 pieces and 3 cables". */
export const countOfLoad = (pieces: number, { cables }: CablesOf): string => `${counted(pieces, 'piece')}${cables.length === 0 ? '' : ` and ${counted(cableCount(cables), 'cable')}`}`;

/** What all the cables weigh, for a step of the working; nothing where none has a mass. */
export function cableStep({ cables }: CablesOf): { says: string; amount: { value: number; unit: 'g' } }[] {
  return cables.length === 0 ? [] : [{ says: cableCount(cables) === 1 ? 'one cable plugged into it' : `${cableCount(cables)} cables plugged into it`, amount: { value: cables.reduce((all, { massG }) => all + massG, 0), unit: 'g' } }];
}

/** Names of what has no mass: pieces, cables, and how many lines still have no cable. */
export function namesWithoutMass({ unweighed, unweighedCables }: Pick<BuildLoad, 'unweighed' | 'unweighedCables'>): string[] {
  const lines = new Map(unweighedCables.map(({ line, name }) => [line, name]));
  const counts = new Map<string, number>();
  for (const name of lines.values()) if (name !== undefined) counts.set(name, (counts.get(name) ?? 0) + 1);
  const open = [...lines.values()].filter((name) => name === undefined).length;
  return [
    ...unweighed.map(({ name }) => name), ...[...counts].map(([name, count]) => (count === 1 ? name : `${count} × ${name}`)),
    ...(open === 0 ? [] : [`${counted(open, 'cable')} still to be found`]),
  ];
}

/** Said where a mass may be out by more than this share of it, either way. */
const WORTH_SAYING = 0.02;

/** What of a weight is in doubt or left out, for the notes. */
export function weightNotes(load: Pick<BuildLoad, 'massG' | 'lowG' | 'highG' | 'unweighed' | 'unweighedCables'>): string[] {
  const names = namesWithoutMass(load);
  const { massG, lowG, highG } = load;
  const print = (value: number) => printAmount({ value, unit: 'g' });
  return [
    ...(Math.max(massG - lowG, highG - massG) > WORTH_SAYING * massG ? [`By the doubts of its masses it weighs between ${print(lowG)} and ${print(highG)}.`] : []),
    ...(names.length === 0 ? [] : [`Weighs nothing here: ${names.join(', ')}.`]),
  ];
}

/** The part of a build that something carries. */
export interface WholeMass extends MassProperties {
  readonly lowG: number;
  readonly highG: number;
  readonly pieces: readonly PieceMass[];
  /** With a place, as the pieces. */
  readonly cables: readonly CableEnd[];
  /** Pieces and cables that have a mass, but no place: not in the centre. */
  readonly unplacedG: number;
  readonly unweighed: readonly SetupPiece[];
  readonly unweighedCables: BuildCables['unweighed'];
}

/** Mass and centre of the placed pieces of a build that `counts` takes, and of the cables on them; `undefined` where there are none. */
export function wholeMass(asking: Asking, subject: SetupGlass, build: string, counts: (piece: SetupPiece) => boolean): WholeMass | undefined {
  const load = buildLoad(asking.ledger, subject, build, counts);
  const pieces = load.weighed.filter((one) => one.placed);
  if (pieces.length === 0) return undefined;
  const cables = load.cables.filter(({ atMm }) => atMm !== undefined);
  const whole = composite([...pieces, ...cables.flatMap(({ massG, atMm }) => (atMm === undefined ? [] : { massG, centreMm: atMm, inertiaKgM2: NO_INERTIA }))]);
  const sum = (key: 'lowG' | 'highG') => [...pieces, ...cables].reduce((all, one) => all + one[key], 0);
  return { ...whole, lowG: sum('lowG'), highG: sum('highG'), pieces, cables, unplacedG: load.massG - whole.massG, unweighed: load.unweighed, unweighedCables: load.unweighedCables };
}

/** What is in doubt and what is left out of a centre of mass, for the notes. */
export function leftOut(whole: WholeMass): string[] {
  return [...(whole.unplacedG > 0.5 ? [`Pieces and cables of ${Math.round(whole.unplacedG)} g have no place yet and do not count to the balance.`] : []), ...weightNotes(whole)];
}

/** The heaviest plate with packs on it, or pack: what one moves to balance the rest. */
export const heaviestPack = ({ pieces }: WholeMass): PieceMass | undefined => pieces.filter(({ piece }) => piece.part.has('pack') || piece.part.has('batteryPlate')).toSorted((a, b) => b.massG - a.massG)[0];
