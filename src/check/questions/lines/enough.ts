import { PartView } from '../../../shoot/ledger/PartView.ts';
import { judgeRatio } from '../../judge.ts';
import { cablesUsed, countOf } from '../../quantities/kitCables.ts';
import { eachWired, wiringOf } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import { wiring } from '../../../assembly/lines/wiring.ts';

export const enough = question({
  id: 'lines.enough',
  asks: 'Are there as many cables as are used at once?',
  kind: 'immediate',
  explains: 'Counts, over the camera and all live stations of a setup, the lines that are made of each cable, against how many of it the kit has.',
  sources: ['arithmetic'],
  subjects: (ledger) =>
    eachWired(ledger).flatMap(({ subject, whole }) => [...cablesUsed(wiring(ledger, whole.setup, whole.glass)).keys()].map((path) => ({ ...subject, at: new PartView(ledger, idOf(path)).name }))),
  ask: (asking, subject) => {
    const wired = wiringOf(asking, subject);
    const used = [...cablesUsed(wired)].find(([path]) => new PartView(asking.ledger, idOf(path)).name === subject.at);
    if (used === undefined) return null;
    const [path, count] = used;
    const cable = new PartView(asking.ledger, idOf(path));
    const there = countOf(cable);
    return judgeRatio({
      needs: { amount: { value: count, unit: 'count' }, from: 'lines of this setup' },
      has: { amount: { value: there, unit: 'count' }, from: 'in the kit' },
      says: { holds: `There are enough of ${cable.name}.`, fails: `${count} of ${cable.name} are in use at once; the kit has ${there}.` },
      goodUpTo: 1,
    });
  },
});

const idOf = (path: string): string => path.slice('kit/parts/'.length);
