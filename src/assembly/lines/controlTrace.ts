import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { isSound } from './lineFaults.ts';
import { type Net, nets, radioMode } from './nets.ts';
import type { LegDelay } from './picture.ts';
import { type WiredLine, type Wiring, wiring } from './wiring.ts';

/** A step on the way from the hand to a motor, the hand first. */
export interface ControlLeg {
  readonly kind: 'hand' | 'air' | 'cable';
  /** The piece it ends in. */
  readonly piece: SetupPiece;
  readonly line: WiredLine | undefined;
  readonly mode: string | undefined;
  readonly delay: LegDelay | undefined;
}

/** Why no hand reaches a motor. */
export type ControlBreak =
  | { readonly kind: 'not connected' | 'no net' | 'no transmitter' | 'no mode set' | 'circle'; readonly piece: SetupPiece }
  | { readonly kind: 'other mode' | 'another band'; readonly piece: SetupPiece; readonly transmitter: SetupPiece }
  | { readonly kind: 'protocol'; readonly line: WiredLine };

/** The way of a command from a hand wheel to a motor. */
export interface ControlPath {
  readonly motor: SetupPiece;
  /** From the hand, or from where the way breaks, to the motor. */
  readonly legs: readonly ControlLeg[];
  readonly hand: SetupPiece | undefined;
  readonly broken: ControlBreak | undefined;
}

/** One path for each motor of a setup. */
export function controlPaths(ledger: Ledger, setup: string, glass: string): readonly ControlPath[] {
  return ledger.cell(`control|${setup}|${glass}`, () => {
    const wired = wiring(ledger, setup, glass);
    const radios = nets(ledger, setup, glass).filter(({ carries }) => carries === 'control');
    return [...wired.pieces.values()].filter(({ part }) => part.has('motor')).map((motor) => pathTo(motor, wired, radios));
  });
}

function pathTo(motor: SetupPiece, wired: Wiring, radios: readonly Net[]): ControlPath {
  const legs: ControlLeg[] = [];
  const seen = new Set<string>();
  let piece = motor;
  while (!piece.part.has('handWheel')) {
    if (seen.has(piece.ref)) return { motor, legs, hand: undefined, broken: { kind: 'circle', piece } };
    seen.add(piece.ref);
    const step = stepBefore(piece, wired, radios);
    if ('kind' in step) return { motor, legs, hand: undefined, broken: step };
    legs.unshift(step.leg);
    piece = step.before;
  }
  legs.unshift({ kind: 'hand', piece, line: undefined, mode: undefined, delay: figureDelay(piece, 'handWheel/delayMs') });
  return { motor, legs, hand: piece, broken: undefined };
}

function stepBefore(piece: SetupPiece, wired: Wiring, radios: readonly Net[]): { leg: ControlLeg; before: SetupPiece } | ControlBreak {
  const line = (wired.portsOf.get(piece.ref) ?? [])
    .filter(({ port }) => port.kind === 'control')
    .flatMap((port) => wired.into.get(port.key) ?? [])
    .find(isSound);
  if (line !== undefined) {
    const [ours, theirs] = [line.to.port.control?.protocol, line.from.port.control?.protocol];
    if (ours !== undefined && theirs !== undefined && ours !== theirs) return { kind: 'protocol', line };
    return { leg: { kind: 'cable', piece, line, mode: undefined, delay: figureDelay(piece, `ports/${line.to.id}/control/delayMs`) }, before: line.from.piece };
  }
  const radio = piece.part.facet('radio');
  if (radio?.carries !== 'control' || radio.role === 'transmits') return { kind: 'not connected', piece };
  return airStep(piece, radios);
}

function airStep(receiver: SetupPiece, radios: readonly Net[]): { leg: ControlLeg; before: SetupPiece } | ControlBreak {
  const net = radios.find(({ receivers }) => receivers.includes(receiver));
  if (net === undefined) return { kind: 'no net', piece: receiver };
  const transmitter = net.transmitters.find((one) => one !== receiver);
  if (transmitter === undefined) return { kind: 'no transmitter', piece: receiver };
  const mode = radioMode(transmitter);
  if (mode === undefined) return { kind: 'no mode set', piece: transmitter };
  const modes = receiver.part.facet('radio')?.modes ?? {};
  if (!Object.hasOwn(modes, mode) || (radioMode(receiver) ?? mode) !== mode) return { kind: 'other mode', piece: receiver, transmitter };
  const bands = [transmitter, receiver].map(({ part }) => part.figure('radio/bandMHz')?.value);
  if (bands[0] !== undefined && bands[1] !== undefined && Math.abs(bands[0] - bands[1]) > 0.2 * bands[0]) return { kind: 'another band', piece: receiver, transmitter };
  const path = `radio/modes/${mode}/delayMs`;
  const figures = [transmitter, receiver].flatMap(({ part }) => part.figure(path) ?? []);
  const longest = figures.toSorted((a, b) => b.value - a.value)[0];
  return {
    leg: { kind: 'air', piece: receiver, line: undefined, mode, delay: longest === undefined ? { missing: { part: receiver.part, path } } : { figure: longest } },
    before: transmitter,
  };
}

function figureDelay({ part }: SetupPiece, path: string): LegDelay | undefined {
  const figure = part.figure(path);
  return figure === undefined ? undefined : { figure };
}
