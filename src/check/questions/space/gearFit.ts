import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { judgeYes } from '../../judge.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

/** Gears of 32 diametral pitch are 25.4/32 mm in module: near enough to 0.8 to start, and to walk. */
const INCH_MODULE = 25.4 / 32;

export const gearFit = question({
  id: 'space.gearFit',
  asks: 'Are the gears of one kind?',
  kind: 'immediate',
  explains:
    'Cinema lens gears are 0.8 module. Inch gears of 32 pitch (0.794) mesh with them for a few teeth and then bind or jump; other modules do not mesh. A split ring is closed round a lens without a gear and bumps at its join once a turn.',
  sources: ['DIN 780 (module 0.8); 25.4/32 = 0.79375; common practice'],
  subjects: (ledger) => eachGlass(ledger).flatMap(({ setup, glass }) => placeSetup(ledger, setup, glass).meshes.map(({ joint }) => ({ setup, glass, joint: joint.path }))),
  ask: ({ ledger }, { setup, glass, joint: path }) => {
    const mesh = placeSetup(ledger, setup, glass).meshes.find(({ joint }) => joint.path === path);
    if (mesh === undefined || mesh.gearA === 'none' || mesh.gearB === 'none') return null;
    const { gearA, gearB, joint } = mesh;
    const [a, b] = [joint.a.piece.name, joint.b.piece.name];
    const apart = Math.abs(gearA.module - gearB.module);
    const inch = apart > 0.002 && [gearA, gearB].some(({ module }) => Math.abs(module - INCH_MODULE) < 0.003);
    const split = gearA.split ? a : gearB.split ? b : undefined;
    return judgeYes({
      yes: apart <= 0.002,
      caution: split !== undefined,
      says: {
        holds: `Both gears are ${gearA.module} module.`,
        tight: `The gear ring of ${split ?? ''} is split: it bumps at the join.`,
        fails: inch ? `One gear of ${a} and ${b} is an inch gear: it meshes for a few teeth, then binds.` : `The gears of ${a} and ${b} are of different modules, ${gearA.module} and ${gearB.module}.`,
      },
      ...(split === undefined ? {} : { notes: ['Set the join where no mark lies, and feel for it before calibrating.'] }),
    });
  },
});
