import { cableRoute, hasRoute } from '../../../assembly/space/cableRoute.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import type { Line } from '../../../shoot/schema/build.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { question } from '../../question.ts';
import { buildsOf, eachGlass } from '../../subjects.ts';

export const cables = question({
  id: 'space.cables',
  asks: 'Is every cable long enough for its way along the rig?',
  kind: 'immediate',
  explains:
    'From port to port along the rig, with slack, and the length that plug and bend take at each end. Where a port’s place is not entered, the middle of its piece stands for it. Only cables whose two ends are placed are asked about; pans, tilts and sliding plates want a loop more.',
  sources: ['common practice'],
  subjects: (ledger) => eachGlass(ledger).flatMap(({ setup, glass }) => buildsOf(ledger, setup).flatMap((build) => placedLines(ledger, setup, glass, build).map((line) => ({ setup, glass, line })))),
  ask: (asking, { setup, glass, line: path }) => {
    const line = asking.ledger.at(path) as Line;
    const build = path.split('/')[1] ?? '';
    const route = cableRoute(asking.ledger, setup, glass, build, line);
    if (route === undefined || line.cable === undefined) return null;
    const cable = new PartView(asking.ledger, line.cable);
    const length = asking.figure(cable, 'cable/lengthMm');
    const [slack, plug] = [asking.assume(space.cableSlack).value, asking.assume(space.plugRoomMm).value];
    return judgeRatio({
      needs: { amount: { value: route.lengthMm * (1 + slack) + 2 * plug, unit: 'mm' }, from: `from ${route.from.name} to ${route.to.name}${route.guessed ? ', places of ports guessed' : ''}` },
      has: { amount: { value: length.value, unit: 'mm' }, from: `${cable.name} ${origin(length)}` },
      says: { holds: `${cable.name} reaches from ${route.from.name} to ${route.to.name}.`, tight: `${cable.name} just reaches from ${route.from.name} to ${route.to.name}.`, fails: `${cable.name} is too short from ${route.from.name} to ${route.to.name}.` },
      steps: [{ says: 'along the rig', amount: { value: route.lengthMm, unit: 'mm' } }, { says: 'with slack and plugs', amount: { value: route.lengthMm * (1 + slack) + 2 * plug, unit: 'mm' } }],
      goodUpTo: 1,
    });
  },
});

function placedLines(ledger: Ledger, setup: string, glass: string, build: string): string[] {
  return ledger.keys(`builds/${build}/lines`).map((id) => `builds/${build}/lines/${id}`).filter((path) => {
    const line = ledger.at(path) as Line;
    return line.cable !== undefined && hasRoute(ledger, setup, glass, build, line);
  });
}
