import { ambientContrast } from '../../../calc/video/ambientContrast.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { jobLimit } from '../../../standards/assumptions/sight.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { type Seen, seenBy } from '../../quantities/seenBy.ts';
import { unseen } from '../../quantities/unseen.ts';
import { higher, shootFigure, worstOfDays } from '../../quantities/shootFigures.ts';
import { question } from '../../question.ts';
import { eachViewer } from '../../subjects.ts';

export const contrast = question({
  id: 'sight.contrast',
  asks: 'Is each screen bright enough for the light it stands in?',
  kind: 'immediate',
  explains:
    'Light that falls on a screen is thrown back over the picture and lifts its blacks: contrast is what is left of white over black. The light is what the viewer states, else the brightest of the days of the setup. ' +
    'Glare of a lamp or the sky mirrored in the glass is not in it, and a hood counts only as less light entered.',
  sources: ['a diffuse surface under E lux shines with ρ·E/π cd/m²', 'contrast wanted by job: common practice'],
  subjects: eachViewer,
  ask: (asking, subject) => {
    const blind = unseen(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    if (seen === undefined) return null;
    const light = shootFigure(asking.ledger, `${seen.path}/illuminanceLux`) ?? worstOfDays(asking.ledger, subject.setup, 'illuminanceLux', higher);
    if (light === undefined) throw new NotEntered([{ path: `${seen.path}/illuminanceLux`, says: `the light that falls on ${seen.screen.name}` }]);
    const { white, black, reflectance } = asking.figures(seen.screen.part, { white: 'screen/whiteCdPerM2', black: 'screen/blackCdPerM2', reflectance: 'screen/reflectance' });
    const wanted = asking.assume(jobLimit(seen.job, 'Contrast'));
    const of = (illuminanceLux: number) => ambientContrast({ whiteCdPerM2: white.value, blackCdPerM2: black.value, reflectance: reflectance.value, illuminanceLux }).contrastRatio;
    const got = Math.min(of(light.value), 1e6);
    const thrown = (reflectance.value * light.value) / Math.PI;
    const place = printAmount({ value: light.value, unit: 'lx' });
    return judgeRatio({
      needs: { amount: { value: wanted.value, unit: 'ratio' }, from: `to one, for ${seen.job} ${origin(wanted)}` },
      has: { amount: { value: got, unit: 'ratio' }, from: `to one, at ${place} ${origin(light)}` },
      says: {
        holds: `${seen.screen.name} is bright enough for ${seen.name} at ${place}.`,
        tight: `${seen.screen.name} is just bright enough for ${seen.name} at ${place}.`,
        fails: `${seen.screen.name} is washed out for ${seen.name} at ${place}.`,
      },
      steps: [
        { says: 'light the screen throws back', amount: { value: thrown, unit: 'cd/m²' } },
        { says: 'white with that light on it', amount: { value: white.value + thrown, unit: 'cd/m²' } },
        { says: 'black with that light on it', amount: { value: black.value + thrown, unit: 'cd/m²' } },
      ],
      mends: got >= wanted.value ? [] : [...hood(white.value, black.value, reflectance.value, wanted.value), ...brighter(asking, seen, light.value, wanted.value)],
    });
  },
});

/** The light at which the contrast is as wanted: (Lw + x)/(Lb + x) = k gives x = (Lw − k·Lb)/(k − 1). */
function hood(white: number, black: number, reflectance: number, wanted: number): Mend[] {
  const thrown = (white - wanted * black) / (wanted - 1);
  if (thrown <= 0 || reflectance <= 0) return [];
  return [{ says: `a hood or shade that leaves ${printAmount({ value: (thrown * Math.PI) / reflectance, unit: 'lx' })} on the screen`, use: 1 }];
}

/** Screens of the kit that do better in this light. */
function brighter(asking: Asking, { screen }: Seen, illuminanceLux: number, wanted: number): Mend[] {
  return kitScreens(asking.ledger)
    .filter(({ id }) => id !== screen.part.id)
    .flatMap((part): Mend[] => {
      const [white, black, reflectance] = ['screen/whiteCdPerM2', 'screen/blackCdPerM2', 'screen/reflectance'].map((path) => part.figure(path)?.value);
      if (white === undefined || black === undefined || reflectance === undefined) return [];
      const use = wanted / ambientContrast({ whiteCdPerM2: white, blackCdPerM2: black, reflectance, illuminanceLux }).contrastRatio;
      return use <= 1 ? [{ says: `${part.name} in its place`, use, costs: 'its plugs, power and fixing are other ones' }] : [];
    })
    .toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0))
    .slice(0, 2);
}

const kitScreens = (ledger: Ledger): readonly PartView[] =>
  ledger.cell('kit screens', () => ledger.keys('kit/parts').filter((id) => ledger.at(`kit/parts/${id}/screen`) !== undefined).map((id) => new PartView(ledger, id)));
