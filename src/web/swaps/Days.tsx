import type { DayShot, DayView, LeastWork } from '../../jobs/views/daysView.ts';
import type { View } from '../../jobs/views/View.ts';
import { printAmount } from '../../units/print.ts';
import { edit } from '../state/actions.ts';
import { useView } from '../state/looking.ts';
import { goTo } from '../state/route.ts';
import { desk } from '../worker/desk.ts';

/** The shots of each day in their order with what changes between them, and the order that costs the camera least. */
export function Days() {
  const view = useView(() => desk.daysView(), []);
  if (view === undefined) return null;
  if (!view.ok) return <p className="empty">{view.says}</p>;
  if (view.value.length === 0) return <p className="empty">No shots yet; the order of the day comes from them.</p>;
  return view.value.map((day) => <Day key={day.day} day={day} />);
}

const print = (minutes: number): string => printAmount({ value: Math.round(minutes * 10) / 10, unit: 'min' });

function Day({ day: { name, shots, order } }: { readonly day: DayView }) {
  const title = name === 'no day' ? 'Shots without a day' : `${name}: in the order of the shots`;
  return (
    <>
      <h2>{title}</h2>
      <div className="scroll" tabIndex={0} role="region" aria-label={title}>
        <table className="swaps">
          <thead><tr><th scope="col">shot</th><th scope="col">setup</th><th scope="col">lens</th><th scope="col" className="figure">change before it</th></tr></thead>
          <tbody>{shots.map((shot, at) => <ShotRow key={shot.shot} shot={shot} before={shots[at - 1]} />)}</tbody>
        </table>
      </div>
      {order !== undefined && <Order name={name} order={order} />}
    </>
  );
}

function ShotRow({ shot: { shot, name, setupName, glassName, change }, before }: { readonly shot: DayShot; readonly before: DayShot | undefined }) {
  const minutes = change === undefined ? '' : change.ok ? (change.value === 0 ? 'none' : print(change.value)) : change.says;
  return (
    <tr>
      <th scope="row"><button type="button" className="plain" onClick={() => goTo({ view: 'pulls', shot })}>{name}</button></th>
      <td className="words" data-changes={before !== undefined && before.setupName !== setupName}>{setupName}</td>
      <td className="words" data-changes={before !== undefined && before.glassName !== glassName}>{glassName}</td>
      <td className="figure">{minutes}</td>
    </tr>
  );
}

function Order({ name, order }: { readonly name: string; readonly order: View<LeastWork> }) {
  if (!order.ok) return <p className="says">{order.says}</p>;
  const { blocks, leastMin, plannedMin, method, atLeastMin, edit: taking } = order.value;
  const how = method === 'exact' ? 'No order that is allowed takes less.' : `A good order, perhaps not the best; none takes less than ${print(atLeastMin)}.`;
  return (
    <section className="least-work" aria-label={`${name}: the order with least work`}>
      <p className="says">Changes take {print(plannedMin)} in the planned order and {print(leastMin)} in the one with least work that keeps the shots of each block together. {how} Light, actors and places come first.</p>
      {taking !== undefined && (
        <>
          <ol>{blocks.map((shots) => <li key={shots.join()}>{shots.join(' · ')}</li>)}</ol>
          <button type="button" onClick={() => void edit(taking.says, taking.patches)}>Take the shots in this order</button>
        </>
      )}
    </section>
  );
}
