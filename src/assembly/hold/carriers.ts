import type { SetupPiece } from '../setupPieces.ts';

/** What holds builds of one purpose up. */
export interface Carriers {
  /** One of these has to be there: without it the build stands on nothing. */
  readonly bear: readonly string[];
  /** Goes with them, and does not bear by itself. */
  readonly besides: readonly string[];
}

/** By purpose. What is held free in the hands needs nothing; of "other" nothing is known. Common practice. */
const CARRIERS: Readonly<Record<string, Carriers>> = {
  tripod: { bear: ['head', 'legs', 'stand'], besides: ['handles'] },
  shoulder: { bear: ['shoulder pad'], besides: ['handles'] },
  handheld: { bear: [], besides: ['handles'] },
  gimbal: { bear: ['gimbal'], besides: ['handles', 'legs', 'stand', 'mount', 'head'] },
  vehicle: { bear: ['mount', 'gimbal', 'head'], besides: ['handles'] },
  'focus station': { bear: ['stand', 'legs', 'head', 'mount', 'handles'], besides: [] },
  'viewing station': { bear: ['stand', 'legs', 'head', 'mount', 'handles'], besides: [] },
};

export const carriersFor = (purpose: unknown): Carriers | undefined => (typeof purpose === 'string' && Object.hasOwn(CARRIERS, purpose) ? CARRIERS[purpose] : undefined);

export const carrierKind = ({ part }: SetupPiece): string | undefined => part.read('carrier/kind') as string | undefined;

/** Whether a kind of carrier has a part in holding builds of a purpose up; else it is carried as weight. Of a purpose that says nothing, it has. */
export function goesWith(purpose: unknown, kind: string): boolean {
  const known = carriersFor(purpose);
  return known === undefined || known.bear.includes(kind) || known.besides.includes(kind);
}
