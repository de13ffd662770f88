import { type RodShift, rodShifts } from '../../assembly/placing/alongRods.ts';
import { moveWay } from '../../assembly/placing/moveWay.ts';
import { type MeshResult, type Placement, placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Setting } from '../../shoot/schema/build.ts';
import { printAmount } from '../../units/print.ts';
import type { Mend } from '../answer.ts';
import { moveWords } from '../settingWords.ts';
import { type SetupGlass, glassesOf } from '../subjects.ts';

/** A clamp that would have to go past the end of its rod, or of its range, for two gears to stand face to face. */
export interface RodShort {
  readonly shift: RodShift;
  /** How much of the slide is missing, in its own sense. */
  readonly byMm: number;
}

/** Whether the gears touch across the axis, so that only along it something is missing. */
const inReach = ({ pair, gapMm }: MeshResult): boolean => pair !== undefined && Math.abs(gapMm) <= pair.a.module;

/** Which rods are too short, or sit wrong, for gears that do not stand face to face; of what is set per lens, for the worst lens of the set. */
export function shortRods(ledger: Ledger, { setup, glass }: SetupGlass, mesh: MeshResult): readonly RodShort[] {
  if (mesh.meets || !inReach(mesh)) return [];
  return rodShifts(placeSetup(ledger, setup, glass), mesh).flatMap((shift) => {
    const own = missing(shift);
    if (own === 0) return [];
    const others = shift.variable === undefined ? [] : glassesOf(ledger, setup).map((other) => missingWith(ledger, { setup, glass: other }, shift, mesh));
    return [{ shift, byMm: [own, ...others].reduce((most, one) => (one * own > 0 && Math.abs(one) > Math.abs(most) ? one : most)) }];
  });
}

function missingWith(ledger: Ledger, { setup, glass }: SetupGlass, { step }: RodShift, { joint }: MeshResult): number {
  const placement = placeSetup(ledger, setup, glass);
  const same = placement.meshes.find((one) => one.joint.b.ref === joint.b.ref && !one.meets && inReach(one));
  const shift = same === undefined ? undefined : rodShifts(placement, same).find((one) => one.step.joint.path === step.joint.path);
  return shift === undefined ? 0 : missing(shift);
}

function missing({ value, byMm, range }: RodShift): number {
  if (range === undefined) return 0;
  const wants = value + byMm;
  return wants < range[0] - 1e-3 ? wants - range[0] : wants > range[1] + 1e-3 ? wants - range[1] : 0;
}

/** What brings two gears face to face again: what stands on a rod slides along it, the rod slides in its clamp, or a longer rod is taken. */
export function gearMends(ledger: Ledger, subject: SetupGlass, mesh: MeshResult): Mend[] {
  if (mesh.meets || !inReach(mesh)) return [];
  const placement = placeSetup(ledger, subject.setup, subject.glass);
  const short = shortRods(ledger, subject, mesh);
  const mends = rodShifts(placement, mesh).toReversed().flatMap((shift): Mend[] => {
    const own = short.find((one) => one.shift.step.joint === shift.step.joint);
    if (own !== undefined) return [longerRod(placement, own)];
    // What rides on this clamp goes to the end of its own way first, and the rod makes up the rest.
    const riding = short.find((one) => one.shift.variable !== undefined && one.shift.step !== shift.step);
    const byMm = riding === undefined ? shift.byMm : riding.byMm * Math.sign(riding.shift.byMm) * Math.sign(shift.byMm);
    if (shift.range !== undefined && missing({ ...shift, byMm }) !== 0) return [];
    return [slide(ledger, subject, placement, { ...shift, byMm }, riding !== undefined)];
  });
  return mends.toSorted((a, b) => Number(a.edit === undefined) - Number(b.edit === undefined));
}

/** Upwards to whole millimetres: a longer rod does, a shorter one does not. */
const upwards = (mm: number): number => Math.ceil(Math.abs(mm) - 1e-6);

function longerRod(placement: Placement, { shift, byMm }: RodShort): Mend {
  return { says: `A rod at least ${printAmount({ value: upwards(byMm), unit: 'mm' })} longer than ${shift.rod.name}${sideOf(placement, shift.rod.ref)}, with ${clampOf(shift)} on the length it gains` };
}

