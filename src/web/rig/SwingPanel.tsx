import type { Swing, SwingView } from '../../jobs/views/swingView.ts';
import { printAmount } from '../../units/print.ts';
import { useSystem } from '../state/preferences.ts';
import type { SwingStudy } from './useSwing.ts';
import type { SwingShow } from './useSwingShow.ts';

/** How the rig swings, in figures; which of its lowest swings is shown, and whether it plays. */
export function SwingPanel({ study, show }: { readonly study: SwingStudy; readonly show: SwingShow }) {
  const { found, busy, start, stop } = study;
  return (
    <section className="rig-panel" aria-label="Swing">
      {busy && <p role="status">Working out how the rig swings <button type="button" onClick={stop}>Stop</button></p>}
      {!busy && found === undefined && <p role="status">The rig has changed since its swing was worked out. <button type="button" onClick={start}>Work out the swing</button></p>}
      {!busy && found?.ok === false && <p>{found.says}</p>}
      {!busy && found?.ok === true && <Shown view={found.value} show={show} />}
    </section>
  );
}

const LISTED = 5;

function Shown({ view: { swings, stands, notes }, show: { at, choose, plays, setPlays, held, setHeld, mayPlay } }: { readonly view: SwingView; readonly show: SwingShow }) {
  const system = useSystem();
  const swing = swings[at];
  if (swing === undefined) return null;
  return (
    <>
      <div className="swing-acts">
        <span role="group" aria-label="Swing shown">{swings.map((one, index) => <button key={`${index + 1} of ${swings.length}`} type="button" aria-pressed={index === at} onClick={() => choose(index)}>{hertz(one)}</button>)}</span>
        {mayPlay && <button type="button" onClick={() => setPlays(!plays)}>{plays ? 'Hold still' : 'Play'}</button>}
        <label className="swing-held"><span>through the swing</span><input type="range" min={-1} max={1} step={0.05} value={plays ? 0 : held} disabled={plays} onChange={({ target }) => setHeld(Number(target.value))} /></label>
      </div>
      <p>{saysRule(swing, stands)}</p>
      <h3>How far each piece goes, if the furthest goes {printAmount({ value: 1, unit: 'mm' }, system)}</h3>
      <ul className="reach" aria-label="How far each piece goes">
        {swing.reach.slice(0, LISTED).map(({ name, mm }, index) => <li key={`${name} ${index + 1}`}><span>{name}</span> <span className="figure">{printAmount({ value: Math.round(mm * 100) / 100, unit: 'mm' }, system)}</span></li>)}
      </ul>
      {notes.map((note) => <p key={note} className="about">{note}</p>)}
    </>
  );
}

function saysRule({ rules }: Swing, stands: string): string {
  if (rules === undefined) return `No joint of its own has a share in it, ${stands}.`;
  return `${rules.says} gives most: ${printAmount({ value: Math.round(rules.share * 100) / 100, unit: 'share' })} of the swing’s energy, ${stands}.`;
}

const hertz = ({ frequencyHz }: Pick<Swing, 'frequencyHz'>): string => printAmount({ value: Number(frequencyHz.toPrecision(2)), unit: 'Hz' });
