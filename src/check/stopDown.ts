import { stopsBetween } from '../calc/optics/stopsBetween.ts';
import { figureOf } from '../shoot/ledger/figures.ts';
import type { StatedFigure } from '../shoot/schema/basics.ts';
import { WHOLE_STOPS } from '../standards/wholeStops.ts';
import { printNumber } from '../units/print.ts';
import type { Mend } from './answer.ts';
import type { Asking } from './Asking.ts';
import { lightThrough } from './quantities/lightThrough.ts';
import type { SetupGlass } from './subjects.ts';

/** The first whole stop at which it holds, for those of the shots that are brighter; nothing where none on a ring does. */
export function stopDown(asking: Asking, subject: SetupGlass, shots: readonly string[], useAt: (fNumber: number) => number): Mend[] {
  const perT = Math.sqrt(lightThrough(asking, subject).value);
  const brighter = (than: number) => shots.map((shot) => ({ shot, stop: stopOf(asking, shot) })).filter(({ stop }) => stop < than);
  const tStop = WHOLE_STOPS.find((t) => brighter(t).length > 0 && useAt(t * perT) <= 1);
  if (tStop === undefined) return [];
  const { stops } = stopsBetween({ fromNumber: Math.min(...brighter(tStop).map(({ stop }) => stop)), toNumber: tStop });
  const patches = brighter(tStop).map(({ shot }) => ({ op: 'replace' as const, path: `shots/${shot}/tStop`, value: tStop }));
  const costs = `${inStops(stops)} more light or sensitivity`;
  return [{ says: `Stop down to T${tStop}`, edit: { says: `stopped down to T${tStop}`, patches }, costs, use: useAt(tStop * perT) }];
}

/** "1 stop", "2.3 stops". */
export function inStops(stops: number): string {
  const number = printNumber(stops, 2);
  return `${number} ${number === '1' ? 'stop' : 'stops'}`;
}

function stopOf({ ledger }: Asking, shot: string): number {
  const path = `shots/${shot}/tStop`;
  const stated = ledger.at(path) as StatedFigure | undefined;
  return stated === undefined ? Infinity : figureOf(stated, path, 'sheet').value;
}
