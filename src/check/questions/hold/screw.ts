import { carriedWords } from '../../../assembly/hold/carriedOn.ts';
import { typeOf } from '../../../assembly/hold/jointHold.ts';
import { hangsOn } from '../../../assembly/hold/hangsOn.ts';
import { heldFast } from '../../../assembly/hold/underWeight.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Side } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { type Sayings, judgeRatio } from '../../judge.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { buildsInUse, isCamera, usesOf } from '../../quantities/buildsInUse.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { type ScrewLoad, isScrewed, screwLoad } from '../../quantities/screwLoad.ts';
import { unplacedNote } from '../../quantities/unplacedNote.ts';
import { question } from '../../question.ts';

interface Screwed {
  readonly build: string;
  readonly joint: string;
  /** The joint in words. */
  readonly at: string;
}

export const screw = question<Screwed>({
  id: 'hold.screw',
  asks: 'Does every screw hold what hangs on it?',
  kind: 'immediate',
  explains:
    'What each joint carries is worked out on the placed rig, held fast at what it stands on, in the attitude that is hardest on it, with a factor for jolts. A tightened screw presses two faces together on a ring; a pull and a nod take that pressure away on one side, and where the force leaves the core of the ring, (ro² + ri²)/4ro, the faces open at the rim: ' +
    'from there on the joint nods, works and comes loose. The force in the screw itself, its tightening or what hangs on it, is held against what its core bears, twisted as it is, and against the thread of a socket in aluminium. Of all glasses the build is used with, the one that asks most counts. How firmly a screw is really turned, and how wide its faces touch, decide: enter them (torqueNm of the joint, contactMm of the point).',
  sources: ['no opening of a bolted joint at working load: VDI 2230, from memory', 'core of an annulus: strength of materials', 'stress areas: ASME B1.1, ISO 898-1', 'torque and preload: Bickford, Shigley'],
  subjects: screwed,
  ask: (asking, { build, joint: path }) => {
    const load = worstUse(asking, build, path);
    if (load === undefined) return null;
    const opens = byOpening(load);
    return allWeighed(judgeRatio({
      ...(opens ? openingSides(load) : strengthSides(load)),
      says: sayings(load, opens),
      steps: [
        { says: `${load.screw.says} presses the faces together with`, amount: { value: load.preloadN, unit: 'N' } },
        { says: `at most in one screw, ${printAmount({ value: load.stressMPa, unit: 'MPa' })}; ${WEAKER[load.weaker]} bears ${printAmount({ value: load.bearsN, unit: 'N' })}`, amount: { value: load.screwN, unit: 'N' } },
      ],
      mends: useOf(load) > 0.9 ? mends(load, opens) : [],
      notes: [...cautionsFor(asking.ledger.at(`builds/${build}/purpose`)), ...unplaced(asking.ledger, build)],
    }), unweighedOn(asking.ledger, build, path));
  },
});

/** Every screwed joint of a camera build in use. */
function screwed(ledger: Ledger): Screwed[] {
  return buildsInUse(ledger).flatMap((build) => {
    const subjects = new Map<string, Screwed>();
    for (const { setup, glass } of camerasOf(ledger, build)) {
      const { model, places } = placeSetup(ledger, setup, glass);
      for (const { joint } of [...model.tree, ...model.loops]) {
        const own = [joint.a, joint.b].every(({ ref, piece }) => piece.build === build && places.has(ref));
        if (own && isScrewed({ joint, type: typeOf(joint) })) subjects.set(joint.path, { build, joint: joint.path, at: carriedWords(ledger, setup, glass, joint) });
      }
    }
    return [...subjects.values()];
  });
}

/** Pieces without a mass that hang on the joint, with whichever glass. */
const unweighedOn = (ledger: Ledger, build: string, path: string): SetupPiece[] => camerasOf(ledger, build).flatMap(({ setup, glass }) => {
  const rig = heldFast(ledger, setup, glass);
  const held = rig?.springs.find((spring) => spring !== 'ground' && spring.joint.path === path);
  if (rig === undefined || rig.unweighed.length === 0 || held === undefined || held === 'ground') return [];
  const hanging = hangsOn(ledger, setup, glass, held.joint);
  return rig.unweighed.filter(({ ref }) => hanging.has(ref));
});

const unplaced = (ledger: Ledger, build: string): string[] => [...new Set(camerasOf(ledger, build).flatMap((use) => unplacedNote(ledger, use, build)))];

const camerasOf = (ledger: Ledger, build: string) => usesOf(ledger, build).filter((use) => isCamera(ledger, use, build));

