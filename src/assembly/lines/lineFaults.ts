import { type Mating, connector, mating } from '../../standards/connectors.ts';
import type { WiredLine, WiredPort, Wiring } from './wiring.ts';

/** What is wrong with a line as it is drawn, before anything flows. Data; words are made where it is shown. */
export type LineFault =
  | { readonly kind: 'two inputs' | 'two outputs' | 'into itself' | 'different kinds' | 'different signals' }
  /** Another cable is on this socket already. */
  | { readonly kind: 'socket taken'; readonly port: WiredPort; readonly by: WiredLine }
  | { readonly kind: 'no cable' }
  | { readonly kind: 'cable for something else'; readonly carries: string }
  /** The plug of the cable does not go where it should. */
  | { readonly kind: 'plug'; readonly port: WiredPort; readonly mating: Mating };

/** The worst first: what cannot be cured by another cable stands before what can. */
export function lineFaults(wiring: Wiring, line: WiredLine): readonly LineFault[] {
  const drawn = drawnWrong(line);
  if (drawn !== undefined) return [drawn];
  return [...taken(wiring, line), ...cableFaults(line)];
}

/** Whether a line could pass anything on at all, whatever its plugs. */
export const isSound = (line: WiredLine): boolean => drawnWrong(line) === undefined;

function drawnWrong({ from, to }: WiredLine): LineFault | undefined {
  if (from.key === to.key) return { kind: 'into itself' };
  if (from.port.way === 'in' && to.port.way === 'in') return { kind: 'two inputs' };
  if (from.port.way === 'out' && to.port.way === 'out') return { kind: 'two outputs' };
  if (from.port.kind !== to.port.kind) return { kind: 'different kinds' };
  const [sent, taken] = [from.port.video?.signal, to.port.video?.signal];
  return sent !== undefined && taken !== undefined && sent !== taken ? { kind: 'different signals' } : undefined;
}

/** A socket holds one plug; the first line that could pass anything keeps it. */
function taken(wiring: Wiring, line: WiredLine): LineFault[] {
  if (line.shared) return [];
  return [line.from, line.to].flatMap((port): LineFault[] => {
    const users = [...(wiring.outOf.get(port.key) ?? []), ...(wiring.into.get(port.key) ?? [])].filter((user) => !user.shared && isSound(user));
    const first = users[0];
    return first === undefined || first.key === line.key ? [] : [{ kind: 'socket taken', port, by: first }];
  });
}

function cableFaults({ cable, from, to, shared, direct }: WiredLine): LineFault[] {
  if (direct === true) {
    const found = mating(from.port, to.port);
    return found.fits === 'yes' ? [] : [{ kind: 'plug', port: from, mating: found }];
  }
  if (cable === undefined) return [{ kind: 'no cable' }];
  const made = cable.facet('cable');
  if (made === undefined) return [{ kind: 'cable for something else', carries: 'nothing' }];
  if (!shared && made.carries !== from.port.kind && from.port.shares === undefined && !carriesToo(made.ends[0].connector, from.port.kind)) {
    return [{ kind: 'cable for something else', carries: made.carries }];
  }
  const [a, b] = made.ends;
  const ways = [[mating(a, from.port), mating(b, to.port)], [mating(b, from.port), mating(a, to.port)]] as const;
  const best = ways[badness(ways[1]) < badness(ways[0]) ? 1 : 0];
  return [from, to].flatMap((port, at): LineFault[] => {
    const found = best[at as 0 | 1];
    return found.fits === 'yes' ? [] : [{ kind: 'plug', port, mating: found }];
  });
}

/** One cable of such plugs serves several kinds by nature: USB-C carries supply, data and picture. */
const carriesToo = (name: string, kind: 'video' | 'power' | 'control'): boolean => (connector(name)?.carries ?? []).filter((one) => one === kind).length > 0 && connector(name)?.pinning === 'standard in its kind';

const BADNESS: Readonly<Record<Mating['fits'], number>> = { yes: 0, unknown: 1, loose: 3, dead: 4, no: 5 };
const badness = (pair: readonly Mating[]): number => pair.reduce((sum, { fits }) => sum + BADNESS[fits], 0);
