import { needOf } from '../../../assembly/lines/carriage.ts';
import type { Picture } from '../../../assembly/lines/picture.ts';
import { videoTrace } from '../../../assembly/lines/videoTrace.ts';
import type { WiredLine } from '../../../assembly/lines/wiring.ts';
import { coaxReach } from '../../../calc/video/coaxReach.ts';
import type { PartView } from '../../../shoot/ledger/PartView.ts';
import { lines as assumed } from '../../../standards/assumptions/lines.ts';
import { COAX_CLASSES, coaxClass } from '../../../standards/coaxClasses.ts';
import { sdiLevel } from '../../../standards/sdiLevels.ts';
import type { Judgement } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { describeFigure } from '../../describeFigure.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { cableEdit, cablesThatFit } from '../../quantities/kitCables.ts';
import { lineName, pictureName } from '../../quantities/lineWords.ts';
import { eachLine, lineOf, withGlass, wiringOf } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const length = question({
  id: 'lines.length',
  asks: 'Does the picture reach the end of its cable?',
  kind: 'immediate',
  explains:
    'On coaxial cable the loss at half the bit rate must stay within what the receiver makes good. Loss comes from the class of the cable, the budget from the receiving socket, or else from what such receivers ' +
    'usually make good: a practice, not a limit, and at the end the picture goes from whole to nothing within a few metres. HDMI states no length; there the usual length of passive cables is taken.',
  sources: ['SMPTE ST 259, 292-1, 424, 2081-1, 2082-1; budgets typical', 'loss by √f and f, standards/coaxClasses', 'common practice for HDMI'],
  subjects: (ledger) => eachLine(ledger, 'video'),
  ask: (asking, subject) => {
    const line = lineOf(asking, subject);
    const { setup, glass } = withGlass(asking.ledger, subject);
    const picture = videoTrace(asking.ledger, setup, glass).at.get(line.to.key)?.picture;
    if (line.cable === undefined || !line.cable.has('cable') || picture === undefined || line.shared) return null;
    const judgement = judge(asking, line, line.cable, picture);
    if (judgement === null || (judgement.use ?? 0) <= 1) return judgement;
    const mends = cablesThatFit(asking.ledger, wiringOf(asking, subject), line).toReversed().flatMap((cable) => {
      const after = reachFor(asking, line, cable, picture);
      const use = after === null ? Infinity : asking.figure(cable, 'cable/lengthMm').value / 1000 / after.m;
      return use <= 1 ? { says: `${cable.name} instead`, edit: cableEdit(line, cable), use, costs: 'shorter: is it long enough' } : [];
    });
    return { ...judgement, mends: mends.slice(0, 2) };
  },
});

function judge(asking: Asking, line: WiredLine, cable: PartView, picture: Picture): Judgement | null {
  const lengthMm = asking.figure(cable, 'cable/lengthMm');
  const reach = reachFor(asking, line, cable, picture);
  if (reach === null) return null;
  return judgeRatio({
    needs: { amount: { value: lengthMm.value / 1000, unit: 'm' }, from: `${cable.name} ${origin(lengthMm)}` },
    has: { amount: { value: reach.m, unit: 'm' }, from: reach.from },
    says: {
      holds: `${pictureName(picture)} reaches the end of ${cable.name} to ${line.to.piece.name}.`,
      tight: `${pictureName(picture)} just reaches the end of ${cable.name} to ${line.to.piece.name}.`,
      fails: `${cable.name} from ${lineName(line)} is too long for ${pictureName(picture)}.`,
    },
    steps: reach.steps,
  });
}

interface Reach {
  readonly m: number;
  readonly from: string;
  readonly steps: { says: string; amount: { value: number; unit: 'dB/100 m' | 'dB' } }[];
}

function reachFor(asking: Asking, line: WiredLine, cable: PartView, picture: Picture): Reach | null {
  const need = needOf(picture);
  if (typeof need === 'string') return null;
  if (line.to.port.video?.signal === 'HDMI') return hdmiReach(asking, need.hdmiLevel);
  if (need.sdiLevel === null || need.sdiGbps === null) return null;
  const budget = line.to.piece.part.figure(`ports/${line.to.id}/video/budgetDb`);
  const budgetDb = budget?.value ?? sdiLevel(need.sdiLevel)?.budgetDb.value ?? 20;
  const kind = classOf(asking, cable, need.sdiGbps, budgetDb);
  const { reachM, lossDbPer100m } = coaxReach({ rateGbps: need.sdiGbps, loss: [...kind.loss], budgetDb });
  return {
    m: reachM,
    from: `${kind.name} coax at level ${need.sdiLevel} (± ${Math.round(kind.within * 100)} %)`,
    steps: [
      { says: 'loss at half the bit rate', amount: { value: lossDbPer100m, unit: 'dB/100 m' } },
      { says: budget === undefined ? 'a receiver usually makes good' : `${line.to.piece.name} makes good`, amount: { value: budgetDb, unit: 'dB' } },
    ],
  };
}

/** A short lead holds in any class: then it need not be entered. */
function classOf(asking: Asking, cable: PartView, rateGbps: number, budgetDb: number) {
  const name = cable.read('cable/coax') as string | undefined;
  const known = name === undefined ? undefined : coaxClass(name);
  if (known !== undefined) return known;
  const worst = COAX_CLASSES[0];
  const lengthM = asking.figure(cable, 'cable/lengthMm').value / 1000;
  if (worst !== undefined && lengthM < 0.5 * coaxReach({ rateGbps, loss: [...worst.loss], budgetDb }).reachM) return worst;
  const { says, path } = describeFigure(cable, 'cable/coax');
  throw new NotEntered([{ path, says: `${says}: one of ${COAX_CLASSES.map((one) => one.name).join(', ')}` }]);
}

function hdmiReach(asking: Asking, level: string | null): Reach | null {
  if (level === null || level === '2.1') return null;
  const usual = asking.assume(level === '1.4' ? assumed.passiveHdmiM : assumed.passiveFastHdmiM);
  return { m: usual.value, from: `usual for a passive cable at level ${level} ${origin(usual)}`, steps: [] };
}
