import { placeSetup } from '../assembly/placing/placeSetup.ts';
import { type BlockedScrew, orderOfAssembly } from '../assembly/space/orderOfAssembly.ts';
import { type WorldSolid, worldSolids } from '../assembly/space/worldSolids.ts';
import { type SetupPiece, setupPieces } from '../assembly/setupPieces.ts';
import { type Box, type RigView, VIEWS, VIEW_NAMES, drawView, rigView, seenSpots } from './build/drawRig.ts';
import { findings } from './build/findings.ts';
import { numbered } from './build/numbers.ts';
import { type BuildStep, buildSteps } from './build/steps.ts';
import type { Mark } from './ink/Mark.ts';
import { type MakingOfSetup, paper } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { QUIET, SIZE } from './sheet/look.ts';
import type { Sheet } from './sheet/Sheet.ts';
import { stateOf } from './sheet/setupState.ts';
import { table } from './sheet/table.ts';
import { tickBox } from './sheet/verdictMarks.ts';

/** The rig drawn, and how it goes together. */
export const buildSheet = paper({
  id: 'build-sheet',
  says: 'Build sheet',
  per: 'setup',
  make: (making) => {
    const glass = making.glasses[0] ?? '';
    const sheet = sheetFor(making, 'Build sheet', `${making.setupName}, with ${(making.ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass}`);
    stateOf(sheet, making);
    sheet.text('What is said of strength here is an estimate, not a load rating. Above people, on vehicles and on cranes: local rules, a second fixing, a qualified rigger.', { sizePt: SIZE.small });
    const solids = worldSolids(making.ledger, making.setup, glass);
    const steps = buildSteps(making, glass);
    const { blocked } = orderOfAssembly(making.ledger, making.setup, glass);
    const ticked = new Set<string>();
    for (const build of new Set(steps.map((step) => step.build))) {
      const own = solids.filter(({ piece }) => piece.build === build);
      const name = (making.ledger.at(`builds/${build}/name`) as string | undefined) ?? build;
      const drawn = new Set(own.map(({ piece }) => piece.ref)).size > 1;
      if (drawn) threeSides(sheet, name, own, making);
      else {
        piecesOf(sheet, name, build, making);
        ticked.add(build);
      }
      stepsOf(sheet, name, steps.filter((step) => step.build === build && (drawn || step.fixings.length > 0 || step.after.length > 0)), drawn ? own : [], blocked.filter(({ joint }) => joint.joint.build === build).map((one) => coveredWords(making, one)));
    }
    leftOver(sheet, making, glass, ticked);
    findings(sheet, making);
    return [pdfFile(making, `${making.setup}/build-sheet.pdf`, 'Build sheet', sheet.pages())];
  },
});

const SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100];

/** The largest plain scale at which everything goes into a room. */
const scaleFor = (wanted: number): number => SCALES.find((one) => one >= wanted) ?? Math.ceil(wanted / 50) * 50;

