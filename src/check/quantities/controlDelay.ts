import { type ControlPath, controlPaths } from '../../assembly/lines/controlTrace.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import type { Asking } from '../Asking.ts';
import type { Missing } from '../answer.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import { type SetupGlass, glassesOf } from '../subjects.ts';
import { type Bounded, sumOf } from './Bounded.ts';
import { ringTurner } from './ringTurner.ts';

/** Delay from the hand to the ring, ms. */
export interface ControlDelay extends Bounded {
  readonly stages: readonly { readonly says: string; readonly figure: Figure }[];
}

/** The way of the hand's command to the motor that turns the focus ring; `undefined` where a wheel on the rods or the ring itself is turned. */
export function controlPath(asking: Asking, subject: SetupGlass): ControlPath | undefined {
  const turner = ringTurner(asking, subject);
  if (turner === undefined || turner.kind === 'wheel') return undefined;
  return controlPaths(asking.ledger, subject.setup, wiredAs(asking, subject, turner.piece)).find(({ motor }) => motor.ref === turner.piece.ref);
}

/** Lines are the same with every glass, unless a glass brings some of its own: traced once for them all. */
function wiredAs({ ledger }: Asking, { setup, glass }: SetupGlass, { fromGlass }: SetupPiece): string {
  const own = fromGlass || ledger.keys(`glasses/${glass}/lines`).length > 0;
  return own ? glass : (glassesOf(ledger, setup)[0] ?? glass);
}

/** Hand unit, radio, cable and motor, stage by stage. Nothing where no command travels. */
export function controlDelay(asking: Asking, subject: SetupGlass): ControlDelay {
  return asking.ledger.cell(`control delay|${subject.setup}|${subject.glass}`, () => {
    const path = controlPath(asking, subject);
    if (path === undefined || path.broken !== undefined) return { ...sumOf([]), stages: [] };
    const missing: Missing[] = [];
    const stages = path.legs.flatMap(({ kind, piece, delay }) => {
      if (delay !== undefined && 'missing' in delay) {
        missing.push(describeFigure(delay.missing.part, delay.missing.path));
        return [];
      }
      if (kind === 'hand') return [{ says: piece.name, figure: delay?.figure ?? asking.assume(focus.handDelayMs) }];
      return delay === undefined ? [] : [{ says: kind === 'air' ? `radio to ${piece.name}` : piece.name, figure: delay.figure }];
    });
    if (missing.length > 0) throw new NotEntered(missing);
    const { motor } = path;
    const all = [...stages, { says: motor.name, figure: motor.part.figure('motor/delayMs') ?? asking.assume(focus.motorDelayMs) }];
    return { ...sumOf(all.map(({ figure }) => figure)), stages: all };
  });
}