const clampOf = ({ step: { joint } }: RodShift): string => (joint.a.point.kind === 'rod clamp' ? joint.a : joint.b).piece.name;

function slide(ledger: Ledger, subject: SetupGlass, placement: Placement, shift: RodShift, forAll: boolean): Mend {
  const { step, byMm: exact, value, variable } = shift;
  const byMm = forAll ? Math.sign(exact) * upwards(exact) : Math.round(exact * 10) / 10;
  const { does, way } = moveWords(placement, { joint: step.joint, key: 'slideMm' }, byMm);
  const says = `${does[0]?.toUpperCase() ?? ''}${does.slice(1)}${sideOf(placement, step.child)} ${printAmount({ value: Math.abs(byMm), unit: 'mm' })} ${way}`;
  const along = ridersOn(placement, step.child).filter((ref) => ref !== step.child);
  const names = along.flatMap((ref) => placement.parts.get(ref)?.name ?? []);
  return {
    says, edit: { says, patches: slidePatches(ledger, subject, shift, Math.round((value + byMm) * 10) / 10, forAll) },
    ...(names.length > 0 ? { costs: `takes ${names.slice(0, 3).join(', ')}${names.length > 3 ? ` and ${names.length - 3} more` : ''} along` } : {}),
    ...(variable === undefined || forAll ? {} : { costs: 'beyond the limit it is given in this build' }),
  };
}

/** Which of two alike, as rods are: " at camera left"; nothing of what has a name of its own. */
export function sideOf({ parts, places }: Placement, ref: string): string {
  const own = parts.get(ref);
  const alike = [...parts.values()].filter((other) => own !== undefined && other.ref !== ref && other.build === own.build && other.name === own.name);
  const beside = alike.map((other) => (places.get(ref)?.t[0] ?? 0) - (places.get(other.ref)?.t[0] ?? 0));
  if (beside.length === 0 || beside.some((mm) => Math.abs(mm) < 5)) return '';
  return beside.every((mm) => mm > 0) ? ' at camera left' : beside.every((mm) => mm < 0) ? ' at camera right' : '';
}

/** What hangs on a piece, and on that. */
function ridersOn({ model }: Placement, ref: string): string[] {
  const riders = [ref];
  for (const { parent, child } of model.tree) if (riders.includes(parent)) riders.push(child);
  return riders;
}

/** Enters a slide: for this lens alone where each has its own, in the limits where it is looked for, else for all. */
function slidePatches(ledger: Ledger, { setup, glass }: SetupGlass, { step: { joint } }: RodShift, toMm: number, forAll: boolean): Patch[] {
  const path = `${joint.path}/settings`;
  const stated = ledger.at(`${path}/slideMm`) as Setting | undefined;
  if (ledger.at(path) === undefined) return [{ op: 'add', path, value: { slideMm: toMm } }];
  return [{ op: stated === undefined ? 'add' : 'replace', path: `${path}/slideMm`, value: forAll || glassesOf(ledger, setup).length === 1 ? toMm : forOne(stated, glass, toMm) }];
}

function forOne(stated: Setting | undefined, glass: string, toMm: number): Setting {
  if (typeof stated === 'number') return { pinned: { [glass]: toMm }, otherwise: stated };
  if (stated === undefined) return toMm;
  if ('pinned' in stated) return { ...stated, pinned: { ...stated.pinned, [glass]: toMm } };
  return { ...stated, ...(stated.high !== undefined && toMm > stated.high ? { high: toMm } : {}), ...(stated.low !== undefined && toMm < stated.low ? { low: toMm } : {}) };
}

/** Where a rod sits, in the words of who would slide it: "too far back". */
export function sitsWrong(placement: Placement, { shift, byMm }: RodShort): string {
  const { way } = moveWay(placement, { joint: shift.step.joint, key: 'slideMm' }, byMm);
  return way === 'forward' ? 'too far back' : way === 'back' ? 'too far forward' : 'at the wrong place';
}
