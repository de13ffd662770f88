import { type CableRoute, cableRoute } from '../../../assembly/space/cableRoute.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import type { Line } from '../../../shoot/schema/build.ts';
import { space } from '../../../standards/assumptions/space.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { cableEdit, cablesThatFit } from '../../quantities/kitCables.ts';
import { wiringOf } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import { buildsOf, eachSetup, glassesOf } from '../../subjects.ts';

export const cables = question({
  id: 'space.cables',
  asks: 'Is every cable long enough for its way along the rig?',
  kind: 'immediate',
  explains:
    'From port to port along the rig, with slack, and the length that plug and bend take at each end, with the glass on that asks most. Where a port’s place is not entered, the middle of its piece stands for it. ' +
    'Only cables whose two ends are placed are asked about; pans, tilts and sliding plates want a loop more.',
  sources: ['common practice'],
  subjects: (ledger) => eachSetup(ledger).flatMap(({ setup }) => buildsOf(ledger, setup).flatMap((build) => placedLines(ledger, setup, build).map((line) => ({ setup, line })))),
  ask: (asking, { setup, line: key }) => {
    const line = asking.ledger.at(pathOf(key)) as Line;
    const longest = longestRoute(asking.ledger, setup, key, line);
    if (longest === undefined || line.cable === undefined) return null;
    const { route, glass } = longest;
    const cable = new PartView(asking.ledger, line.cable);
    const length = asking.figure(cable, 'cable/lengthMm');
    const [slack, plug] = [asking.assume(space.cableSlack).value, asking.assume(space.plugRoomMm).value];
    const neededMm = route.lengthMm * (1 + slack) + 2 * plug;
    const ends = `from ${route.from.name} to ${route.to.name}`;
    return judgeRatio({
      needs: { amount: { value: neededMm, unit: 'mm' }, from: `${ends}${route.guessed ? ', places of ports guessed' : ''}` },
      has: { amount: { value: length.value, unit: 'mm' }, from: `${cable.name} ${origin(length)}` },
      says: { holds: `${cable.name} reaches ${ends}.`, tight: `${cable.name} just reaches ${ends}.`, fails: `${cable.name} is too short ${ends}.` },
      steps: [
        { says: `along the rig, longest with ${nameAt(asking.ledger, 'glasses', glass)}`, amount: { value: route.lengthMm, unit: 'mm' } },
        { says: 'with slack and plugs', amount: { value: neededMm, unit: 'mm' } },
      ],
      ...(neededMm > length.value ? { mends: longerOnes(asking, setup, key, neededMm) } : {}),
      goodUpTo: 1,
    });
  },
});

/** A line is named `build/line`, as everywhere. */
const pathOf = (key: string): string => `builds/${key.split('/')[0] ?? ''}/lines/${key.split('/')[1] ?? ''}`;

/** Lines with a cable whose two ends stand somewhere with one of the glasses on. */
function placedLines(ledger: Ledger, setup: string, build: string): string[] {
  return ledger.keys(`builds/${build}/lines`).map((id) => `${build}/${id}`).filter((key) => {
    const { cable, from, to } = ledger.at(pathOf(key)) as Line;
    return cable !== undefined && glassesOf(ledger, setup).some((glass) => [from, to].every((end) => placeSetup(ledger, setup, glass).places.has(pieceOf(build, end))));
  });
}

const pieceOf = (build: string, end: string): string => (end.split('/').length > 2 ? end.split('/').slice(0, 2).join('/') : `${build}/${end.split('/')[0] ?? ''}`);

function longestRoute(ledger: Ledger, setup: string, key: string, line: Line): { route: CableRoute; glass: string } | undefined {
  return ledger.cell(`longest route|${setup}|${key}`, () => {
    const build = key.split('/')[0] ?? '';
    const routes = glassesOf(ledger, setup).flatMap((glass) => {
      const route = cableRoute(ledger, setup, glass, build, line);
      return route === undefined ? [] : [{ route, glass }];
    });
    return routes.toSorted((a, b) => b.route.lengthMm - a.route.lengthMm)[0];
  });
}

/** The shortest free cable of the kit that fits the sockets and is long enough. */
function longerOnes(asking: Asking, setup: string, key: string, neededMm: number): Mend[] {
  const wiring = wiringOf(asking, { setup });
  const line = wiring.byKey.get(key);
  if (line === undefined) return [];
  const cable = cablesThatFit(asking.ledger, wiring, line).find((one) => (one.figure('cable/lengthMm')?.value ?? 0) >= neededMm);
  return cable === undefined ? [] : [{ says: `Use ${cable.name} instead`, edit: cableEdit(line, cable), use: neededMm / asking.figure(cable, 'cable/lengthMm').value }];
}
