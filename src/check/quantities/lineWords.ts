import type { Refusal } from '../../assembly/lines/carriage.ts';
import type { LineFault } from '../../assembly/lines/lineFaults.ts';
import type { Dark, Picture } from '../../assembly/lines/picture.ts';
import type { WiredLine, WiredPort } from '../../assembly/lines/wiring.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import { printNumber } from '../../units/print.ts';

/** "A body to Picture transmitter". */
export const lineName = ({ from, to }: WiredLine): string => `${from.piece.name} to ${to.piece.name}`;

/** "SDI output of the A body". */
export const socketName = ({ piece, name }: WiredPort): string => `${name} of ${piece.name}`;

/** "1920 × 1080 at 25". */
export function pictureName({ widthPx, heightPx, frameRateHz, interlaced, segmented }: Picture): string {
  return `${widthPx} × ${heightPx} at ${printNumber(frameRateHz, 4)}${interlaced ? ' interlaced' : segmented ? ' segmented' : ''}`;
}

/** What is wrong with a line as drawn, as one sentence. */
export function faultSentence(line: WiredLine, fault: LineFault): string {
  return (FAULTS[fault.kind] as (line: WiredLine, fault: LineFault) => string)(line, fault);
}

/** Why a line refuses a picture, as the end of a sentence. */
export function refusalWords(refusal: Refusal): string {
  return (REFUSALS[refusal.kind] as (refusal: Refusal) => string)(refusal);
}

/** Why no picture comes, as one sentence. */
export function darkSentence(dark: Dark): string {
  return (DARKS[dark.kind] as (dark: Dark) => string)(dark);
}

/** The members of a union that may be of one kind. */
type Of<T, K> = T extends { readonly kind: infer Kinds } ? (K extends Kinds ? T : never) : never;

export const KIND: Readonly<Record<string, string>> = { video: 'picture', power: 'power', control: 'control' };
const FIT = { yes: 'fits', no: 'does not fit', unknown: 'may not fit', loose: 'sits loosely in', dead: 'goes on without contact at' } as const;

const FAULTS: { readonly [K in LineFault['kind']]: (line: WiredLine, fault: Of<LineFault, K>) => string } = {
  'two inputs': ({ from, to }) => `The line between ${from.piece.name} and ${to.piece.name} joins two inputs: nothing sends.`,
  'two outputs': ({ from, to }) => `The line between ${from.piece.name} and ${to.piece.name} joins two outputs: they feed each other.`,
  'into itself': ({ from }) => `A line of ${from.piece.name} ends in the socket it starts from.`,
  'different kinds': ({ from, to }) => `The line from ${from.piece.name} to ${to.piece.name} joins a ${KIND[from.port.kind]} socket to a ${KIND[to.port.kind]} socket.`,
  'different signals': ({ from, to }) =>
    `${from.piece.name} sends ${from.port.video?.signal ?? 'one signal'}, ${to.piece.name} takes ${to.port.video?.signal ?? 'another'}; a converter is missing.`,
  'socket taken': ({ from, to }, { port, by }) => {
    const [ours, theirs] = port.key === from.key ? [to, by.to] : [from, by.from];
    return `The ${socketName(port)} already holds the plug for ${theirs.piece.name}; there is no socket for ${ours.piece.name}.`;
  },
  'no cable': (line) => `No cable is chosen from ${lineName(line)}.`,
  'cable for something else': (line, { carries }) => `${line.cable?.name ?? 'The cable'} from ${lineName(line)} is made for ${KIND[carries] ?? carries}.`,
  plug: ({ cable, to, direct }, { port, mating }) => `${direct === true ? to.piece.name : (cable?.name ?? 'The cable')} ${FIT[mating.fits]} the ${socketName(port)}.`,
};

const placeName = (where: WiredPort | PartView): string => ('piece' in where ? socketName(where) : where.name);
const takesFields = ({ port }: WiredPort): string => (port.video?.accepts?.some(({ interlaced }) => interlaced) === true ? 'interlaced' : 'progressive');

const REFUSALS: { readonly [K in Refusal['kind']]: (refusal: Of<Refusal, K>) => string } = {
  level: ({ needs, has, where }) => (needs === null ? `no level of ${placeName(where)} carries it` : `it needs level ${needs}, and the ${placeName(where)} has ${has}`),
  'unknown level': ({ level, where }) => `"${level}" of ${placeName(where)} is no known level`,
  'unknown raster': ({ says }) => says.replace(/\.$/, ''),
  raster: ({ port }) => `${port.piece.name} does not list that size`,
  rate: ({ port }) => `${port.piece.name} does not take that rate`,
  fields: ({ port }) => `${port.piece.name} takes it only ${takesFields(port)}`,
  mapping: ({ sent, port }) => `it is sent ${sent === 'segmented' ? 'in segments' : `as ${sent}`}, which ${port.piece.name} does not take`,
  sampling: ({ sent, port }) => `it is sent ${sent}, which ${port.piece.name} does not take`,
};

const DARKS: { readonly [K in Dark['kind']]: (dark: Of<Dark, K>) => string } = {
  unfed: ({ port }) => `Nothing is plugged into the ${socketName(port)}.`,
  'dead output': ({ port }) => `The ${socketName(port)} is dead in this mode.`,
  'passes nothing on': ({ port }) => `Nothing says what the ${socketName(port)} sends.`,
  circle: ({ port }) => `The picture lines run in a circle through ${port.piece.name}: no camera is in it.`,
  'not entered': ({ missing }) => `What ${missing[0]?.part.name ?? 'the camera'} sends is not entered.`,
  'unsound line': ({ line }) => faultSentence(line, { kind: line.from.port.kind === line.to.port.kind ? 'different signals' : 'different kinds' }),
  refused: ({ line, picture, refusals }) => `${pictureName(picture)} does not pass from ${lineName(line)}: ${refusals.map(refusalWords).join('; ')}.`,
  'cannot make': ({ port, picture }) => `The ${socketName(port)} does not make ${pictureName(picture)}.`,
  'no net': ({ piece }) => `${piece.name} is on no radio net.`,
  'no transmitter': ({ piece }) => `Nothing transmits on the net of ${piece.name}.`,
  'no mode set': ({ piece }) => `${piece.name} has several modes and none is set.`,
  'mode unknown to the receiver': ({ receiver, transmitter }) => `${receiver.name} does not know the mode that ${transmitter.name} sends in.`,
  'set to another mode': ({ receiver, transmitter }) => `${receiver.name} is set to another mode than ${transmitter.name}.`,
  'another band': ({ receiver, transmitter }) => `${receiver.name} works in another band than ${transmitter.name}.`,
  'too many frames': ({ transmitter }) => `${transmitter.name} does not send so many frames a second.`,
};

/** Shown with every line schedule. */
export const PLUG_CAUTION = 'Power before video, video off first; one common ground; never hot-plug an unprotected tap.';
