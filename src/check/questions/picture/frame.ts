import { opticalPath } from '../../../assembly/opticalPath.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Side, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { type DeliveryFrame, deliveredPicture, deliveryFrame } from '../../quantities/deliveryFrame.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const frame = question({
  id: 'picture.frame',
  asks: 'Does the frame have the pixels that are delivered?',
  kind: 'immediate',
  explains:
    'The largest frame of the delivery’s shape is laid in the middle of the recorded canvas, squeezed as it is; what is to be kept free around it is taken off. ' +
    'Widened by the squeeze it must have at least as many pixels across, and as many lines, as the picture delivered: the worse of the two counts. ' +
    'Widening invents pixels across; where fewer columns were recorded than are delivered, a note says so. What is cropped is named, but is no fault.',
  sources: ['Geometry; frame and protection as in the ASC Framing Decision List', 'common practice'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    if (opticalPath(asking.ledger, subject.setup, subject.glass).lens === undefined) return null;
    const cut = deliveryFrame(asking, subject);
    const { needs, has } = worseSide(asking, cut);
    const what = `${ratio(cut.aspect)} out of ${cut.recording.modeName}${cut.squeeze === 1 ? '' : ` at ${printNumber(cut.squeeze)}×`}`;
    return judgeRatio({
      needs,
      has,
      says: { holds: `${what} has pixels to spare.`, tight: `${what} has only just the pixels delivered.`, fails: `${what} has fewer pixels than are delivered.` },
      steps: stepsOf(cut),
      mends: needs.amount.value > 0.9 * has.amount.value ? mendsOf(asking, subject, cut) : [],
      notes: notesOf(asking, cut),
    });
  },
});

/** Pixels across or lines, whichever is shorter of what is delivered. */
function worseSide(asking: Asking, cut: DeliveryFrame): { needs: Side; has: Side } {
  const delivered = deliveredPicture(asking);
  const { canvas, shownWidthPx } = cut.frame;
  const across = delivered.widthPx / shownWidthPx >= delivered.lines / canvas.heightPx;
  const word = across ? 'across' : 'lines';
  const amount = (px: number) => ({ value: Math.round(px), unit: 'px' }) as const;
  return {
    needs: { amount: amount(across ? delivered.widthPx : delivered.lines), from: `${word}, delivered` },
    has: { amount: amount(across ? shownWidthPx : canvas.heightPx), from: `${word}, in the frame${cut.squeeze === 1 ? '' : ' once widened'}` },
  };
}

function stepsOf({ recording, squeeze, canvasAspect, protection, frame: { canvas }, usedFraction, cuts }: DeliveryFrame): Step[] {
  return [
    { says: `${recording.modeName}, ${px(recording.widthPx)} × ${px(recording.heightPx)}, widened by ${printNumber(squeeze)} is ${ratio(canvasAspect)}` },
    {
      says:
        `${cuts === 'nothing' ? 'Nothing cropped' : `Cropped at the ${cuts}`}${protection === 0 ? '' : `, ${printNumber(protection * 100)}\u2009% kept free`}: ` +
        `the frame is ${px(canvas.widthPx)} × ${px(canvas.heightPx)} as recorded`,
    },
    { says: 'of the canvas used', amount: { value: usedFraction, unit: 'share' } },
  ];
}

function notesOf(asking: Asking, { squeeze, frame: { canvas, shownWidthPx } }: DeliveryFrame): string[] {
  const delivered = deliveredPicture(asking);
  const stretched = squeeze !== 1 && canvas.widthPx < delivered.widthPx && shownWidthPx >= delivered.widthPx;
  return stretched ? [`Across, ${px(canvas.widthPx)} recorded columns are widened to the ${px(delivered.widthPx)} delivered: fine detail is softer across than up and down.`] : [];
}

/** Less kept free, or another mode of the same body. */
function mendsOf(asking: Asking, subject: SetupGlass, cut: DeliveryFrame): Mend[] {
  const { body } = opticalPath(asking.ledger, subject.setup, subject.glass);
  const setupName = nameAt(asking.ledger, 'setups', subject.setup);
  const used = useOf(asking, cut);
  const unguarded = used * (1 - cut.protection);
  const free: Mend[] =
    cut.protection > 0 && used > 1
      ? [{ says: 'Keep nothing free around the frame', edit: { says: 'nothing kept free around the frame', patches: [{ op: 'remove', path: 'needs/delivery/protection' }] }, costs: 'no room left to reframe or steady', use: unguarded }]
      : [];
  const modes = body === undefined ? [] : asking.ledger.keys(`${body.part.path}/body/modes`);
  const others = modes
    .map((mode) => ({ mode, other: deliveryFrame(asking, subject, `body/modes/${mode}`) }))
    .map(({ mode, other }) => ({ mode, name: other.recording.modeName, use: useOf(asking, other) }))
    .filter(({ use }) => use < used && use <= 1)
    .toSorted((a, b) => a.use - b.use);
  return [
    ...free.filter(({ use = 0 }) => use <= 1),
    ...others.map(({ mode, name, use }) => ({
      says: `Record ${setupName} in ${name}`,
      edit: { says: `${setupName} in ${name}`, patches: [{ op: 'replace' as const, path: `setups/${subject.setup}/mode`, value: mode }] },
      costs: 'for every lens of the setup; angle of view, coverage and outputs change with it',
      use,
    })),
  ];
}

function useOf(asking: Asking, cut: DeliveryFrame): number {
  const { needs, has } = worseSide(asking, cut);
  return needs.amount.value / has.amount.value;
}

const px = (value: number): string => printAmount({ value: Math.round(value), unit: 'px' }).replace(/\s*px$/, '');
const ratio = (aspect: number): string => `${aspect.toFixed(2)}:1`;
