import { closeUpPower } from '../../../calc/optics/closeUpPower.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Side, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeReach } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { shotName } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { outermost } from '../../quantities/alongAxis.ts';
import { closeUpToSensor } from '../../quantities/closeUpInUse.ts';
import { type FocusReach, focusReach, reachThrough, reachUse } from '../../quantities/focusReach.ts';
import { type ShotDistances, shotDistances } from '../../quantities/shotDistances.ts';
import { opticalPath } from '../../../assembly/opticalPath.ts';
import { question } from '../../question.ts';
import { type ShotSubject, eachShot } from '../../subjects.ts';

export const closeFocus = question({
  id: 'picture.closeFocus',
  asks: 'Does it focus over the whole shot?',
  kind: 'immediate',
  explains:
    'The nearest distance that a shot asks against the closest the ring goes, both from the sensor plane. With a close-up lens on the front, ahead of the anamorphot where it serves both meridians alike, ' +
    'the ring’s infinity comes down to the focal length of the close-up lens, so that the far end of the shot can be lost as well: the worse end counts. ' +
    'Where it falls short, each close-up lens of the kit that fits the front is tried on both ends of the shot.',
  sources: ['Vergence of a thin lens: Ray, Applied Photographic Optics', 'common practice'],
  subjects: eachShot,
  ask: (asking, subject) => {
    if (opticalPath(asking.ledger, subject.setup, subject.glass).lens === undefined) return null;
    const asked = shotDistances(asking, subject.shot);
    const reach = focusReach(asking, subject);
    const use = reachUse(asked, reach);
    const farWorse = asked.farMm / reach.farMm > reach.nearMm / asked.nearMm;
    const shot = shotName(asking.ledger, subject.shot);
    const on = reach.closeUp === undefined ? reach.ring.name : `${reach.ring.name} with ${reach.closeUp.name}`;
    return judgeReach({
      use,
      ...sides(asked, reach, farWorse),
      says: {
        holds: `${on} focuses over the whole of ${shot}.`,
        tight: farWorse ? `${on} only just focuses as far as ${shot} asks.` : `${on} only just focuses as close as ${shot} asks.`,
        fails: farWorse ? `${on} does not focus as far as ${shot} asks.` : `${on} does not focus as close as ${shot} asks.`,
      },
      steps: stepsOf(asked, reach),
      ...(use > 1 ? cures(asking, subject, asked, reach) : {}),
    });
  },
});

function sides(asked: ShotDistances, reach: FocusReach, far: boolean): { needs: Side; has: Side } {
  const through = reach.closeUp === undefined ? '' : ` through ${reach.closeUp.name}`;
  const amount = (mm: number) => ({ value: mm / 1000, unit: 'm' }) as const;
  return far
    ? { needs: { amount: amount(asked.farMm), from: 'farthest of the shot', word: 'asked' }, has: { amount: amount(reach.farMm), from: `infinity of the ring${through}`, word: 'reaches' } }
    : { needs: { amount: amount(asked.nearMm), from: 'nearest of the shot', word: 'asked' }, has: { amount: amount(reach.nearMm), from: `closest of ${reach.ring.name} ${origin(reach.closest)}${through}`, word: 'reaches' } };
}

function stepsOf(asked: ShotDistances, reach: FocusReach): Step[] {
  const tape = (says: string, mm: number): Step => ({ says, amount: { value: mm / 1000, unit: 'm' } });
  const through = reach.closeUp === undefined ? [] : [tape(`${reach.closeUp.name} stands ahead of the sensor by`, reach.closeUp.toSensorMm), tape('with it, as far as', reach.farMm), tape('with it, as close as', reach.nearMm)];
  return [...(asked.farMm > asked.nearMm ? [tape('farthest of the shot', asked.farMm)] : []), tape('the ring alone, as close as', reach.aloneNearMm), ...through];
}

