import type { SettingKey } from '../assembly/placing/rigModel.ts';
import type { Vector } from '../assembly/placing/Transform.ts';
import type { Fault } from '../faults/Fault.ts';
import type { SetupGlass } from '../check/subjects.ts';
import type { Edit } from '../shoot/edit/Edit.ts';
import type { Part } from '../shoot/schema/part.ts';
import type { System } from '../units/print.ts';
import { typicalPart, typicalParts } from '../shoot/typical/typicalParts.ts';
import { replacePart } from '../shoot/edit/replacePart.ts';
import { type Forms, forms } from './Forms.ts';
import type { Taking } from './importParts.ts';
import { type FormRow, type Typed, newShootForm, shootFromForm } from './newShootForm.ts';
import { type Opened, type Result, ShootKeeper } from './ShootKeeper.ts';
import { type ChangeView, type ChangesView, changeView, changesView } from './views/changesView.ts';
import { type DayView, daysView } from './views/daysView.ts';
import { type ForcesView, forcesView } from './views/forcesView.ts';
import { type FrameView, frameView } from './views/frameView.ts';
import { type LinesView, fittingCables, joining, linesView } from './views/linesView.ts';
import { type PullTry, type PullView, pullView } from './views/pullView.ts';
import { type Fixing, additionsTo, fixingsOf } from './views/fixing.ts';
import { type RigView, rigView, wayAlong } from './views/rigView.ts';
import { type SwapsView, swapsView } from './views/swapsView.ts';
import { type View, viewOf } from './views/View.ts';

/** All that the page may ask of the worker that owns the shoot. */
export class ShootDesk extends ShootKeeper {
  newShootForm(typed: Typed): FormRow[] {
    return newShootForm(typed);
  }

  beginFrom(typed: Typed): Result<Opened> {
    const made = shootFromForm(typed);
    return made.ok ? this.begin(made.value) : { ok: false, faults: made.faults satisfies readonly Fault[] };
  }

  forms(): Forms {
    return forms();
  }

  /** Classes a part can be taken from. */
  typicalClasses(): { readonly id: string; readonly name: string; readonly kind: Part['kind'] }[] {
    return Object.entries(typicalParts).map(([id, { name, kind }]) => ({ id, name, kind }));
  }

  typicalPart(id: string): Part | undefined {
    return typicalPart(id);
  }

  /** Reading tables and EDIDs is loaded when it is first wanted. */
  async takingCsv(text: string): Promise<Taking> {
    return (await import('./importParts.ts')).takingCsv(this.shoot, text);
  }

  async takingEdid(content: Uint8Array | string): Promise<Taking> {
    return (await import('./importParts.ts')).takingEdid(this.shoot, content);
  }

  /** One part in place of another wherever it is used, and what did not fit. */
  replacing(oldId: string, newId: string): Taking {
    const { edit, broke } = replacePart(this.shoot, oldId, newId);
    return { edit, faults: broke };
  }

  frameView(subject: SetupGlass): View<FrameView> {
    return viewOf(() => frameView(this.ledger, subject));
  }

  linesView(subject: SetupGlass): View<LinesView> {
    return viewOf(() => linesView(this.ledger, subject));
  }

  rigView(subject: SetupGlass): View<RigView> {
    return viewOf(() => rigView(this.ledger, subject));
  }

  /** The way a piece goes for one millimetre of a setting of its joint. */
  wayAlong(subject: SetupGlass, ref: string, key: SettingKey): Vector | undefined {
    return wayAlong(this.shoot, this.ledger, subject, ref, key);
  }

  /** Where a piece could be fixed. */
  fixings(subject: SetupGlass, ref: string): Fixing[] {
    return fixingsOf(this.shoot, this.ledger, subject, ref);
  }

  /** What could be fixed to a piece. */
  additions(subject: SetupGlass, ref: string): Fixing[] {
    return additionsTo(this.shoot, this.ledger, subject, ref);
  }

  swapsView(setup: string, system: System): View<SwapsView> {
    return viewOf(() => swapsView(this.ledger, setup, system));
  }

  /** What each joint of the camera carries under a load. */
  forcesView(subject: SetupGlass, load: string): View<ForcesView> {
    return viewOf(() => forcesView(this.ledger, subject, load));
  }

  /** Minutes of every lens change of a setup. */
  changesView(setup: string): View<ChangesView> {
    return viewOf(() => changesView(this.ledger, setup));
  }

  /** One lens change, step by step. */
  changeView(setup: string, from: string, to: string): View<ChangeView> {
    return viewOf(() => changeView(this.ledger, setup, from, to));
  }

  /** Every day's shots with the changes between them. */
  daysView(): View<readonly DayView[]> {
    return viewOf(() => daysView(this.ledger, this.checker.answers()));
  }

  /** One shot over time, as it is or as tried. */
  pullView(shot: string, tried: PullTry): View<PullView> {
    return viewOf(() => pullView(this.shoot, shot, tried));
  }

  /** The edit that joins two sockets, or why they cannot be joined. */
  joining(subject: SetupGlass, from: string, to: string): View<Edit> {
    return joining(this.ledger, subject, from, to);
  }

  fittingCables(subject: SetupGlass, line: string): { readonly id: string; readonly name: string }[] {
    return fittingCables(this.ledger, subject, line);
  }
}
