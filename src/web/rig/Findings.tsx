import type { Vector } from '../../assembly/placing/Transform.ts';
import type { RigView } from '../../jobs/views/rigView.ts';
import { type System, printAmount } from '../../units/print.ts';
import { Mark } from '../marks/Mark.tsx';
import { useSystem } from '../state/preferences.ts';

/** What a build weighs and where its weight is, what collides, and what does not hold together. */
export function Findings({ rig, build }: { readonly rig: RigView; readonly build: string }) {
  const system = useSystem();
  const nameOf = (ref: string) => rig.pieces.find((piece) => piece.ref === ref)?.name ?? ref;
  const hits = rig.collisions.filter(({ a }) => a.startsWith(`${build}/`));
  const mass = rig.masses.find((one) => one.build === build);
  return (
    <div className="rig-says">
      {mass !== undefined && <p className="figure">{printAmount({ value: mass.massG, unit: 'g' }, system)} placed, its centre {centreWords(mass.centreMm, system)}{mass.unknown > 0 ? `; ${mass.unknown} ${mass.unknown === 1 ? 'piece' : 'pieces'} without a place or a mass not counted` : ''}</p>}
      {hits.map(({ a, b, depthMm, withTravel, coarse }) => <p key={`${a} ${b}`}><Mark verdict={coarse ? 'tight' : 'fails'} /> {nameOf(a)} and {nameOf(b)} are in one place, about {printAmount({ value: depthMm, unit: 'mm' }, system)} deep{withTravel ? ' at the end of the focus travel' : ''}{coarse ? ' (a guessed shape)' : ''}.</p>)}
      {rig.faults.map((fault) => <p key={fault}><Mark verdict="fails" /> {fault}</p>)}
    </div>
  );
}

/** Where the centre of mass is, from the middle of the sensor. */
function centreWords([left, up, ahead]: Vector, system: System): string {
  // To a millimetre, or a tenth of an inch: it is no surer.
  const step = system === 'imperial' ? 2.54 : 1;
  const part = (mm: number, more: string, less: string) => `${printAmount({ value: Math.abs(Math.round(mm / step) * step), unit: 'mm' }, system)} ${mm < 0 ? less : more}`;
  return `${part(ahead, 'ahead of', 'behind')} the sensor, ${part(up, 'above', 'below')} the axis, ${part(left, 'to camera left', 'to camera right')}`;
}