/** Three sides at one scale, pieces numbered, with a list of the numbers. */
function threeSides(sheet: Sheet, name: string, solids: readonly WorldSolid[], making: MakingOfSetup): void {
  const views = VIEWS.map((view) => ({ view, seen: rigView(solids, view) }));
  const [left, front, top] = views.map(({ seen }) => seen) as [RigView, RigView, RigView];
  const size = ({ box }: RigView) => [box.right - box.left, box.bottom - box.top] as const;
  const [[w1, h1], [w2, h2], [, h3]] = [size(left), size(front), size(top)];
  const gap = 12;
  const roomHigh = 150;
  const scale = scaleFor(Math.max((w1 + w2) / (sheet.widthMm - gap), (Math.max(h1, h2) + h3) / (roomHigh - gap - 10)));
  const [upper, lower] = [Math.max(h1, h2) / scale, h3 / scale];
  const refs = [...new Set(solids.map(({ piece }) => piece.ref))];
  const shown = new Set(refs.filter((ref) => views.some(({ seen }) => seenSpots(seen, ref).length > 0)));
  sheet.keep(upper + lower + gap + 40);
  sheet.heading(`${name}: three sides, 1 : ${scale}`);
  sheet.drawing(upper + lower + gap + 8, (x, y) => {
    const place = (seen: RigView, atX: number, atY: number, says: string): Mark[] => [
      { kind: 'text', text: says, x: atX, y: atY + 2.4, face: 'regular', sizePt: SIZE.small, tone: QUIET },
      ...drawView(seen, { box: seen.box, x: atX, y: atY + 4, scale: 1 / scale }),
      ...numbered(seen, refs, { x: atX, y: atY + 4, scale: 1 / scale }, (ref) => shown.has(ref)),
    ];
    return [
      ...place(left, x, y + upper - h1 / scale, VIEW_NAMES.left), ...place(front, x + w1 / scale + gap, y + upper - h2 / scale, VIEW_NAMES.front), ...place(top, x, y + upper + gap - 4, VIEW_NAMES.top),
    ];
  });
  const pieces = refs.map((ref) => solids.find(({ piece }) => piece.ref === ref)?.piece as SetupPiece);
  numbersList(sheet, pieces.map(({ name: one }, at) => `${at + 1}  ${one}`));
  if (solids.some(({ coarse }) => coarse)) sheet.text('Dashed outlines are a guess from the kind of part: its shape is not entered.', { sizePt: SIZE.small });
  const placement = placeSetup(making.ledger, making.setup, making.glasses[0] ?? '');
  const shapeless = [...placement.places.keys()].filter((ref) => ref.startsWith(`${solids[0]?.piece.build ?? ''}/`) && !refs.includes(ref));
  if (shapeless.length > 0) sheet.text(`Not drawn, as the shape is not entered: ${shapeless.map((ref) => nameOf(making, ref)).join(', ')}.`, { sizePt: SIZE.small });
  const unplaced = placement.unplaced.filter(({ ref }) => ref.startsWith(`${solids[0]?.piece.build ?? ''}/`));
  if (unplaced.length > 0) sheet.text(`Not drawn, for want of a place: ${unplaced.map(({ ref }) => nameOf(making, ref)).join(', ')}.`, { sizePt: SIZE.small });
}

/** Of a build of which nothing, or one piece, has a place there is nothing to draw: what stands there is ticked off. */
function piecesOf(sheet: Sheet, name: string, build: string, { ledger, setup, glasses }: MakingOfSetup): void {
  const names = [...setupPieces(ledger, setup, glasses[0] ?? '').values()].filter((piece) => piece.build === build).map((piece) => piece.name);
  const [columns, stepMm] = [3, 5];
  const rows = Math.ceil(names.length / columns);
  sheet.keep(rows * stepMm + 22);
  sheet.heading(name);
  sheet.block(rows * stepMm + 2, (y) => names.forEach((text, at) => {
    const [x, middle] = [sheet.left + Math.floor(at / rows) * (sheet.widthMm / columns), y + (at % rows) * stepMm + 2.5];
    sheet.put(tickBox(x, middle, 2.6), { kind: 'text', text: sheet.fonts.cut('regular', SIZE.small, text, sheet.widthMm / columns - 8), x: x + 4.6, y: middle + 1, face: 'regular', sizePt: SIZE.small });
  }));
}

function numbersList(sheet: Sheet, words: readonly string[]): void {
  const columns = 3;
  const rows = Math.ceil(words.length / columns);
  const width = sheet.widthMm / columns;
  sheet.block(rows * 4 + 2, (y) => words.forEach((text, at) => sheet.put({ kind: 'text', text: sheet.fonts.cut('regular', SIZE.small, text, width - 3), x: sheet.left + Math.floor(at / rows) * width, y: y + (at % rows) * 4 + 3, face: 'regular', sizePt: SIZE.small })));
}

const STEP_DRAWING = { sideMm: 52, frontMm: 30, heightMm: 40 } as const;

