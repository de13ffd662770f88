import { drivenBy } from '../../../assembly/placing/gears.ts';
import { type MeshResult, placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { gearMends } from '../../quantities/gearMends.ts';
import { question } from '../../question.ts';
import { stopWords } from '../../settingWords.ts';
import { eachGlass } from '../../subjects.ts';

export const gearFace = question({
  id: 'space.gearFace',
  asks: 'Do the gears stay in mesh over the whole focus travel?',
  kind: 'immediate',
  explains:
    'A gear may travel along the axis as the lens focuses. At both ends of the travel, half the narrower face must still be in mesh; less, and the load sits on the edges of few teeth and the gears walk off each other.',
  sources: ['common practice'],
  subjects: (ledger) => eachGlass(ledger).flatMap(({ setup, glass }) => placeSetup(ledger, setup, glass).meshes.map(({ joint }) => ({ setup, glass, joint: joint.path }))),
  ask: (asking, { setup, glass, joint: path }) => {
    const mesh = placeSetup(asking.ledger, setup, glass).meshes.find(({ joint }) => joint.path === path);
    if (mesh === undefined || mesh.gearA === 'none' || mesh.gearB === 'none' || mesh.gapMm > mesh.gearA.module) return null;
    const { gearA, gearB, offsetMm, joint } = mesh;
    const missing = [[gearA, joint.a.piece], [gearB, joint.b.piece]] as const;
    const unknown = missing.filter(([gear]) => gear.faceMm === undefined).map(([, { part, name }]) => ({ path: `${part.path}/${part.has('focus') ? 'focus' : 'motor'}/gear/faceMm`, says: `face width of the gear of ${name}` }));
    if (unknown.length > 0) throw new NotEntered(unknown);
    const [faceA, faceB] = [gearA.faceMm ?? 0, gearB.faceMm ?? 0];
    const offsets = [offsetMm, offsetMm - gearA.travelMm + gearB.travelMm];
    const inMesh = Math.min(...offsets.map((offset) => Math.max(0, Math.min(faceA, faceB, (faceA + faceB) / 2 - Math.abs(offset)))));
    // Nowhere on the travel: the gear is not reached at all, which is asked by itself.
    if (Math.min(...[...offsets, mesh.midOffsetMm].map(Math.abs)) >= (faceA + faceB) / 2) return null;
    const { driver, driven } = drivenBy(mesh);
    const share = asking.assume(space.faceShare).value;
    return judgeRatio({
      needs: { amount: { value: share * Math.min(faceA, faceB), unit: 'mm' }, from: `half the narrower face, ${Math.min(faceA, faceB)} mm` },
      has: { amount: { value: inMesh, unit: 'mm' }, from: `in mesh at the worse end; the gears travel ${Math.abs(gearA.travelMm - gearB.travelMm)} mm past each other` },
      says: { holds: `${driver.piece.name} stays in mesh with ${driven.piece.name}.`, fails: `${driver.piece.name} runs off the gear of ${driven.piece.name} at one end of the travel.` },
      notes: stopWords(mesh).map((says) => `${says[0]?.toUpperCase() ?? ''}${says.slice(1)}.`),
      mends: inMesh < share * Math.min(faceA, faceB) ? [...gearMends(asking.ledger, { setup, glass }, mesh), ...widerGear(mesh, share)] : [],
    });
  },
});

/** A motor's gear so wide that it is in mesh at both ends of the travel, where the middles already meet as well as they can. */
function widerGear({ gearA, gearB, midOffsetMm, joint }: MeshResult, share: number): Mend[] {
  if (gearA === 'none' || gearB === 'none') return [];
  const [ring, driver, end] = gearA.on === 'ring' ? [gearA, gearB, joint.b] : [gearB, gearA, joint.a];
  const wants = 2 * (share * (ring.faceMm ?? 0) + Math.abs(midOffsetMm)) + Math.abs(ring.travelMm - driver.travelMm) - (ring.faceMm ?? 0);
  return wants <= (driver.faceMm ?? 0) || wants > WIDEST_GEAR_MM ? [] : [{ says: `A gear ${printAmount({ value: Math.ceil(wants), unit: 'mm' })} wide on ${end.piece.name}` }];
}

/** Common practice: wider gears on motors are made up to about this. */
const WIDEST_GEAR_MM = 40;