/** Every close-up lens of the kit on the front, none at all, or a little more distance. */
function cures(asking: Asking, subject: ShotSubject, asked: ShotDistances, reach: FocusReach): { mends: Mend[]; notes: string[] } {
  const path = `shots/${subject.shot}/diopter`;
  const now = asking.ledger.at(path) as string | undefined;
  const bare: Mend[] =
    now !== undefined && asked.nearMm >= reach.aloneNearMm
      ? [{ says: 'Take the close-up lens off', edit: { says: 'no close-up lens', patches: [{ op: 'remove', path }] }, use: reach.aloneNearMm / asked.nearMm }]
      : [];
  const farther: Mend[] =
    reach.nearMm > asked.nearMm && reach.farMm >= asked.farMm
      ? [{ says: `Keep the subject ${printAmount({ value: Math.ceil(reach.nearMm / 10) / 100, unit: 'm' })} away or farther`, costs: 'a wider frame', use: reach.nearMm / (Math.ceil(reach.nearMm / 10) * 10) }]
      : [];
  const carried = (reach.closeUp?.powerDpt ?? 0) - (now === undefined ? 0 : asking.figure(new PartView(asking.ledger, now), 'closeUp/powerDpt').value);
  try {
    const toSensorMm = closeUpToSensor(asking, subject);
    const tried = candidates(asking, subject).filter(({ id }) => id !== now).map(({ id, part, powerDpt, fits }) => {
      const through = reachThrough({ powerDpt: powerDpt + carried, toSensorMm }, reach.aloneNearMm);
      const use = reachUse(asked, { nearMm: through.near, farMm: through.far });
      return { id, name: part.name, use, fits, losesFar: asked.farMm > through.far };
    });
    const helps = tried.filter(({ use }) => use <= 1).toSorted((a, b) => a.use - b.use);
    const mends = helps.map(({ id, name, use, fits }) => ({
      says: `Put ${name} on the front, ahead of the anamorphot`,
      edit: { says: `${name} on the front`, patches: [{ op: now === undefined ? ('add' as const) : ('replace' as const), path, value: id }] },
      costs: `the ring’s marks no longer hold; tape it through the glass${fits ? '' : '; whether it fits the front is not entered'}`,
      use,
    }));
    return { mends: [...mends, ...bare, ...farther], notes: helps.length > 0 ? [] : whyNone(asked, { toSensorMm, closeFocusMm: reach.aloneNearMm }, tried) };
  } catch (thrown) {
    if (!(thrown instanceof NotEntered)) throw thrown;
    return { mends: [...bare, ...farther], notes: [`Which close-up lens would help cannot be told without ${thrown.missing.map(({ says }) => says).join(', ')}.`] };
  }
}

/** Close-up lenses in the kit that fit the front, or of which nothing is entered. */
function candidates(asking: Asking, subject: ShotSubject): { id: string; part: PartView; powerDpt: number; fits: boolean }[] {
  const front = outermost(asking, subject)?.part;
  const sizes = ['front/diameterMm', 'front/threadMm'].map((path) => front?.figure(path)?.value).filter((value) => value !== undefined);
  return asking.ledger.keys('kit/parts').flatMap((id) => {
    const part = new PartView(asking.ledger, id);
    const power = part.figure('closeUp/powerDpt');
    const fitted = part.read('closeUp/fitsMm') as readonly number[] | undefined;
    if (power === undefined) return [];
    const fits = fitted?.some((size) => sizes.includes(size));
    return fits === false && sizes.length > 0 ? [] : [{ id, part, powerDpt: power.value, fits: fits === true }];
  });
}

function whyNone(asked: ShotDistances, at: { toSensorMm: number; closeFocusMm: number }, tried: readonly { name: string; losesFar: boolean }[]): string[] {
  if (asked.nearMm <= at.toSensorMm) return ['The nearest distance lies inside the lens.'];
  const { leastDpt, mostDpt } = closeUpPower({ shotNearMm: asked.nearMm, shotFarMm: asked.farMm, closeFocusMm: at.closeFocusMm, diopterToSensorMm: at.toSensorMm });
  if (leastDpt > mostDpt) return ['No one close-up lens holds both ends of this shot: what reaches the near end loses the far one.'];
  const range = `from +${printNumber(leastDpt, 2)} to +${printNumber(mostDpt, 2)} dioptres`;
  return [`A close-up lens ${range} would hold the whole shot. Tried on this front: ${tried.length === 0 ? 'none in the kit fits' : tried.map(({ name }) => name).join(', ')}.`];
}
