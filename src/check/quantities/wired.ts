import { type WiredLine, type Wiring, wiring } from '../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Asking } from '../Asking.ts';
import { type SetupGlass, glassesOf } from '../subjects.ts';

/** Lines are the same with every glass, unless a glass brings some of its own; only then it is named. */
export interface WiredSubject {
  readonly setup: string;
  readonly glass?: string;
}

/** The setup with the glass a subject names, or with its first. */
export const withGlass = (ledger: Ledger, { setup, glass }: WiredSubject): SetupGlass => ({ setup, glass: glass ?? glassesOf(ledger, setup)[0] ?? '' });

/** The wiring a subject is about. */
export function wiringOf(asking: Asking, subject: WiredSubject): Wiring {
  const { setup, glass } = withGlass(asking.ledger, subject);
  return wiring(asking.ledger, setup, glass);
}

/** Each setup with its first glass, and with every other glass that has wiring of its own. */
export function eachWired(ledger: Ledger): readonly Wired[] {
  return ledger.cell('wired setups', () => ledger.keys('setups').flatMap((setup) =>
    glassesOf(ledger, setup).flatMap((glass, at) => {
      if (at > 0 && !isWired(ledger, glass)) return [];
      return { subject: at === 0 ? { setup } : { setup, glass }, whole: { setup, glass } };
    }),
  ));
}

interface Wired {
  readonly subject: WiredSubject;
  readonly whole: SetupGlass;
}

/** The setup with a glass, or with its first where the glass brings no wiring of its own. */
export const wiredAs = (ledger: Ledger, setup: string, glass: string): SetupGlass => ({ setup, glass: isWired(ledger, glass) ? glass : (glassesOf(ledger, setup)[0] ?? glass) });

const isWired = (ledger: Ledger, glass: string): boolean =>
  ledger.cell(`is wired|${glass}`, () => ledger.keys(`glasses/${glass}/lines`).length > 0 || ledger.keys(`glasses/${glass}/pieces`).some((id) => partHasPorts(ledger, ledger.at(`glasses/${glass}/pieces/${id}/of`) as string)));

function partHasPorts(ledger: Ledger, id: string): boolean {
  const part = (ledger.at(`kit/copies/${id}/of`) as string | undefined) ?? id;
  return ledger.keys(`kit/parts/${part}/ports`).length > 0;
}

export interface LineSubject extends WiredSubject {
  readonly line: string;
}

/** Every line of a kind; of a further glass only those that touch its pieces. */
export function eachLine(ledger: Ledger, kind?: 'video' | 'power' | 'control'): readonly LineSubject[] {
  return ledger.cell(`each line|${kind ?? ''}`, () => eachWired(ledger).flatMap(({ subject, whole }) =>
    wiring(ledger, whole.setup, whole.glass)
      .lines.filter(({ from, to }) => kind === undefined || from.port.kind === kind || to.port.kind === kind)
      .filter(({ from, to }) => subject.glass === undefined || from.piece.fromGlass || to.piece.fromGlass)
      .map(({ key }) => ({ ...subject, line: key })),
  ));
}

/** The line a subject names. */
export function lineOf(asking: Asking, subject: LineSubject): WiredLine {
  const line = wiringOf(asking, subject).byKey.get(subject.line);
  if (line === undefined) throw new Error(`there is no line ${subject.line}`);
  return line;
}

export interface PieceSubject extends WiredSubject {
  readonly piece: string;
}

/** Pieces that a trace picks; of a further glass only its own. */
export function eachPieceOf(ledger: Ledger, pick: (whole: SetupGlass) => Iterable<SetupPiece>): PieceSubject[] {
  return eachWired(ledger).flatMap(({ subject, whole }) =>
    [...pick(whole)].filter(({ fromGlass }) => subject.glass === undefined || fromGlass).map(({ ref }) => ({ ...subject, piece: ref })),
  );
}