function worstUse(asking: Asking, build: string, path: string): ScrewLoad | undefined {
  const all = camerasOf(asking.ledger, build).flatMap((use) => screwLoad(asking, use, path) ?? []);
  return all.reduce<ScrewLoad | undefined>((worst, one) => (worst === undefined || useOf(one) > useOf(worst) ? one : worst), undefined);
}

const strengthUse = ({ screwN, bearsN }: ScrewLoad): number => screwN / bearsN;
const byOpening = (load: ScrewLoad): boolean => load.opening >= strengthUse(load);
const useOf = (load: ScrewLoad): number => Math.max(load.opening, strengthUse(load));

const WEAKER = { core: 'its core', socket: 'the thread of the socket' } as const;

function sayings({ hold: { joint }, screw: { screws }, weaker }: ScrewLoad, opens: boolean): Sayings {
  const between = `${joint.b.piece.name} and ${joint.a.piece.name}`;
  const which = screws > 1 ? 'Each screw' : 'The screw';
  return {
    holds: screws > 1 ? `The ${screws} screws between ${between} hold.` : `The screw between ${between} holds.`,
    tight: opens ? `A jolt all but opens the faces between ${between}.` : `${which} between ${between} is tightened nearly as hard as ${WEAKER[weaker]} bears.`,
    fails: opens ? `A jolt opens the faces between ${between}: ${screws > 1 ? 'the screws work' : 'the screw works'} loose.` : `${which} between ${between} is tightened harder than ${WEAKER[weaker]} bears.`,
  };
}

/** The nod that opens the faces, less what the pull has taken of it already. */
function openingSides({ nodNm, pullN, opening, screw }: ScrewLoad): { needs: Side; has: Side } {
  const whole = nodNm === 0 ? { value: pullN, unit: 'N' as const } : { value: nodNm, unit: 'N·m' as const };
  return {
    needs: { amount: whole, from: `nod in the worst attitude, jolts included${nodNm > 0 && pullN > 0 ? `, with a pull of ${printAmount({ value: pullN, unit: 'N' })}` : ''}` },
    has: { amount: { ...whole, value: whole.value / opening }, from: `opens faces that touch from ${printNumber(screw.innerMm)} to ${printNumber(screw.outerMm)} mm round the screw` },
  };
}

const strengthSides = ({ screwN, bearsN, weaker }: ScrewLoad): { needs: Side; has: Side } => ({
  needs: { amount: { value: screwN, unit: 'N' }, from: 'in one screw: its tightening, or what hangs on it once the faces open' },
  has: { amount: { value: bearsN, unit: 'N' }, from: `borne by ${WEAKER[weaker]} (assumed)` },
});

function mends(load: ScrewLoad, opens: boolean): Mend[] {
  const { screw: { torque, mostNm, screws }, opening, useWith } = load;
  if (!opens) {
    const less = Math.floor(10 * torque.value * ((0.85 * load.bearsN) / load.screwN)) / 10;
    return less > 0 && useWith({ torqueNm: less, screws }) <= 1 ? [tightened(load, less, 'it holds less against turning')] : [];
  }
  const wanted = Math.ceil((10 * torque.value * opening) / 0.9) / 10;
  const harder = wanted <= mostNm && useWith({ torqueNm: wanted, screws }) <= 1 ? [tightened(load, wanted, howFirm(load))] : [];
  return [...harder, { says: `Another screw beside it: ${screws + 1} share the load`, use: useWith({ torqueNm: torque.value, screws: screws + 1 }), costs: 'both points need the holes' }];
}

function howFirm({ screw: { byKnob }, hold: { joint: { a, b } } }: ScrewLoad): string {
  if (byKnob) return 'as much as fingers give';
  return a.piece.part.has('body') || b.piece.part.has('body') ? 'the thread in a camera body strips: no more than its maker states' : 'with a key that shows the torque';
}

function tightened({ hold: { joint }, screw: { torque, screws }, useWith }: ScrewLoad, torqueNm: number, costs: string): Mend {
  const says = `Tighten the ${screws > 1 ? 'screws' : 'screw'} between ${joint.b.piece.name} and ${joint.a.piece.name} ${torqueNm < torque.value ? 'only ' : ''}to ${printAmount({ value: torqueNm, unit: 'N·m' })}`;
  return { says, edit: { says, patches: [{ op: 'add', path: `${joint.path}/torqueNm`, value: torqueNm }] }, use: useWith({ torqueNm, screws }), costs };
}
