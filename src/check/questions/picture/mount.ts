import { opticalPath } from '../../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import { freeKey } from '../../../shoot/edit/freeKey.ts';
import type { Patch } from '../../../shoot/edit/Edit.ts';
import type { Joint } from '../../../shoot/schema/build.ts';
import type { Point } from '../../../shoot/schema/mechanics.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { lensOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const mount = question({
  id: 'picture.mount',
  asks: 'Does the lens fit the body’s mount, at the right distance?',
  kind: 'immediate',
  explains:
    'Mount names are followed from the body through each mount adapter of the glass to the lens; every pair must be the same. Then the distances are added: the body’s flange distance and the adapters’ thickness ' +
    'must come to what the lens is set for, or it never reaches infinity (too far out), or passes it and its marks read long (too far in). Differences of a few hundredths are a matter of shims: ' +
    'whether infinity is truly infinity on this body is asked apart. Where it does not fit, the kit’s adapters are tried.',
  sources: ['common practice'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    if (path.lens === undefined || path.body === undefined) return null;
    const gap = firstMisfit(path.body, path.mountAdapters, path.lens);
    return gap === undefined ? judgeFlange(asking, path.body, path.mountAdapters, path.lens) : misfit(asking, subject, gap, path.body);
  },
});

interface Misfit {
  readonly behind: string;
  readonly ahead: string;
  /** The mounts that face each other. */
  readonly bodySide: string;
  readonly lensSide: string;
}

/** From the body outwards, the first two mounts that are not the same. */
function firstMisfit(body: SetupPiece, adapters: readonly SetupPiece[], lens: SetupPiece): Misfit | undefined {
  let at = { name: body.name, mount: body.part.read('body/mount') as string };
  for (const { part, name } of adapters) {
    const rear = part.read('mountAdapter/bodyMount') as string;
    if (rear !== at.mount) return { behind: at.name, ahead: name, bodySide: at.mount, lensSide: rear };
    at = { name, mount: part.read('mountAdapter/lensMount') as string };
  }
  const rear = lens.part.read('lens/mount') as string;
  return rear === at.mount ? undefined : { behind: at.name, ahead: lens.name, bodySide: at.mount, lensSide: rear };
}

function misfit(asking: Asking, subject: SetupGlass, { behind, ahead, bodySide, lensSide }: Misfit, body: SetupPiece): Judgement {
  const mends = adaptersOfKit(asking, subject, body);
  return judgeYes({
    yes: false,
    says: { holds: '', fails: `${ahead} (${lensSide}) does not fit ${behind} (${bodySide}).` },
    steps: [{ says: `${behind} offers the mount ${bodySide}; ${ahead} wants ${lensSide}` }],
    mends,
    notes: mends.length > 0 ? [] : ['No mount adapter of the kit joins the two. An adapter needs room: it can only put a lens set for a longer flange distance on a body with a shorter one.'],
  });
}

/** Adapters that take the body's mount on one side and the lens's on the other; the edit puts one behind the lens in place of those there. */
function adaptersOfKit(asking: Asking, subject: SetupGlass, body: SetupPiece): Mend[] {
  const { ledger } = asking;
  const path = opticalPath(ledger, subject.setup, subject.glass);
  const lens = lensOf(path, subject.glass);
  const [bodyMount, lensMount] = [body.part.read('body/mount'), lens.part.read('lens/mount')];
  return ledger.keys('kit/parts').flatMap((id) => {
    const part = new PartView(ledger, id);
    if (part.read('mountAdapter/bodyMount') !== bodyMount || part.read('mountAdapter/lensMount') !== lensMount) return [];
    const inTheWay = new Set(path.mountAdapters.map((piece) => piece.id));
    return [{
      says: `Put ${part.name} between them`,
      edit: { says: `${part.name} behind the lens`, patches: adapterPatches(asking, subject, { id, part, lens: lens.id, body: body.id, inTheWay }) },
      costs: 'the lens moves forward by its thickness, and what reaches for the lens with it',
    }];
  });
}

interface NewAdapter {
  readonly id: string;
  readonly part: PartView;
  readonly lens: string;
  readonly body: string;
  readonly inTheWay: ReadonlySet<string>;
}

