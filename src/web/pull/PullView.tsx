import { useEffect, useRef, useState } from 'react';
import type { Keyframe, PullTry } from '../../jobs/views/pullView.ts';
import { Typed } from '../forms/Typed.tsx';
import { readTyped } from '../marks/amounts.ts';
import { useWidth } from '../marks/useWidth.ts';
import { LoadLine, printUse } from '../marks/LoadLine.tsx';
import { Mark, Word } from '../marks/Mark.tsx';
import { enter } from '../state/actions.ts';
import { useView } from '../state/looking.ts';
import { usePage, useShoot } from '../state/page.ts';
import { goTo, useRoute } from '../state/route.ts';
import { startStudy } from '../state/studying.ts';
import { desk } from '../worker/desk.ts';
import { openWorking } from '../working/openWorking.ts';
import { BlurStrip } from './BlurStrip.tsx';
import { PullPlot } from './PullPlot.tsx';
import { PullerSees } from './PullerSees.tsx';
import { SimulatedSays } from './SimulatedSays.tsx';
import { useSimulation } from './useSimulation.ts';

/** Pulls: one shot over time, what the puller sees of it, and what the simulation says. */
export function PullView() {
  const { shots = {} } = useShoot();
  const { shot, answer } = useRoute();
  const ofAnswer = usePage(({ answers }) => (answer === undefined ? undefined : answers.get(answer)?.subject.shot));
  const id = [shot, ofAnswer, Object.keys(shots)[0]].find((one) => one !== undefined && shots[one] !== undefined);
  if (id === undefined) return <p className="empty">No shots yet. Add one under <a href="#/shoot">shoot</a>: its lens, its stop, and where the subject is over time.</p>;
  return (
    <section className="pull-view" aria-label="Pulls">
      <div className="setup-bar">
        <div className="strip" role="group" aria-label="Shot">
          {Object.entries(shots).map(([key, { name }]) => <button key={key} type="button" aria-pressed={key === id} onClick={() => goTo({ shot: key })}>{name}</button>)}
        </div>
      </div>
      <OneShot key={id} shot={id} />
    </section>
  );
}

function OneShot({ shot }: { readonly shot: string }) {
  const { name } = useShoot().shots?.[shot] ?? { name: shot };
  const room = useRef<HTMLDivElement>(null);
  const width = Math.max(300, useWidth(room));
  const [tried, setTried] = useState<PullTry>({});
  const [now, setNow] = useState(0);
  const view = useView(() => desk.pullView(shot, tried), [shot, tried]);
  const simulation = useSimulation(shot);
  const seconds = view?.ok === true ? view.value.seconds : 1;
  const [playing, play] = usePlaying(now, setNow, seconds);
  const settle = async (subject: readonly Keyframe[]) => {
    await enter(`${name}: a keyframe moved`, `shots/${shot}/subject`, subject);
    setTried(({ subject: _subject, ...rest }) => rest);
  };
  const stop = (text: string) => {
    const value = readTyped(text, 'ratio', 'metric');
    return value === undefined ? Promise.resolve(false) : enter(`${name}: stop`, `shots/${shot}/tStop`, value);
  };
  return (
    <div className="one-shot" ref={room}>
      {view !== undefined && !view.ok && <p className="empty">{view.says}</p>}
      {view?.ok === true && (
        <>
          <div className="pull-acts">
            <button type="button" onClick={() => play(!playing)}>{playing ? 'Stop' : 'Play'}</button>
            <input type="range" aria-label="Time in the shot, seconds" min={0} max={view.value.seconds} step={0.02} value={now} onChange={({ target }) => setNow(Number(target.value))} />
            <label>T <Typed says="T-stop of the shot" numeric text={view.value.tStop === undefined ? '' : String(view.value.tStop)} commit={stop} /></label>
            <label>Focus late by <input type="range" aria-label="Focus late by, milliseconds" min={0} max={600} step={10} value={view.value.lateMs} onChange={({ target }) => setTried({ ...tried, lateMs: Number(target.value) })} /> <span className="figure">{Math.round(view.value.lateMs)} ms</span></label>
          </div>
          <PullPlot view={view.value} width={width - 32} atS={now} goTo={setNow} move={(subject) => setTried({ ...tried, subject })} settle={(subject) => void settle(subject)} />
          <p className="legend"><i className="subject-line" /> subject <i className="focus-line" /> focus, late <i className="depth-band" /> depth, {view.value.says}</p>
          <BlurStrip view={view.value} simulated={simulation.found?.ok === true ? simulation.found.value : undefined} width={width - 32} atS={now} />
          <SimulatedSays simulation={simulation} />
          <PullerSees view={view.value} atS={now} />
        </>
      )}
      <OfShot shot={shot} />
    </div>
  );
}

/** Runs time at its own pace until the end, then from the start. */
function usePlaying(now: number, setNow: (timeS: number) => void, seconds: number): readonly [boolean, (on: boolean) => void] {
  const [playing, setPlaying] = useState(false);
  const at = useRef(now);
  at.current = now;
  useEffect(() => {
    if (!playing) return undefined;
    let last = performance.now();
    let frame = requestAnimationFrame(function step(time) {
      const next = at.current + (time - last) / 1000;
      last = time;
      setNow(next >= seconds ? 0 : next);
      frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing, seconds, setNow]);
  return [playing, setPlaying];
}

/** What the questions of focus say of this shot; those that are simulations can be run from here. */
function OfShot({ shot }: { readonly shot: string }) {
  const all = usePage((state) => state.answers);
  const answers = [...all.values()].filter(({ subject, discipline }) => subject.shot === shot && (discipline === 'focus' || discipline === 'picture'));
  if (answers.length === 0) return null;
  return (
    <section className="of-shot" aria-label="What is asked of this shot">
      {answers.map((answer) => (
        <div className="row" key={answer.key}>
          <Mark verdict={answer.verdict} />
          <button type="button" className="asks-what" data-row onClick={() => openWorking(answer.key)}><span className="asked">{answer.asks}</span><span className="said"><Word verdict={answer.verdict} /> {answer.says}</span></button>
          <LoadLine use={answer.use} verdict={answer.verdict} />
          <span className="figure use">{answer.use === undefined ? '' : printUse(answer.use)}</span>
          {answer.verdict === 'pending' ? <button type="button" className="plain" onClick={() => void startStudy([answer.key])}>Study</button> : <span />}
        </div>
      ))}
    </section>
  );
}
