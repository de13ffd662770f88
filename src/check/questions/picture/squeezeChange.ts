import { picture } from '../../../standards/assumptions/picture.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Judgement, Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { shotName } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { shotDistances } from '../../quantities/shotDistances.ts';
import { type SqueezeThere, seesParallelLight, squeezeMarks, squeezeThere } from '../../quantities/squeezeAtDistance.ts';
import { squeezeOf } from '../../quantities/squeezeOf.ts';
import { question } from '../../question.ts';
import { opticalPath } from '../../../assembly/opticalPath.ts';
import { type ShotSubject, eachShot } from '../../subjects.ts';

/** From here on squeeze is the nominal one near enough; common practice. */
const FAR_MM = 3000;

export const squeezeChange = question({
  id: 'picture.squeezeChange',
  asks: 'Does the squeeze hold over the distances of the shot?',
  kind: 'immediate',
  explains:
    'Anamorphots that focus themselves squeeze less close up; widened by the nominal squeeze, a face there comes out broad. The squeeze at both ends of the shot is read off the measured marks ' +
    '(through a close-up lens at the ring’s own mark), and the stretch against the nominal squeeze is held against what is seen in a face. ' +
    'A stretch that is the same all through the shot can be taken out by widening less; one that changes cannot. Behind a focuser in front, what is in focus reaches the block as parallel light: its squeeze stays.',
  sources: ['common practice', 'Interpolation over dioptres: Fritsch and Butland 1984'],
  subjects: eachShot,
  ask: (asking, subject) => {
    if (opticalPath(asking.ledger, subject.setup, subject.glass).lens === undefined) return null;
    const { by, value: nominal } = squeezeOf(asking, subject);
    if (by === undefined || outOfReach(asking, subject)) return null;
    const { nearMm, farMm } = shotDistances(asking, subject.shot);
    const marked = squeezeMarks(by).length > 0;
    if (!marked && (nearMm >= FAR_MM || seesParallelLight(asking, subject))) return null;
    if (seesParallelLight(asking, subject)) return steady(asking, subject, by.name);
    return judge(asking, subject, nominal, { near: squeezeThere(asking, subject, nearMm), far: squeezeThere(asking, subject, farMm) });
  },
});

function steady(asking: Asking, { setup, glass }: ShotSubject, name: string): Judgement {
  const focuser = opticalPath(asking.ledger, setup, glass).focuser?.name ?? 'the focuser';
  const says = `${name} keeps its squeeze: ${focuser} ahead of it does the focusing.`;
  return judgeYes({ yes: true, says: { holds: says, fails: says }, notes: ['Marks of the block by itself, at its own focus distances, do not count here.'] });
}

function judge(asking: Asking, { shot }: ShotSubject, nominal: number, { near, far }: { near: SqueezeThere; far: SqueezeThere }): Judgement {
  const face = asking.assume(picture.stretchSeen);
  const seen = face.value;
  const worst = Math.max(Math.abs(near.stretch - 1), Math.abs(far.stretch - 1));
  const name = shotName(asking.ledger, shot);
  const broad = near.stretch > 1;
  return judgeRatio({
    needs: { amount: { value: worst, unit: 'share' }, from: `stretch when widened by ${printNumber(nominal)}`, word: 'stretched by' },
    has: { amount: { value: seen, unit: 'share' }, from: `stretch that is seen in a face ${origin(face)}`, word: 'seen at' },
    says: {
      holds: `The squeeze holds over ${name}.`,
      tight: `Faces in ${name} are on the edge of looking ${broad ? 'broad' : 'thin'}.`,
      fails: `Faces in ${name} come out ${broad ? 'broad' : 'thin'} at its nearest.`,
    },
    steps: [
      { says: 'squeeze at the nearest', amount: { value: near.squeeze, unit: 'ratio' } },
      ...(far.squeeze === near.squeeze ? [] : [{ says: 'squeeze at the farthest', amount: { value: far.squeeze, unit: 'ratio' } as const }]),
      { says: 'change over the shot, which no widening takes out', amount: { value: Math.abs(near.stretch / far.stretch - 1), unit: 'share' } },
    ],
    mends: worst > 0.9 * seen ? widenLess(near, far, nominal, seen) : [],
  });
}

/** One widening half way between both ends leaves half of the change. */
function widenLess(near: SqueezeThere, far: SqueezeThere, nominal: number, seen: number): Mend[] {
  const widening = Math.round(50 * (near.squeeze + far.squeeze)) / 100;
  const left = Math.max(Math.abs(widening / near.squeeze - 1), Math.abs(widening / far.squeeze - 1));
  if (widening === nominal || left > seen) return [];
  return [{
    says: `Widen this shot by ${printNumber(widening)} instead of ${printNumber(nominal)}`,
    costs: `note it for finishing; far things then come out thin by ${printAmount({ value: 1 - widening / nominal, unit: 'share' })}, and the frame narrows with it`,
    use: left / seen,
  }];
}
