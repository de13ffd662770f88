import { type KeyboardEvent, useRef, useState } from 'react';
import type { ChangesView, MotorWindows } from '../../jobs/views/changesView.ts';
import { printAmount, printNumber } from '../../units/print.ts';
import { useView } from '../state/looking.ts';
import { useSystem } from '../state/preferences.ts';
import { desk } from '../worker/desk.ts';
import { ChangeSteps } from './ChangeSteps.tsx';

/** Minutes from each lens to each other; the change chosen among them step by step; and the one place of the motor. */
export function Changes({ setup }: { readonly setup: string }) {
  const view = useView(() => desk.changesView(setup), [setup]);
  if (view === undefined) return null;
  if (!view.ok) return <p className="empty">{view.says}</p>;
  if (view.value.glasses.length < 2) return <p className="empty">One lens only: nothing is changed.</p>;
  return <Drawn changes={view.value} setup={setup} />;
}

interface Cell {
  readonly from: number;
  readonly to: number;
}

function Drawn({ changes, setup }: { readonly changes: ChangesView; readonly setup: string }) {
  const [picked, pick] = useState<Cell | undefined>();
  const { glasses, minutes, motor } = changes;
  const chosen = picked !== undefined && minutes[picked.from]?.[picked.to] !== undefined ? picked : slowest(minutes);
  const [from, to] = [glasses[chosen.from], glasses[chosen.to]];
  return (
    <>
      <h2>Minutes from lens to lens</h2>
      <MinutesTable changes={changes} chosen={chosen} pick={pick} />
      {changes.finishes.flat().includes(false) && <p className="about says">* cannot be finished as built: a gear stays out of reach</p>}
      {from !== undefined && to !== undefined && <ChangeSteps setup={setup} from={from.id} to={to.id} />}
      {motor !== undefined && <Motor motor={motor} />}
    </>
  );
}

function slowest(minutes: ChangesView['minutes']): Cell {
  const all = minutes.flatMap((row, from) => row.flatMap((value, to) => (value === undefined ? [] : { from, to, value })));
  return all.reduce((most, one) => (one.value > most.value ? one : most), all[0] ?? { from: 0, to: 1, value: 0 });
}

const printMinutes = (minutes: number): string => printAmount({ value: Math.round(minutes * 10) / 10, unit: 'min' });

/** One stop for the Tab key; arrow keys go from cell to cell. */
function MinutesTable({ changes: { glasses, minutes, finishes }, chosen, pick }: { readonly changes: ChangesView; readonly chosen: Cell; readonly pick: (cell: Cell) => void }) {
  const table = useRef<HTMLTableElement>(null);
  const walk = (event: KeyboardEvent, cell: Cell): void => {
    const next = cellBeside(cell, event.key, glasses.length);
    if (next === undefined) return;
    event.preventDefault();
    pick(next);
    table.current?.querySelector<HTMLElement>(`[data-cell='${next.from} ${next.to}']`)?.focus();
  };
  return (
    <div className="scroll">
      <table className="minutes" ref={table} aria-label="Minutes from lens to lens">
        <thead><tr><th scope="col">from</th>{glasses.map(({ id, name }, at) => <th key={id} scope="col" title={name} data-chosen={at === chosen.to}><span aria-hidden="true">to {at + 1}</span><span className="hidden">to {name}</span></th>)}</tr></thead>
        <tbody>
          {glasses.map(({ id, name }, from) => (
            <tr key={id}>
              <th scope="row" data-chosen={from === chosen.from}><span className="number">{from + 1}</span> {name}</th>
              {glasses.map((other, to) => {
                const value = minutes[from]?.[to];
                if (value === undefined) return <td key={other.id} className="same">·</td>;
                const unfinished = finishes[from]?.[to] === false;
                const here = from === chosen.from && to === chosen.to;
                return (
                  <td key={other.id}>
                    <button
                      type="button" data-cell={`${from} ${to}`} tabIndex={here ? 0 : -1} aria-pressed={here} aria-label={`${name} to ${other.name}: ${printMinutes(value)}${unfinished ? ', cannot be finished as built' : ''}`}
                      onClick={() => pick({ from, to })} onKeyDown={(event) => walk(event, { from, to })}
                    >
                      {printNumber(Math.round(value * 10) / 10)}{unfinished ? '*' : ''}
                    </button>
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The next cell in the direction of an arrow key, over the empty ones from a lens to itself. */
function cellBeside({ from, to }: Cell, key: string, count: number): Cell | undefined {
  const way = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[key];
  if (way === undefined) return undefined;
  const [down = 0, right = 0] = way;
  for (let far = 1; far <= 2; far += 1) {
    const next = { from: from + far * down, to: to + far * right };
    if (Math.min(next.from, next.to) < 0 || Math.max(next.from, next.to) >= count) return undefined;
    if (next.from !== next.to) return next;
  }
  return undefined;
}

/** Where along its rod the motor meets each lens, drawn as spans with the one place across them. */
function Motor({ motor: { from, atMm, windows, without } }: { readonly motor: MotorWindows }) {
  const system = useSystem();
  const low = Math.min(atMm, ...windows.map(({ lowMm }) => lowMm));
  const high = Math.max(atMm, ...windows.map(({ highMm }) => highMm));
  const share = (mm: number) => (high > low ? (100 * (mm - low)) / (high - low) : 50);
  const served = windows.filter((one) => one.served).length;
  const all = windows.length + without.length;
  const print = (mm: number) => printAmount({ value: Math.round(mm), unit: 'mm' }, system);
  return (
    <>
      <h2>The motor’s one place</h2>
      <p className="says">{print(atMm)} {from} serves {served === all ? 'every lens' : `${served} of ${all} lenses`}.</p>
      <ul className="windows" aria-label="Where the motor meets each lens along its rod">
        {windows.map(({ name, lowMm, highMm, served: here }) => (
          <li key={name}>
            <span>{name}</span>
            <span className="window" aria-hidden="true"><i data-served={here} style={{ left: `${share(lowMm)}%`, width: `${share(highMm) - share(lowMm)}%` }} /><b style={{ left: `${share(atMm)}%` }} /></span>
            <span className="figure">{print(lowMm)} to {print(highMm)}{here ? '' : ', has to move'}</span>
          </li>
        ))}
        {without.map(({ name, says }) => <li key={name}><span>{name}</span><span className="window" aria-hidden="true"><b style={{ left: `${share(atMm)}%` }} /></span><span className="figure">{says}</span></li>)}
      </ul>
    </>
  );
}
