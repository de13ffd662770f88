import { type Dark, type Leg, legsOf } from '../../assembly/lines/picture.ts';
import { type VideoTrace, videoTrace } from '../../assembly/lines/videoTrace.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Step } from '../answer.ts';
import type { SetupGlass } from '../subjects.ts';
import { darkSentence, socketName } from './lineWords.ts';

/** One cause that keeps the picture from pieces of a setup. */
export interface PictureLoss {
  readonly dark: Dark;
  /** The first piece that stays without a picture for it, and the way that ends there. */
  readonly piece: SetupPiece;
  readonly leg: Leg;
  /** What stays without as well. */
  readonly behind: readonly SetupPiece[];
}

/** Where a setup loses its picture, by the first piece that goes without; each cause once. */
export function pictureLosses(ledger: Ledger, { setup, glass }: SetupGlass): ReadonlyMap<string, PictureLoss> {
  return ledger.cell(`picture losses|${setup}|${glass}`, () => {
    const { into } = videoTrace(ledger, setup, glass);
    const byCause = new Map<unknown, Leg[]>();
    const nearFirst = [...into.values()].map((leg) => ({ leg, stages: legsOf(leg).length })).toSorted((a, b) => a.stages - b.stages);
    for (const { leg } of nearFirst) {
      if (leg.dark === undefined) continue;
      const cause = leg.dark.kind === 'no mode set' ? leg.dark.piece.ref : leg.dark;
      byCause.set(cause, [...(byCause.get(cause) ?? []), leg]);
    }
    return new Map([...byCause.values()].flatMap(([leg, ...others]) => (leg?.dark === undefined ? [] : [[leg.piece.ref, { dark: leg.dark, piece: leg.piece, leg, behind: others.map(({ piece }) => piece) }] as const])));
  });
}

/** Whether the question on outputs, on plugs or on formats names this cause already. */
export const isToldElsewhere = ({ kind }: Dark): boolean => kind === 'dead output' || kind === 'not entered' || kind === 'unsound line' || kind === 'refused';

/** Why a piece goes without, as one sentence that names it. */
export function lossSentence({ dark, piece, leg }: PictureLoss): string {
  if (isAt(dark, piece)) return darkSentence(dark);
  const loop = dark.kind === 'unfed' ? legsOf(leg).find(({ kind, port }) => kind === 'device' && port?.piece.ref === dark.port.piece.ref)?.port : undefined;
  if (dark.kind === 'unfed' && loop !== undefined) return `The ${socketName(loop)} has nothing to pass on to ${piece.name}: nothing is plugged into its ${dark.port.name}.`;
  return `${piece.name} gets no picture: ${darkSentence(dark).replace(/^(?:The|Nothing|What) /, (word) => word.toLowerCase())}`;
}

/** The cause that keeps a piece dark, told where the picture is lost; nothing where it has one. */
export function whyDark(ledger: Ledger, whole: SetupGlass, { ref }: SetupPiece): Step[] {
  const loss = [...pictureLosses(ledger, whole).values()].find(({ piece, behind }) => piece.ref === ref || behind.some((one) => one.ref === ref));
  return loss === undefined ? [] : [{ says: lossSentence(loss) }];
}

/** Whether the cause lies at this piece, and not before it. */
function isAt(dark: Dark, { ref }: SetupPiece): boolean {
  switch (dark.kind) {
    case 'unfed': case 'circle': case 'passes nothing on': case 'cannot make': case 'dead output': return dark.port.piece.ref === ref;
    case 'no net': case 'no transmitter': return dark.piece.ref === ref;
    case 'mode unknown to the receiver': case 'set to another mode': case 'another band': case 'too many frames': return dark.receiver.ref === ref;
    default: return false;
  }
}

/** The way to the last piece before this one that has a picture; `undefined` where none on the way has. */
export function lastLit({ into }: VideoTrace, leg: Leg): Leg | undefined {
  for (let one: Leg | undefined = leg.before; one !== undefined; one = one.before) {
    if (one.picture !== undefined) return one;
    const arrived = into.get(one.piece.ref);
    if (arrived?.picture !== undefined) return arrived;
  }
  return undefined;
}
