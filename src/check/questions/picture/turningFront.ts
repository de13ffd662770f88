import { type OpticalPath, opticalPath } from '../../../assembly/opticalPath.ts';
import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import { polariserTurn } from '../../../calc/optics/polariserTurn.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Judgement } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { shotName } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { shotsWith } from '../../quantities/lightThrough.ts';
import { ringTurn } from '../../quantities/ringTurn.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

/** What a moving front can upset. */
const THINGS = ['matte box', 'polariser', 'gear'] as const;

export const turningFront = question({
  id: 'picture.turningFront',
  asks: 'Does the front turn or travel with focus, and upset what sits on it?',
  kind: 'immediate',
  explains:
    'Where the front of the lens turns with focus, a box clamped to it tilts, and a polariser on it loses what it was set to kill, by the square of the sine of the turn. Where the front travels, a box on it goes along, ' +
    'and a box on rods must leave it room. Where the gear travels with it, both gears must still share half the narrower face at either end, with the motor set at the middle of the travel. ' +
    'A box on rods does not turn.',
  sources: ['Malus’s law: Hecht, Optics', 'common practice'],
  subjects: (ledger) => eachGlass(ledger).flatMap((subject) => THINGS.map((at) => ({ ...subject, at }))),
  ask: (asking, subject) => {
    const path = opticalPath(asking.ledger, subject.setup, subject.glass);
    const front = path.stack.filter(({ part }) => part.has('lens') || part.has('block') || part.has('focuser')).at(-1);
    if (front === undefined) return null;
    if (subject.at === 'gear') return askGear(asking, subject, path);
    const box = path.matteBox;
    if (subject.at === 'matte box') return box === undefined ? null : askBox(asking, front, box);
    const polariser = path.filters.find(({ part }) => part.read('filter/kind') === 'polariser');
    return polariser === undefined || rides(polariser, box) === false ? null : askPolariser(asking, subject, front, polariser);
  },
});

/** A round filter is screwed to the front; a square one turns only with a box that does. */
const rides = ({ part }: SetupPiece, box: SetupPiece | undefined): boolean => part.figure('filter/diameterMm') !== undefined || (box !== undefined && clamped(box));
const clamped = ({ part }: SetupPiece): boolean => part.read('matteBox/fit') !== 'rods';

function askBox(asking: Asking, front: SetupPiece, box: SetupPiece): Judgement | null {
  const { turns, travel } = asking.figures(front.part, { turns: 'front/turnsDeg', travel: 'front/travelMm' });
  const far = printAmount({ value: Math.abs(travel.value), unit: 'mm' });
  if (clamped(box) && turns.value > 0) {
    const fails = `${box.name} turns with the front of ${front.name} as focus is pulled.`;
    return judgeYes({
      yes: false,
      says: { holds: '', fails },
      steps: [{ says: 'turn of the front from infinity to close', amount: { value: turns.value, unit: 'deg' } }],
      mends: [{ says: 'A box on rods, with a soft ring to the front' }],
    });
  }
  if (travel.value === 0) return null;
  const says = clamped(box) ? `${box.name} rides to and fro with the front of ${front.name}.` : `The front of ${front.name} travels inside ${box.name}.`;
  const notes = clamped(box)
    ? [`By ${far} over the whole focus: nothing that touches the box may stand fast, and a brace to the rods would hold the focus.`]
    : [`Leave ${far} between them, and a soft ring against stray light.`];
  return judgeYes({ yes: true, caution: true, says: { holds: says, fails: says }, steps: [{ says: 'travel of the front from infinity to close', amount: { value: travel.value, unit: 'mm' } }], notes });
}

