import { nets } from '../../assembly/lines/nets.ts';
import type { Supply } from '../../assembly/lines/powerTrace.ts';
import { type SetupPiece, pieceSetting } from '../../assembly/setupPieces.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import type { Step } from '../answer.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Region, permission } from './permission.ts';

/** What a change of pack darkens, and for how long. */
export interface ChangeDark {
  /** From pack off until everything is back, s; 0 with hot swap. */
  readonly seconds: number;
  readonly dark: readonly SetupPiece[];
  readonly steps: readonly Step[];
}

/** Hands, then whichever device is slowest to come back: boot, radar listening and link, motor map. */
export function changeDark(asking: Asking, whole: SetupGlass, supply: Supply): ChangeDark {
  const dark = [...new Map(supply.nodes.filter(({ draw }) => draw !== undefined).map(({ piece }) => [piece.ref, piece])).values()];
  if (supply.hotSwap && supply.packs.length > 1) return { seconds: 0, dark: [], steps: [{ says: 'the other pack carries on meanwhile' }] };
  const hands = asking.assume(assumed.changeS).value;
  const back = dark.map((piece) => comesBack(asking, whole, piece)).toSorted((a, b) => b.seconds - a.seconds);
  return {
    seconds: hands + (back[0]?.seconds ?? 0),
    dark,
    steps: [
      { says: 'changing the pack', amount: { value: hands, unit: 's' } },
      ...back.filter(({ seconds }) => seconds > 0).map(({ says, seconds }) => ({ says, amount: { value: seconds, unit: 's' as const } })),
    ],
  };
}

function comesBack(asking: Asking, whole: SetupGlass, piece: SetupPiece): { says: string; seconds: number } {
  const { part } = piece;
  const bootS = part.figure('draw/bootS')?.value ?? 0;
  const relinkS = part.figure('radio/relinkS')?.value ?? 0;
  const listenS = listening(asking, whole, piece);
  const mapS = part.facet('motor')?.losesMap === true ? asking.assume(assumed.calibrateS).value : 0;
  const does = [bootS > 0 ? 'starts' : '', listenS > 0 ? 'listens for radar' : '', relinkS > 0 ? 'links again' : '', mapS > 0 ? 'is calibrated anew' : ''].filter((one) => one !== '');
  return { says: `${piece.name} ${does.join(', ')}`, seconds: bootS + listenS + relinkS + mapS };
}

/** A transmitter on a channel shared with radar must listen again each time it starts. */
function listening({ ledger }: Asking, { setup, glass }: SetupGlass, piece: SetupPiece): number {
  const channel = pieceSetting(piece, 'channel');
  const region = ledger.at('needs/region') as Region | undefined;
  if (channel === undefined || region === undefined) return 0;
  const sends = nets(ledger, setup, glass).some(({ transmitters }) => transmitters.includes(piece));
  return sends ? permission(piece, region, channel).listenS : 0;
}
