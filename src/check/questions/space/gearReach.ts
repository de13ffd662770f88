import { drivenBy } from '../../../assembly/placing/gears.ts';
import { type MeshResult, placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Step } from '../../answer.ts';
import { cannotJudge, judgeRatio, judgeWindow, judgeYes } from '../../judge.ts';
import { gearMends } from '../../quantities/gearMends.ts';
import { question } from '../../question.ts';
import { settingWords, stopWords, unitOf } from '../../settingWords.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const gearReach = question({
  id: 'space.gearReach',
  asks: 'Does the motor’s gear reach the lens gear?',
  kind: 'immediate',
  explains:
    'Gears of one module mesh when their axes stand half the sum of their pitch diameters apart: m·(z₁ + z₂)/2. Closer they bind; farther they have play of 2·Δa·tan 20°, and then slip. Along the axes their faces must overlap. The settings left to be found ' +
    'are solved for each lens (or once for the set, where they are shared) before this is asked, and are listed.',
  sources: ['ISO 53 (basic rack, 20°), ISO 21771; DIN 780 (module 0.8)'],
  subjects: (ledger) => eachGlass(ledger).flatMap(({ setup, glass }) => placeSetup(ledger, setup, glass).meshes.map(({ joint }) => ({ setup, glass, joint: joint.path }))),
  ask: (asking, { setup, glass, joint: path }) => {
    const { meshes, settings } = placeSetup(asking.ledger, setup, glass);
    const mesh = meshes.find(({ joint }) => joint.path === path);
    if (mesh === undefined) return null;
    const names = [mesh.joint.a.piece.name, mesh.joint.b.piece.name] as const;
    const without = mesh.gearA === 'none' ? names[0] : mesh.gearB === 'none' ? names[1] : undefined;
    if (without !== undefined) {
      return judgeYes({ yes: false, says: { holds: '', fails: `${without} has no gear.` }, mends: [{ says: `A clamp-on gear ring of 0.8 module round ${without}`, costs: 'its join bumps unless it is a closed ring' }] });
    }
    if (mesh.leanRad > 0.1) return cannotJudge(`The gears of ${names[0]} and ${names[1]} do not lie in one plane.`);
    const steps = settings.filter(({ joint }) => joint.path !== path).map((setting) => ({ says: settingWords(setting), amount: { value: setting.value, unit: unitOf(setting.key) } }));
    const [driver, driven] = [drivenBy(mesh).driver.piece.name, drivenBy(mesh).driven.piece.name];
    const beside = besideEachOther(asking.ledger, { setup, glass }, mesh, steps);
    if (beside !== undefined) return beside;
    const [tight, slack] = [asking.assume(space.meshTightMm).value, asking.assume(space.meshSlackMm).value];
    return judgeWindow({
      value: mesh.gapMm, low: -tight, high: slack,
      needs: { amount: { value: mesh.centreDistanceMm - mesh.gapMm, unit: 'mm' }, from: teethWords(mesh) },
      has: { amount: { value: mesh.centreDistanceMm, unit: 'mm' }, from: `between the axes of ${names[0]} and ${names[1]}` },
      says: { holds: `${driver} meshes with ${driven}.`, tight: `${driver} only just meshes with ${driven}.`, fails: mesh.gapMm > 0 ? `${driver} does not reach the gear of ${driven}.` : `${driver} is pressed into the gear of ${driven}.` },
      steps, notes: facesTaken(mesh),
      ...(mesh.gapMm > slack ? { mends: [largerGear(mesh, driver)].flatMap((one) => one ?? []) } : {}),
    });
  },
});

/** A gear is no wider than this. Common practice: those of zooms that travel are 30 mm wide; it stands in where no width is entered. */
const WIDEST_FACE_MM = 30;

/** Gears at the right distance of which the one turns ahead of the other. */
function besideEachOther(ledger: Ledger, subject: SetupGlass, mesh: MeshResult, steps: readonly Step[]): Judgement | undefined {
  const { gearA, gearB, offsetMm, midOffsetMm, gapMm } = mesh;
  if (gearA === 'none' || gearB === 'none' || gapMm > gearA.module) return undefined;
  const touchMm = ((gearA.faceMm ?? WIDEST_FACE_MM) + (gearB.faceMm ?? WIDEST_FACE_MM)) / 2;
  const apartMm = Math.min(...[offsetMm, midOffsetMm, 2 * midOffsetMm - offsetMm].map(Math.abs));
  if (apartMm < touchMm) return undefined;
  const { driver, driven } = drivenBy(mesh);
  return judgeRatio({
    needs: { amount: { value: apartMm, unit: 'mm' }, from: 'from the middle of the one gear to that of the other, along the axis' },
    has: { amount: { value: touchMm, unit: 'mm' }, from: gearA.faceMm === undefined || gearB.faceMm === undefined ? `half of both faces, taken as ${printAmount({ value: WIDEST_FACE_MM, unit: 'mm' })} where not entered` : 'half of both faces: where they begin to touch' },
    says: { holds: '', fails: `${driver.piece.name} does not reach the gear of ${driven.piece.name}: it turns beside it.` },
    steps, mends: gearMends(ledger, subject, mesh), notes: stopWords(mesh).map((says) => `${says[0]?.toUpperCase() ?? ''}${says.slice(1)}.`),
  });
}

/** Whose face is not entered: that they meet along the axis then rests on the widest there is. */
function facesTaken({ gearA, gearB, joint }: MeshResult): string[] {
  const open = ([[gearA, joint.a], [gearB, joint.b]] as const).flatMap(([gear, { piece }]) => (gear !== 'none' && gear.faceMm === undefined ? [piece.name] : []));
  return open.map((name) => `How wide the gear of ${name} is, is not entered: along the axis it is taken as ${printAmount({ value: WIDEST_FACE_MM, unit: 'mm' })}, the widest there is.`);
}

function teethWords({ gearA, gearB }: MeshResult): string {
  return gearA === 'none' || gearB === 'none' ? '' : `${gearA.module} module, ${gearB.teeth} and ${gearA.teeth} teeth: m·(z₁ + z₂)/2`;
}

/** A gear that bridges the gap, where one with so many teeth can be meant. */
function largerGear({ gapMm, gearA, gearB }: MeshResult, name: string): { says: string } | undefined {
  if (gearA === 'none' || gearB === 'none') return undefined;
  const own = gearA.on === 'ring' ? gearB : gearA;
  const teeth = own.teeth + Math.round((2 * gapMm) / own.module);
  return teeth <= 120 ? { says: `A gear of ${teeth} teeth on ${name} bridges the gap; the ratio changes with it` } : undefined;
}
