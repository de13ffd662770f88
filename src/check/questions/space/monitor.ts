import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../../assembly/setupPieces.ts';
import { worldSolids } from '../../../assembly/space/worldSolids.ts';
import { judgeYes } from '../../judge.ts';
import { wholeMass } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const monitor = question({
  id: 'space.monitor',
  asks: 'Is the monitor where the operator can see it?',
  kind: 'immediate',
  explains:
    'On a tripod the operator’s monitor stands on top of the camera; on a shoulder it hangs ahead of the operator on an arm, never behind the balance point, where the eye cannot reach it and the weight pulls back. Asked of screens on the camera’s own build that are placed.',
  sources: ['common practice'],
  subjects: (ledger) =>
    eachGlass(ledger).flatMap(({ setup, glass }) => {
      const camera = ledger.at(`setups/${setup}/camera`) as string;
      const { places } = placeSetup(ledger, setup, glass);
      return [...setupPieces(ledger, setup, glass).values()].filter(({ build, part, ref }) => build === camera && part.has('screen') && !part.has('body') && places.has(ref)).map(({ ref }) => ({ setup, glass, piece: ref }));
    }),
  ask: (asking, { setup, glass, piece: ref }) => {
    const { ledger } = asking;
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    const purpose = ledger.at(`builds/${camera}/purpose`) as string;
    const screen = setupPieces(ledger, setup, glass).get(ref);
    const solids = worldSolids(ledger, setup, glass);
    const own = solids.find(({ piece }) => piece.ref === ref);
    const body = solids.find(({ piece }) => piece.part.has('body'));
    if (screen === undefined || own === undefined || body === undefined) return null;
    const above = own.place.t[1] - body.place.t[1];
    if (purpose === 'tripod') {
      return judgeYes({
        yes: above > 0,
        says: { holds: `${screen.name} stands above the camera.`, fails: `${screen.name} sits below the camera, where nobody behind the tripod sees it.` },
        steps: [{ says: 'above the middle of the body', amount: { value: above, unit: 'mm' } }],
      });
    }
    if (purpose !== 'shoulder') return null;
    const balance = wholeMass(asking, { setup, glass }, camera, () => true);
    if (balance === undefined) return null;
    const ahead = own.place.t[2] - balance.centreMm[2];
    return judgeYes({
      yes: ahead > 0,
      says: { holds: `${screen.name} hangs ahead of the balance point.`, fails: `${screen.name} is behind the balance point: the operator cannot see it and it pulls back.` },
      steps: [{ says: 'ahead of the centre of mass', amount: { value: ahead, unit: 'mm' } }],
    });
  },
});