function adapterPatches(asking: Asking, { glass }: SetupGlass, { id, part, lens, body, inTheWay }: NewAdapter): Patch[] {
  const { ledger } = asking;
  const root = `glasses/${glass}`;
  const pieces = ledger.keys(`${root}/pieces`);
  const piece = freeKey('mount-adapter', pieces.filter((one) => !inTheWay.has(one)));
  const stack = (ledger.at(`${root}/stack`) as readonly string[]).filter((one) => !inTheWay.has(one));
  const joints = (ledger.at(`${root}/joints`) ?? {}) as Readonly<Record<string, Joint>>;
  const seats = seatsOf(part);
  const kept = Object.entries(joints).filter(([, { a, b }]) => ![a, b].some((end) => inTheWay.has(end.split('/')[0] ?? '')));
  const seat = kept.find(([, { a, b }]) => [a, b].some((end) => end.startsWith(`${lens}/`)) && [a, b].some((end) => end.startsWith(`${body}/`)));
  const others = pieces.filter((one) => !inTheWay.has(one)).map((one) => [one, ledger.at(`${root}/pieces/${one}`)] as const);
  return [
    { op: 'replace', path: `${root}/pieces`, value: { [piece]: { of: id }, ...Object.fromEntries(others) } },
    { op: 'replace', path: `${root}/stack`, value: [...stack.slice(0, stack.indexOf(lens)), piece, ...stack.slice(stack.indexOf(lens))] },
    ...(seat === undefined || seats === undefined ? [] : [{ op: 'replace' as const, path: `${root}/joints`, value: rejoined(kept, seat, piece, seats, lens) }]),
  ];
}

/** The joint of lens and body becomes two, through the adapter. */
function rejoined(kept: readonly (readonly [string, Joint])[], [seat, joint]: readonly [string, Joint], piece: string, seats: { body: string; lens: string }, lens: string): Record<string, Joint> {
  const lensEnd = joint.a.startsWith(`${lens}/`) ? joint.a : joint.b;
  const bodyEnd = lensEnd === joint.a ? joint.b : joint.a;
  const others = kept.filter(([key]) => key !== seat);
  const adapterSeat = freeKey('adapter-seat', kept.map(([key]) => key));
  return { ...Object.fromEntries(others), [adapterSeat]: { a: bodyEnd, b: `${piece}/${seats.body}` }, [seat]: { a: `${piece}/${seats.lens}`, b: lensEnd } };
}

/** The adapter's two mount points, by the mounts they are. */
function seatsOf(part: PartView): { body: string; lens: string } | undefined {
  const points = Object.entries((part.read('points') ?? {}) as Record<string, Point>).filter(([, { kind }]) => kind === 'lens mount');
  const byClass = (mountName: unknown) => points.find(([, point]) => point.class === mountName)?.[0];
  const [body, lens] = [byClass(part.read('mountAdapter/bodyMount')), byClass(part.read('mountAdapter/lensMount'))];
  return body === undefined || lens === undefined ? undefined : { body, lens };
}

function judgeFlange(asking: Asking, body: SetupPiece, adapters: readonly SetupPiece[], lens: SetupPiece): Judgement {
  const holds = `${lens.name} fits ${body.name}${adapters.length === 0 ? '' : ` through ${adapters.map(({ name }) => name).join(' and ')}`}.`;
  const figures = [body.part.figure('body/flangeMm'), ...adapters.map(({ part }) => part.figure('mountAdapter/thicknessMm'))];
  const setFor = lens.part.figure('lens/flangeMm');
  if (setFor === undefined || figures.some((one) => one === undefined)) {
    return judgeYes({ yes: true, says: { holds, fails: '' }, notes: ['Flange distances are not all entered: only the mounts were compared.'] });
  }
  const standsAt = figures.reduce((sum, one) => sum + (one?.value ?? 0), 0);
  const off = standsAt - setFor.value;
  const far = off > 0;
  return judgeRatio({
    needs: { amount: { value: Math.abs(off), unit: 'mm' }, from: `${printAmount({ value: standsAt, unit: 'mm' })} as mounted, set for ${printAmount({ value: setFor.value, unit: 'mm' })}`, word: 'off by' },
    has: { amount: { value: asking.assume(picture.flangeToleranceMm).value, unit: 'mm' }, from: 'what shims make good', word: 'allowed' },
    says: { holds, fails: far ? `${lens.name} stands too far out on ${body.name}: it will not reach infinity.` : `${lens.name} stands too far in on ${body.name}: it passes infinity and its marks read long.` },
    steps: [{ says: `sensor to mount of the lens: ${figures.map((one) => one?.value).join(' + ')}`, amount: { value: standsAt, unit: 'mm' } }],
    mends: Math.abs(off) > asking.assume(picture.flangeToleranceMm).value && far === false ? [{ says: `An adapter thicker by ${printAmount({ value: -off, unit: 'mm' })}, or shims of that thickness` }] : [],
  });
}
