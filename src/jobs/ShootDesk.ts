import type { Fault } from '../faults/Fault.ts';
import type { Part } from '../shoot/schema/part.ts';
import { typicalPart, typicalParts } from '../shoot/typical/typicalParts.ts';
import { assumptionCatalogue } from '../standards/assumptions/index.generated.ts';
import type { Assumption } from '../standards/Assumption.ts';
import { type Forms, forms } from './Forms.ts';
import { type FormRow, type Typed, newShootForm, shootFromForm } from './newShootForm.ts';
import { type Opened, type Result, ShootKeeper } from './ShootKeeper.ts';

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

  assumptions(): readonly Assumption[] {
    return Object.values(assumptionCatalogue);
  }
}
