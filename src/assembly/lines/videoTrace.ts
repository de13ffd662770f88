import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { airLeg, cableLeg, cameraLeg, deviceLeg, sourceLeg } from './legs.ts';
import { isSound } from './lineFaults.ts';
import { type Net, nets } from './nets.ts';
import type { Leg } from './picture.ts';
import { type WiredPort, type Wiring, wiring } from './wiring.ts';

/** Every picture of a setup, on its way from the camera to the last screen. */
export interface VideoTrace {
  readonly wiring: Wiring;
  /** The way to each picture port, by its key. */
  readonly at: ReadonlyMap<string, Leg>;
  /** The way to each piece that takes a picture in, by `build/piece`: to the input it uses. */
  readonly into: ReadonlyMap<string, Leg>;
}

export function videoTrace(ledger: Ledger, setup: string, glass: string): VideoTrace {
  return ledger.cell(`video|${setup}|${glass}`, () => new Tracer(ledger, setup, glass).trace());
}

/** A place a picture can be at: a port, or a receiver's end of the air. Each has at most one place before it. */
type Place = { readonly key: string } & ({ readonly port: WiredPort } | { readonly receiver: SetupPiece });

class Tracer {
  readonly #wiring: Wiring;
  readonly #nets: readonly Net[];
  readonly #legs = new Map<string, Leg>();
  readonly #choices = new Map<string, WiredPort>();
  readonly #mode: string;
  readonly #frameRateHz: number;

  constructor(ledger: Ledger, setup: string, glass: string) {
    this.#wiring = wiring(ledger, setup, glass);
    this.#nets = nets(ledger, setup, glass).filter(({ carries }) => carries === 'video');
    this.#mode = `body/modes/${ledger.at(`setups/${setup}/mode`) as string}`;
    this.#frameRateHz = ledger.at(`setups/${setup}/frameRateHz`) as number;
  }

  trace(): VideoTrace {
    for (const port of this.#wiring.ports.values()) if (port.port.kind === 'video') this.#resolve({ key: port.key, port });
    const into = new Map<string, Leg>();
    for (const piece of this.#wiring.pieces.values()) {
      const place = this.#entry(piece);
      if (place !== undefined) into.set(piece.ref, this.#resolve(place));
    }
    return { wiring: this.#wiring, at: this.#legs, into };
  }

  /** Walks back to what is known or is a source, then forward again; never deeper than one place at a time. */
  #resolve(wanted: Place): Leg {
    const trail: Place[] = [];
    const onTrail = new Set<string>();
    let place: Place | undefined = wanted;
    while (place !== undefined && !this.#legs.has(place.key)) {
      if (onTrail.has(place.key)) {
        this.#legs.set(place.key, sourceLeg(pieceOf(place), portOf(place), { kind: 'circle', port: portOf(place) ?? (portOf(trail.at(-1) as Place) as WiredPort) }));
        break;
      }
      onTrail.add(place.key);
      trail.push(place);
      place = this.#before(place);
    }
    for (const one of trail.toReversed()) if (!this.#legs.has(one.key)) this.#legs.set(one.key, this.#leg(one));
    return this.#legs.get(wanted.key) as Leg;
  }

  /** The one place a picture comes from to reach this one. */
  #before(place: Place): Place | undefined {
    if ('receiver' in place) {
      const transmitter = this.#transmitterOf(place.receiver);
      return transmitter === undefined ? undefined : this.#entry(transmitter);
    }
    const { port } = place;
    if (this.#isInput(port)) {
      const line = this.#lineInto(port);
      return line === undefined ? undefined : { key: line.from.key, port: line.from };
    }
    return this.#isCameraOutput(port) ? undefined : this.#inside(port);
  }

  /** What an output passes on: the input it names; a receiver's reception; the one input there is. */
  #inside({ piece, port }: WiredPort): Place | undefined {
    const named = port.video?.from;
    const input = named === undefined ? undefined : this.#wiring.ports.get(`${piece.ref}/${named}`);
    if (input !== undefined) return { key: input.key, port: input };
    const inputs = this.#inputs(piece);
    if (receivesPicture(piece) && inputs.length === 0) return { key: `air ${piece.ref}`, receiver: piece };
    return inputs.length === 1 && inputs[0] !== undefined ? { key: inputs[0].key, port: inputs[0] } : undefined;
  }

  /** Where a picture enters a piece that shows or sends it: the input with a cable that brings one, else its own reception, else its first input. */
  #entry(piece: SetupPiece): Place | undefined {
    const inputs = this.#inputs(piece);
    const cabled = inputs.filter((port) => this.#lineInto(port) !== undefined);
    const used = cabled.length > 1 ? this.#chosen(piece, cabled) : cabled[0];
    if (used !== undefined) return { key: used.key, port: used };
    if (receivesPicture(piece)) return { key: `air ${piece.ref}`, receiver: piece };
    return inputs[0] === undefined ? undefined : { key: inputs[0].key, port: inputs[0] };
  }

  /** Of several cabled inputs people switch to one that has a picture; the first where none has, or where it hangs on this very choice. */
  #chosen(piece: SetupPiece, cabled: readonly WiredPort[]): WiredPort | undefined {
    const known = this.#choices.get(piece.ref);
    if (known !== undefined) return known;
    const [first] = cabled;
    if (first === undefined) return undefined;
    this.#choices.set(piece.ref, first);
    const lit = cabled.find((port) => this.#resolve({ key: port.key, port }).picture !== undefined) ?? first;
    this.#choices.set(piece.ref, lit);
    return lit;
  }

  #leg(place: Place): Leg {
    const at = this.#before(place);
    const before = at === undefined ? undefined : this.#legs.get(at.key);
    if ('receiver' in place) return airLeg(before, this.#transmitterOf(place.receiver), place.receiver);
    const { port } = place;
    if (this.#isInput(port)) return cableLeg(before, this.#lineInto(port) ?? this.#wiring.into.get(port.key)?.[0], port);
    if (this.#isCameraOutput(port)) return cameraLeg(port, this.#mode, this.#frameRateHz, this.#wiring.outOf.get(port.key)?.[0]);
    return deviceLeg(before, port, this.#frameRateHz);
  }

  #lineInto(port: WiredPort) {
    return this.#wiring.into.get(port.key)?.find(isSound);
  }

  #inputs(piece: SetupPiece): WiredPort[] {
    return (this.#wiring.portsOf.get(piece.ref) ?? []).filter((port) => port.port.kind === 'video' && this.#isInput(port));
  }

  /** A socket that goes both ways is an input where a cable arrives. */
  #isInput(port: WiredPort): boolean {
    return port.port.way === 'in' || (port.port.way === 'both' && this.#wiring.into.has(port.key));
  }

  #transmitterOf(receiver: SetupPiece): SetupPiece | undefined {
    return this.#nets.find((net) => net.receivers.includes(receiver))?.transmitters[0];
  }

  #isCameraOutput({ piece, port }: WiredPort): boolean {
    return piece.part.has('body') && port.video?.from === undefined;
  }
}

const receivesPicture = ({ part }: SetupPiece): boolean => {
  const radio = part.facet('radio');
  return radio?.carries === 'video' && radio.role !== 'transmits';
};
const portOf = (place: Place): WiredPort | undefined => ('port' in place ? place.port : undefined);
const pieceOf = (place: Place): SetupPiece => ('port' in place ? place.port.piece : place.receiver);
