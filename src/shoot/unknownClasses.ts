import type { Fault } from '../faults/Fault.ts';
import { nearestName } from '../faults/nearestName.ts';
import type { Kit } from './schema/part.ts';
import { typicalParts } from './typical/typicalParts.ts';

/** Parts whose typical class is none of the program's: its figures are as they stand in the file, and nothing is told of the class. */
export function unknownClasses({ parts }: Kit): Fault[] {
  return Object.entries(parts).flatMap(([id, { typical, kind }]) =>
    typical === undefined || Object.hasOwn(typicalParts, typical)
      ? []
      : [{ path: `kit/parts/${id}/typical`, message: `There is no typical class "${typical}", so that this changes nothing.`, ...nearClass(typical, kind), severity: 'warning' as const }],
  );
}

/** The class that was meant by its letters, else those of the kind. */
export function nearClass(wanted: string, kind: string | undefined): { cure?: string } {
  const near = nearestName(wanted, Object.keys(typicalParts));
  if (near !== undefined) return { cure: `Did you mean "${near}"?` };
  const alike = Object.keys(typicalParts).filter((id) => typicalParts[id]?.kind === kind);
  return alike.length === 0 ? { cure: 'setworthy new --classes lists them.' } : { cure: `Classes of this kind: ${alike.join(', ')}.` };
}
