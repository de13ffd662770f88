import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { type JointType, jointType } from '../../standards/jointTypes.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { IDENTITY, type Vector, apply } from '../placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { carrierKind } from './carriers.ts';
import { pieceMasses } from './pieceMasses.ts';

/** What a build stands on, by its purpose: each place where the ground holds a piece, or none where it hangs free in the hands. */
export interface StandsOn {
  readonly contacts: readonly { readonly ref: string; readonly atMm: Vector; readonly type: JointType }[];
  /** The piece that the rest hangs on: on the ground, else the camera itself. */
  readonly anchor: string;
  /** Legs and stands under the head: they are in the stiffness of the ground already. */
  readonly below: ReadonlySet<string>;
  /** "on a locked head and its legs"; where nothing among the pieces holds it, what is taken for granted: "as if Baseplate stood on legs". */
  readonly says: string;
}

export function standsOn(ledger: Ledger, setup: string, glass: string, build: string): StandsOn {
  return ledger.cell(`stands on|${setup}|${glass}|${build}`, () => {
    const { places } = placeSetup(ledger, setup, glass);
    const own = [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build && places.has(piece.ref));
    const carried = (...kinds: string[]) => own.find((piece) => kinds.includes(carrierKind(piece) ?? ''));
    const rootId = (ledger.at(`builds/${build}/root`) ?? ledger.at(`builds/${build}/camera`)) as string | undefined;
    const root = own.find(({ id }) => id === rootId) ?? own[0];
    const on = (piece: SetupPiece, type: string) => ({ ref: piece.ref, atMm: contactAt(piece, places.get(piece.ref)), type: jointType(type) as JointType });
    const none: StandsOn = { contacts: [], anchor: root?.ref ?? '', below: new Set(), says: 'free in the hands' };
    if (root === undefined) return none;
    const purpose = ledger.at(`builds/${build}/purpose`) as string;
    if (purpose === 'shoulder') {
      return onShoulder(carried('shoulder pad'), root, gripsOf(ledger, { setup, glass, build }, own), on);
    }
    if (purpose === 'gimbal') return onMount(carried('mount', 'gimbal'), none, 'on a gimbal', on);
    if (purpose === 'vehicle') {
      const mount = carried('mount', 'gimbal') ?? carried('head');
      return onMount(mount ?? root, none, mount === undefined ? `as if ${root.name} were fixed to a vehicle` : 'on a vehicle', on);
    }
    if (purpose === 'handheld' || purpose === 'other') return none;
    const legs = own.filter((piece) => ['legs', 'stand'].includes(carrierKind(piece) ?? ''));
    return onLegs(carried('head'), legs, root, on);
  });
}

type On = (piece: SetupPiece, type: string) => StandsOn['contacts'][number];

function onShoulder(pad: SetupPiece | undefined, root: SetupPiece, grips: readonly SetupPiece[], on: On): StandsOn {
  const rests = pad ?? root;
  const says = pad === undefined ? `as if ${root.name} lay on a shoulder` : `on a shoulder${grips.length > 0 ? ' and two hands' : ''}`;
  return { contacts: [on(rests, 'shoulder'), ...grips.map((grip) => on(grip, 'hands'))], anchor: rests.ref, below: new Set(), says };
}

function onMount(mount: SetupPiece | undefined, none: StandsOn, says: string, on: On): StandsOn {
  return mount === undefined ? none : { ...none, contacts: [on(mount, 'vehicle mount')], anchor: mount.ref, says };
}

function onLegs(head: SetupPiece | undefined, legs: readonly SetupPiece[], root: SetupPiece, on: On): StandsOn {
  const foot = head ?? legs[0] ?? root;
  const says = head !== undefined ? 'on a locked head and its legs' : legs[0] !== undefined ? 'on legs' : `as if ${root.name} stood on legs`;
  return { contacts: [on(foot, 'tripod head')], anchor: foot.ref, below: new Set(head === undefined ? [] : legs.map(({ ref }) => ref)), says };
}

/** Where the ground holds a piece: its point for a hand or shoulder, else the origin of its frame. */
function contactAt(piece: SetupPiece, place = IDENTITY): Vector {
  const points = Object.values((piece.part.read('points') ?? {}) as Readonly<Record<string, Point>>);
  return apply(place, points.find(({ kind }) => kind === 'hand')?.at ?? [0, 0, 0]);
}

/** Handles below the camera's middle are what the hands hold; those above it are for carrying. */
export function gripsOf(ledger: Ledger, { setup, glass, build }: { setup: string; glass: string; build: string }, own: readonly SetupPiece[]): SetupPiece[] {
  const { weighed } = pieceMasses(ledger, setup, glass, build);
  const body = own.find((piece) => piece.part.has('body'));
  const middle = weighed.find(({ piece }) => piece.ref === body?.ref)?.centreMm[1] ?? 0;
  const height = (piece: SetupPiece) => weighed.find((one) => one.piece.ref === piece.ref)?.centreMm[1] ?? placeSetup(ledger, setup, glass).places.get(piece.ref)?.t[1] ?? 0;
  return own.filter((piece) => (piece.part.kind === 'handle' || carrierKind(piece) === 'handles') && height(piece) < middle);
}