function askPolariser(asking: Asking, subject: SetupGlass, front: SetupPiece, polariser: SetupPiece): Judgement | null {
  const turns = asking.figure(front.part, 'front/turnsDeg').value;
  if (turns === 0) return null;
  const shots = shotsWith(asking, subject).map((shot) => ({ shot, turnDeg: turns * ringTurn(asking, { ...subject, shot }) }));
  const worst = shots.toSorted((a, b) => b.turnDeg - a.turnDeg)[0] ?? { shot: undefined, turnDeg: turns };
  const { leakShare } = polariserTurn({ turnDeg: Math.min(90, worst.turnDeg) });
  const where = worst.shot === undefined ? 'over the whole focus' : `over ${shotName(asking.ledger, worst.shot)}`;
  const allowed = asking.assume(picture.reflectionBack);
  return judgeRatio({
    needs: { amount: { value: leakShare, unit: 'share' }, from: `of a killed reflection is back ${where}`, word: 'back' },
    has: { amount: { value: allowed.value, unit: 'share' }, from: `that may come back ${origin(allowed)}`, word: 'allowed' },
    says: {
      holds: `${polariser.name} turns with ${front.name}, too little to show.`,
      tight: `${polariser.name} turns with ${front.name}, almost enough to show.`,
      fails: `${polariser.name} turns with the front of ${front.name}: reflections come and go as focus is pulled.`,
    },
    steps: [{ says: `turn of the polariser ${where}`, amount: { value: worst.turnDeg, unit: 'deg' } }],
    mends: [{ says: 'A polariser in the turning stage of a box on rods' }],
  });
}

function askGear(asking: Asking, subject: SetupGlass, path: OpticalPath): Judgement | null {
  if (isMeshed(asking, subject)) return null;
  const ring = path.focusedBy;
  const travel = ring?.part.figure('focus/gearTravelMm');
  if (ring === undefined || travel === undefined || travel.value === 0) return null;
  const driver = driverOf(asking, subject);
  const [ringFace, driverFace] = [ring.part.figure('focus/gear/faceMm'), driver?.part.figure(driver.part.has('motor') ? 'motor/gear/faceMm' : 'handWheel/gear/faceMm')];
  if (driver === undefined || ringFace === undefined || driverFace === undefined) return null;
  const narrower = Math.min(ringFace.value, driverFace.value);
  const left = Math.min(narrower, (ringFace.value + driverFace.value - Math.abs(travel.value)) / 2);
  const share = asking.assume(picture.gearFaceShare).value;
  const wanted = narrower * share;
  return judgeRatio({
    needs: { amount: { value: wanted, unit: 'mm' }, from: `in mesh: ${printNumber(share * 100)} % of the narrower face, ${printAmount({ value: narrower, unit: 'mm' })}` },
    has: { amount: { value: Math.max(0, left), unit: 'mm' }, from: `in mesh at either end of the travel, ${driver.name} set at the middle` },
    says: { holds: `The gear of ${ring.name} travels, but stays in mesh with ${driver.name}.`, fails: `The gear of ${ring.name} travels out of mesh with ${driver.name}.` },
    steps: [{ says: 'travel of the gear from infinity to close', amount: { value: Math.abs(travel.value), unit: 'mm' } }],
    notes: ['Set it with focus at the middle of its range, not at an end.'],
  });
}

/** Once the gears are placed against each other, the question about placed gears answers better. */
function isMeshed({ ledger }: Asking, { setup, glass }: SetupGlass): boolean {
  const roots = [`builds/${ledger.at(`setups/${setup}/camera`) as string}/joints`, `glasses/${glass}/joints`];
  return roots.some((root) => ledger.keys(root).some((joint) => ledger.at(`${root}/${joint}/mesh`) === true));
}

/** What turns the ring: the first motor on the camera, or a follow focus with a gear of its own. */
function driverOf({ ledger }: Asking, { setup, glass }: SetupGlass): SetupPiece | undefined {
  const camera = ledger.at(`setups/${setup}/camera`) as string;
  const onCamera = [...setupPieces(ledger, setup, glass).values()].filter(({ build }) => build === camera);
  return onCamera.find(({ part }) => part.has('motor')) ?? onCamera.find(({ part }) => part.figure('handWheel/gear/faceMm') !== undefined);
}
