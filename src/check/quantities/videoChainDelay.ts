import { type Leg, legsOf } from '../../assembly/lines/picture.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { ViewerSubject } from '../subjects.ts';
import type { Missing } from '../answer.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import { type Bounded, sumOf } from './Bounded.ts';
import { seenBy } from './seenBy.ts';

/** One part of a picture's delay. */
export interface DelayStage {
  readonly says: string;
  readonly figure: Figure;
  readonly leg: Leg | undefined;
}

/** Delay from sensor to light, ms. */
export interface ChainDelay extends Bounded {
  readonly stages: readonly DelayStage[];
}

/**
 * Delay of the picture a viewer sees, stage by stage. `undefined` where no picture arrives; throws `NotEntered` with every delay
 * that is missing on the way.
 */
export function videoChainDelay(ledger: Ledger, subject: ViewerSubject): ChainDelay | undefined {
  return ledger.cell(`picture delay|${subject.setup}|${subject.glass}|${subject.viewer}`, () => {
    const seen = seenBy(ledger, subject);
    if (seen?.leg?.picture === undefined) return undefined;
    const missing: Missing[] = [];
    const stages = legDelays(seen.leg, missing);
    const own = seen.screen.part.figure('screen/delayMs');
    if (own === undefined) missing.push(describeFigure(seen.screen.part, 'screen/delayMs'));
    else stages.push({ says: seen.screen.name, figure: own, leg: undefined });
    if (missing.length > 0) throw new NotEntered(missing);
    return { ...sumOf(stages.map(({ figure }) => figure)), stages };
  });
}

/** Delays of the legs to a place; what is not entered is added to `missing`. Legs without delay are left out. */
export function legDelays(leg: Leg, missing: Missing[]): DelayStage[] {
  return legsOf(leg).flatMap((one): DelayStage[] => {
    if (one.delay === undefined) return [];
    if ('missing' in one.delay) {
      missing.push(describe(one.delay.missing));
      return [];
    }
    const { figure } = one.delay;
    return figure.value === 0 && figure.high === 0 ? [] : [{ says: stageName(one), figure, leg: one }];
  });
}

const describe = ({ part, path }: { part: PartView; path: string }): Missing => describeFigure(part, path);

/** "A body", "Picture transmitter to Receiver A, detailed". */
export function stageName({ kind, piece, mode, before }: Leg): string {
  if (kind !== 'air') return piece.name;
  const sender = before?.piece;
  const modeName = mode === undefined ? undefined : ((sender?.part.read(`radio/modes/${mode}/name`) ?? mode) as string);
  return `${sender === undefined ? '' : `${sender.name} to `}${piece.name}${modeName === undefined ? '' : `, ${modeName}`}`;
}
