import { type PowerNode, powerTrace } from '../../../assembly/lines/powerTrace.ts';
import type { WiredLine, WiredPort } from '../../../assembly/lines/wiring.ts';
import { isSound } from '../../../assembly/lines/lineFaults.ts';
import type { Figure } from '../../../shoot/ledger/figures.ts';
import { connector } from '../../../standards/connectors.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeYes } from '../../judge.ts';
import { describeFigure } from '../../describeFigure.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { lineName } from '../../quantities/lineWords.ts';
import { highestV, lowestV, packOn } from '../../quantities/supplies.ts';
import { eachLine, lineOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import type { SetupGlass } from '../../subjects.ts';

export const plug = question({
  id: 'power.plug',
  asks: 'Does every supply plug bring the right voltage, the right way round?',
  kind: 'immediate',
  explains:
    'The same plug with another voltage or polarity destroys what it is put into; it is blocked, not warned of. The highest voltage that can come, of a pack fresh from the charger or of a regulator, must not pass what the device takes, and must reach what it needs at all, so that both ends of that window are wanted; ' +
    'where both ends state which contact is plus they must agree, a crossed cable counted. Whether the voltage lasts to the end of the pack is asked apart.',
  sources: ['the ports\' own figures', 'common practice'],
  subjects: (ledger) => eachLine(ledger, 'power'),
  ask: (asking, subject) => {
    const line = lineOf(asking, subject);
    if (!isSound(line)) return null;
    if (reversed(line)) return judgeYes({ yes: false, says: { holds: '', fails: `Blocked: the plug from ${lineName(line)} is wired the other way round.` }, notes: [BLOCKED] });
    const offered = voltsOffered(asking, withGlass(asking.ledger, subject), line);
    return offered === undefined ? null : judgeVolts(asking, line, offered);
  },
});

const BLOCKED = 'Do not plug it in.';

interface Offered {
  readonly volts: number;
  readonly from: string;
}

function judgeVolts(asking: Asking, line: WiredLine, offered: Offered): Judgement {
  const { volts } = offered;
  const [high, low] = [highestV(nodeFor(line)), lowestV(nodeFor(line))];
  const [from, to] = [line.from.piece.name, line.to.piece.name];
  const tooLow = low !== undefined && volts < low.value - 1e-9;
  const tooHigh = high !== undefined && volts > high.value + 1e-9;
  const wrong = tooLow || tooHigh;
  // One end of the window alone can block a plug, but never pass it.
  if (!wrong && (low === undefined || high === undefined)) {
    throw new NotEntered((['lowV', 'highV'] as const).filter((key) => (key === 'lowV' ? low : high) === undefined).map((key) => describeFigure(line.to.piece.part, `ports/${line.to.id}/power/${key}`)));
  }
  const least = tooLow;
  const limit = (least ? low : high) as Figure;
  const [given, taken] = [printAmount({ value: volts, unit: 'V' }), printAmount({ value: limit.value, unit: 'V' })];
  const notes = [...(wrong ? [BLOCKED] : []), ...(openPolarity(line) ? ['Which contact is plus is not stated at both ends: check with a meter before the first plug.'] : [])];
  return judgeYes({
    yes: !wrong,
    says: {
      holds: `${to} takes what ${from} gives.`,
      fails: least ? `Blocked: ${from} gives at most ${given}, ${to} needs ${taken} to start.` : `Blocked: ${from} gives up to ${given}, ${to} takes at most ${taken}.`,
    },
    needs: { amount: { value: limit.value, unit: 'V' }, from: `${least ? 'least' : 'most'} that ${to} takes ${origin(limit)}`, word: least ? 'needs' : 'bears' },
    has: { amount: { value: volts, unit: 'V' }, from: offered.from, word: 'gets' },
    mends: wrong ? regulators(asking, line, volts) : [],
    notes,
  });
}

const nodeFor = (line: WiredLine): PowerNode => ({ parent: -1, line, piece: line.to.piece, regulated: undefined, loop: { ohm: 0, lowOhm: 0, highOhm: 0, says: '' }, draw: undefined });

const polarityOf = ({ port }: WiredPort): string | undefined => port.power?.polarity;

/** Whether plus would meet minus. */
function reversed({ from, to, cable }: WiredLine): boolean {
  const [a, b] = [polarityOf(from), polarityOf(to)];
  const crossed = cable?.facet('cable')?.crossed === true;
  if (a === undefined || b === undefined) return crossed && (a ?? b) !== undefined;
  const agree = a === b || a === 'keyed' || b === 'keyed';
  return agree === crossed;
}

/** Plugs whose contacts differ from maker to maker, with one end silent. */
function openPolarity({ from, to }: WiredLine): boolean {
  const silent = polarityOf(from) === undefined || polarityOf(to) === undefined;
  return silent && connector(to.port.connector)?.pinning === undefined && from.port.power?.profile === undefined;
}

/** The highest voltage that can stand on a line, and where it comes from. */
function voltsOffered(asking: Asking, whole: SetupGlass, line: WiredLine): Offered | undefined {
  const found = powerTrace(asking.ledger, whole.setup, whole.glass).byLine.get(line.key);
  if (found === undefined) return statedAt(line.from);
  const { supply } = found;
  for (let at = supply.nodes[found.at]; at !== undefined; at = at.parent < 0 ? undefined : supply.nodes[at.parent]) {
    if (at.regulated !== undefined) return { volts: at.regulated.volts, from: `regulated, ${at.line?.from.piece.name ?? ''}` };
  }
  if (supply.kind === 'mains') return statedAt(line.from);
  const pack = packOn(asking, whole.setup, supply);
  return { volts: pack.fullV, from: `${pack.part.name}, full` };
}

function statedAt({ piece, id }: WiredPort): Offered | undefined {
  const volts = piece.part.figure(`ports/${id}/power/outputV`) ?? piece.part.figure(`ports/${id}/power/highV`);
  return volts === undefined ? undefined : { volts: volts.value, from: `stated at ${piece.name}` };
}

/** Regulators of the kit that take the one and give what the other takes. */
function regulators(asking: Asking, line: WiredLine, offeredV: number): Mend[] {
  const { ledger } = asking;
  const within = (volts: number): boolean => volts >= (lowestV(nodeFor(line))?.value ?? 0) && volts <= (highestV(nodeFor(line))?.value ?? Infinity);
  return ledger.keys('kit/parts').flatMap((id): Mend[] => {
    if (ledger.at(`kit/parts/${id}/kind`) !== 'regulator') return [];
    const ports = Object.values((ledger.at(`kit/parts/${id}/ports`) ?? {}) as Readonly<Record<string, WiredPort['port']>>);
    const takes = ports.some(({ way, power }) => way === 'in' && offeredV >= numberOf(power?.lowV, 0) && offeredV <= numberOf(power?.highV, Infinity));
    const gives = ports.some(({ way, power }) => way === 'out' && power?.outputV !== undefined && within(numberOf(power.outputV, 0)));
    return takes && gives && id !== line.from.piece.part.id ? [{ says: `${ledger.at(`kit/parts/${id}/name`) as string} between them` }] : [];
  });
}

const numberOf = (figure: number | { value: number } | undefined, otherwise: number): number => (figure === undefined ? otherwise : typeof figure === 'number' ? figure : figure.value);