/** Where a screw is covered in every order there is none to print: then it is said, and only what is fixed to what is told, without numbers. */
function stepsOf(sheet: Sheet, name: string, steps: readonly BuildStep[], solids: readonly WorldSolid[], covered: readonly string[]): void {
  if (steps.length === 0) return;
  sheet.keep((solids.length === 0 ? 10 : STEP_DRAWING.heightMm) + 26);
  sheet.heading(covered.length === 0 ? `${name}: step by step` : `${name}: what is fixed to what`);
  if (covered.length > 0) sheet.text(`No order puts it together with every screw within reach: ${covered.join('; ')}. What follows is no order.`);
  const [side, front] = [rigView(solids, 'left'), rigView(solids, 'front')];
  const shown = new Set<string>();
  const textX = solids.length === 0 ? 8 : STEP_DRAWING.sideMm + STEP_DRAWING.frontMm + 10;
  steps.forEach((step, at) => {
    const fresh = new Set(step.fresh.map(({ ref }) => ref));
    for (const ref of fresh) shown.add(ref);
    const drawn = side.outlines.some(({ ref }) => shown.has(ref));
    const rows = stepText(sheet, step, at + 1, sheet.widthMm - textX);
    const height = Math.max(drawn ? STEP_DRAWING.heightMm + 4 : 10, rows.heightMm + 4);
    sheet.block(height, (y) => {
      if (covered.length === 0) sheet.put({ kind: 'text', text: String(at + 1), x: sheet.left, y: y + 4, face: 'strong', sizePt: SIZE.heading });
      if (drawn) sheet.put(...fitted(side, sheet.left + 6, y + 1, STEP_DRAWING.sideMm, shown, fresh), ...fitted(front, sheet.left + 8 + STEP_DRAWING.sideMm, y + 1, STEP_DRAWING.frontMm - 2, shown, fresh));
      sheet.put(...rows.at(sheet.left + textX, y + 1));
      sheet.rule(y + height - 1);
    });
  });
}

function fitted(seen: RigView, x: number, y: number, widthMm: number, shown: ReadonlySet<string>, fresh: ReadonlySet<string>): Mark[] {
  const box: Box = seen.box;
  const scale = Math.min(widthMm / Math.max(box.right - box.left, 1), STEP_DRAWING.heightMm / Math.max(box.bottom - box.top, 1));
  return drawView(seen, { box, x: x + (widthMm - (box.right - box.left) * scale) / 2, y: y + (STEP_DRAWING.heightMm - (box.bottom - box.top) * scale) / 2, scale, shown, fresh });
}

/** The words of a step, measured before they are placed. */
function stepText(sheet: Sheet, { title, fixings, after }: BuildStep, _number: number, widthMm: number): { heightMm: number; at: (x: number, y: number) => Mark[] } {
  const lines: { text: string; face: 'regular' | 'strong' | 'italic'; size: number; indent: number; box?: boolean }[] = [];
  const add = (text: string, face: 'regular' | 'strong' | 'italic', size: number, indent: number, box = false) =>
    sheet.fonts.lines(face, size, text, widthMm - indent).forEach((one, at) => lines.push({ text: one, face, size, indent, box: box && at === 0 }));
  add(title, 'strong', SIZE.body, 0);
  for (const { says, how } of fixings) {
    add(says, 'regular', SIZE.small, 4.4, true);
    if (how !== '') add(how, 'italic', SIZE.small, 4.4);
  }
  for (const text of after) add(`Check: ${text}`, 'regular', SIZE.small, 0);
  const heightOf = (size: number) => size * 0.46;
  return {
    heightMm: lines.reduce((sum, { size }) => sum + heightOf(size), 0),
    at: (x, y) => {
      let place = y;
      return lines.flatMap(({ text, face, size, indent, box }): Mark[] => {
        place += heightOf(size);
        const words: Mark = { kind: 'text', text, x: x + indent, y: place - heightOf(size) * 0.24, face, sizePt: size };
        return box === true ? [tickBox(x, place - heightOf(size) * 0.48, 2.4), words] : [words];
      });
    },
  };
}

const nameOf = ({ ledger, setup, glasses }: MakingOfSetup, ref: string): string => setupPieces(ledger, setup, glasses[0] ?? '').get(ref)?.name ?? ref;

/** Of pieces that no order puts on: what is in the way. */
const coveredWords = (making: MakingOfSetup, { joint: { joint }, by }: BlockedScrew): string => `${nameOf(making, by)} covers the screw between ${joint.a.piece.name} and ${joint.b.piece.name}`;

/** What no place was found for. */
function leftOver(sheet: Sheet, making: MakingOfSetup, glass: string, ticked: ReadonlySet<string>): void {
  const unplaced = placeSetup(making.ledger, making.setup, glass).unplaced.filter(({ ref }) => !ticked.has(ref.split('/')[0] ?? ''));
  if (unplaced.length === 0) return;
  sheet.heading('Settle these by hand');
  table(sheet, [{ says: 'what', share: 3 }, { says: 'why', share: 5 }], unplaced.map(({ ref, why }) => ({ cells: [{ text: nameOf(making, ref), box: true }, `It ${why}.`.replace('..', '.')] })));
}
