import { type MeshResult, placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { cannotJudge, judgeWindow, judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { settingWords } from '../../settingWords.ts';
import { eachGlass } from '../../subjects.ts';

export const gearReach = question({
  id: 'space.gearReach',
  asks: 'Does the motor’s gear reach the lens gear?',
  kind: 'immediate',
  explains:
    'Gears of one module mesh when their axes stand half the sum of their pitch diameters apart: m·(z₁ + z₂)/2. Closer they bind; farther they have play of 2·Δa·tan 20°, and then slip. The settings left to be found ' +
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
    const steps = settings.filter(({ joint }) => joint.path !== path).map((setting) => ({ says: settingWords(setting), amount: { value: setting.value, unit: setting.key.endsWith('Deg') ? ('deg' as const) : ('mm' as const) } }));
    const [tight, slack] = [asking.assume(space.meshTightMm).value, asking.assume(space.meshSlackMm).value];
    return judgeWindow({
      value: mesh.gapMm, low: -tight, high: slack,
      needs: { amount: { value: mesh.centreDistanceMm - mesh.gapMm, unit: 'mm' }, from: teethWords(mesh) },
      has: { amount: { value: mesh.centreDistanceMm, unit: 'mm' }, from: `between the axes of ${names[0]} and ${names[1]}` },
      says: { holds: `${names[1]} meshes with ${names[0]}.`, tight: `${names[1]} only just meshes with ${names[0]}.`, fails: mesh.gapMm > 0 ? `${names[1]} does not reach the gear of ${names[0]}.` : `${names[1]} is pressed into the gear of ${names[0]}.` },
      steps,
      ...(mesh.gapMm > slack ? { mends: [largerGear(mesh, names[1])].flatMap((one) => one ?? []) } : {}),
    });
  },
});

function teethWords({ gearA, gearB }: MeshResult): string {
  return gearA === 'none' || gearB === 'none' ? '' : `${gearA.module} module, ${gearB.teeth} and ${gearA.teeth} teeth: m·(z₁ + z₂)/2`;
}

/** A gear that bridges the gap, where one with so many teeth can be meant. */
function largerGear({ gapMm, gearB }: MeshResult, name: string): { says: string } | undefined {
  if (gearB === 'none') return undefined;
  const teeth = gearB.teeth + Math.round((2 * gapMm) / gearB.module);
  return teeth <= 120 ? { says: `A gear of ${teeth} teeth on ${name} bridges the gap; the ratio changes with it` } : undefined;
}
