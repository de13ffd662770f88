import { controlPaths } from '../../assembly/lines/controlTrace.ts';
import { legsOf } from '../../assembly/lines/picture.ts';
import { powerTrace } from '../../assembly/lines/powerTrace.ts';
import { wiring } from '../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { pictureName } from '../../check/quantities/lineWords.ts';
import { seenBy } from '../../check/quantities/seenBy.ts';
import { eachViewer } from '../../check/subjects.ts';
import { rowsOf } from '../lineSchedule.ts';
import type { MakingOfSetup } from '../paper.ts';

/** A problem, and where to look in which order. */
export interface Problem {
  readonly says: string;
  readonly look: readonly string[];
}

/** What goes wrong with the lines of a setup, from their traced ways: from the screen, the motor or the dark device back to the source. */
export function problemsOf(making: MakingOfSetup): Problem[] {
  const numbers = new Map(rowsOf(making).map(({ key, number }) => [key, number]));
  const glass = making.glasses[0] ?? '';
  const fed = feeds(making, glass, numbers);
  return [...pictures(making, numbers, fed), ...controls(making, glass, numbers, fed), ...darks(making, glass, numbers), ...others()];
}

type Feeds = (piece: SetupPiece) => string;

function feeds({ ledger, setup }: MakingOfSetup, glass: string, numbers: ReadonlyMap<string, string>): Feeds {
  const wired = wiring(ledger, setup, glass);
  return (piece) => {
    const line = (wired.portsOf.get(piece.ref) ?? []).filter(({ port }) => port.kind === 'power').flatMap(({ key }) => wired.into.get(key) ?? [])[0];
    if (line !== undefined) return `${piece.name} has power: cable ${numberOf(numbers, line.key)} from ${line.from.piece.name}`;
    return piece.part.has('pack') || piece.part.has('batteryPlate') ? `${piece.name} has a charged pack` : `${piece.name} is switched on`;
  };
}

const numberOf = (numbers: ReadonlyMap<string, string>, key: string): string => numbers.get(key) ?? numbers.get(key.replace(/\+$/, '')) ?? '';

function pictures({ ledger, setup }: MakingOfSetup, numbers: ReadonlyMap<string, string>, fed: Feeds): Problem[] {
  const told = new Map<string, Problem>();
  for (const subject of eachViewer(ledger).filter((one) => one.setup === setup)) {
    const seen = seenBy(ledger, subject);
    if (seen?.leg === undefined || told.has(seen.screen.ref)) continue;
    const look = legsOf(seen.leg).toReversed().flatMap((leg): string[] => {
      if (leg.kind === 'cable' && leg.line !== undefined) return [`cable ${numberOf(numbers, leg.line.key)}: ${leg.line.from.piece.name}, ${leg.line.from.name}, to ${leg.line.to.piece.name}, ${leg.line.to.name}. Swap it for one that works`];
      if (leg.kind === 'air') {
        const sender = leg.before?.piece;
        const mode = leg.mode === undefined ? '' : `, mode ${String(leg.piece.part.read(`radio/modes/${leg.mode}/name`) ?? leg.mode)}`;
        return [fed(leg.piece), `${leg.piece.name} and ${sender?.name ?? 'the transmitter'} on the same net and channel${mode}; aerials on and clear of people`, ...(sender === undefined ? [] : [fed(sender)])];
      }
      if (leg.kind === 'camera') return [`${leg.piece.name}, ${leg.port?.name ?? 'output'}: live in this mode${leg.picture === undefined ? '' : `, sends ${pictureName(leg.picture)}`}`];
      return leg.port === undefined ? [] : [`${leg.piece.name} passes it on at ${leg.port.name}`];
    });
    told.set(seen.screen.ref, { says: `No picture on ${seen.screen.name} (${seen.name})`, look: [fed(seen.screen), `${seen.screen.name}: the input that is used, ${seen.leg.port?.name ?? 'its receiver'}, is chosen`, ...look] });
  }
  return [...told.values()];
}

function controls({ ledger, setup }: MakingOfSetup, glass: string, numbers: ReadonlyMap<string, string>, fed: Feeds): Problem[] {
  return controlPaths(ledger, setup, glass).map(({ motor, legs }) => ({
    says: `${motor.name} does not turn`,
    look: [
      fed(motor), 'calibrated for this lens, and not since it lost power', 'gear in mesh, not too deep; the ring turns by hand',
      ...legs.toReversed().flatMap((leg): string[] => {
        if (leg.kind === 'hand') return [fed(leg.piece), `${leg.piece.name}: the right lens map, limits off`];
        if (leg.line !== undefined) return [`cable ${numberOf(numbers, leg.line.key)} to ${leg.piece.name}`, fed(leg.line.from.piece)];
        return [`${leg.piece.name} hears the hand unit: same net and channel`];
      }),
    ],
  }));
}

/** A pack that ends takes these with it. */
function darks({ ledger, setup }: MakingOfSetup, glass: string, numbers: ReadonlyMap<string, string>): Problem[] {
  return powerTrace(ledger, setup, glass).supplies.filter(({ nodes }) => nodes.length > 0).map(({ piece, packs, nodes }) => ({
    says: `All of these are dark: ${[...new Set(nodes.filter(({ draw }) => draw !== undefined).map((node) => node.piece.name))].join(', ')}`,
    look: [
      packs.length === 0 ? `${piece.name}: its supply` : packs.every(({ name }) => name === piece.name) ? `${piece.name} is charged and seated` : `${piece.name}: the pack on it (${packs.map(({ name }) => name).join(', ')}) is charged and seated`,
      ...nodes.filter(({ parent, line }) => parent < 0 && line !== undefined).map(({ line }) => `cable ${numberOf(numbers, line?.key ?? '')} at ${line?.from.piece.name ?? ''}, ${line?.from.name ?? ''}: seated, fuse whole`),
      'take the last device added off again: a short circuit shuts the output off',
    ],
  }));
}

function others(): Problem[] {
  return [
    { says: 'The picture comes and goes', look: ['wiggle each plug of its way, far end first', 'receiver higher, aerials upright, people out of the line', 'another channel, agreed with sound', 'mode with less detail and more reach'] },
    { says: 'Faces too wide or too narrow', look: ['squeeze on the screen: see the lens card', 'de-squeeze on in two places, or in none', 'output of the camera already de-squeezed'] },
    { says: 'Soft on the marks', look: ['taking lens still locked at infinity', 'tape from the sensor plane, not from the front', 'support pushes the lens up: loosen, look, set again', 'gear slipped a tooth: check one mark by eye', 'cold: infinity again'] },
    { says: 'Upright lines lean', look: ['the block turned in its clamp: line of tape', 'camera level', 'shoot the squeeze-axis chart again'] },
  ];
}
