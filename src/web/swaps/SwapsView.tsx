import type { SwapRow, SwapsView as Swaps } from '../../jobs/views/swapsView.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { printAmount } from '../../units/print.ts';
import { NoSetup, SetupBar } from '../marks/SetupBar.tsx';
import { type Looking, useLooking, useView } from '../state/looking.ts';
import { useShoot } from '../state/page.ts';
import { useSystem } from '../state/preferences.ts';
import { goTo } from '../state/route.ts';
import { desk } from '../worker/desk.ts';

/** Swaps: what each lens change moves, and the changes of the day in the order of its shots. */
export function SwapsView() {
  const looking = useLooking();
  return looking === undefined ? <NoSetup /> : <Drawn looking={looking} />;
}

function Drawn({ looking }: { readonly looking: Looking }) {
  const view = useView(() => desk.swapsView(looking.setup), [looking.setup]);
  return (
    <section className="swaps-view" aria-label="Swaps">
      <SetupBar looking={looking} />
      {view !== undefined && !view.ok && <p className="empty">{view.says}</p>}
      {view?.ok === true && <Moves swaps={view.value} glass={looking.glass} setup={looking.setup} />}
      <DayOrder />
    </section>
  );
}

function Moves({ swaps: { glasses, rows }, glass, setup }: { readonly swaps: Swaps; readonly glass: string; readonly setup: string }) {
  const moving = rows.filter(({ moves }) => moves);
  const still = rows.filter(({ moves }) => !moves);
  return (
    <>
      <h2>What each lens wants set</h2>
      <div className="scroll" tabIndex={0} role="region" aria-label="What each lens wants set">
        <table className="swaps">
          <thead><tr><th scope="col">moves</th>{glasses.map(({ id, name }) => <th key={id} scope="col" data-chosen={id === glass}><button type="button" className="plain" onClick={() => goTo({ setup, glass: id })}>{name}</button></th>)}</tr></thead>
          <tbody>
            {moving.map((row) => <Cells key={row.says} row={row} />)}
            {still.length > 0 && <tr><th scope="row" className="still">stays</th>{glasses.map(({ id }) => <td key={id} />)}</tr>}
            {still.map((row) => <Cells key={row.says} row={row} />)}
          </tbody>
        </table>
      </div>
      {moving.length === 0 && <p className="empty">Nothing of this set has to be moved at a swap.</p>}
    </>
  );
}

function Cells({ row: { says, cells, moves } }: { readonly row: SwapRow }) {
  const system = useSystem();
  const said = (cell: SwapRow['cells'][number]): string => (cell === undefined ? '–' : typeof cell === 'string' ? cell : printAmount(cell, system));
  return (
    <tr data-moves={moves}>
      <th scope="row">{says}</th>
      {cells.map((cell, at) => <td key={`${at} of ${cells.length}`} className={typeof cell === 'string' ? 'words' : 'figure'} data-changes={moves && at > 0 && said(cell) !== said(cells[at - 1])}>{said(cell)}</td>)}
    </tr>
  );
}

/** The shots in their order, with what changes from one to the next. */
function DayOrder() {
  const shoot = useShoot();
  const shots = Object.entries(shoot.shots ?? {}).toSorted(([, a], [, b]) => (a.order ?? 0) - (b.order ?? 0));
  if (shots.length === 0) return <p className="empty">No shots yet; the order of the day comes from them.</p>;
  return (
    <>
      <h2>In the order of the shots</h2>
      <div className="scroll" tabIndex={0} role="region" aria-label="In the order of the shots">
        <table className="swaps">
          <thead><tr><th scope="col">shot</th><th scope="col">day</th><th scope="col">setup</th><th scope="col">lens</th><th scope="col">changes before it</th></tr></thead>
          <tbody>
            {shots.map(([id, shot], at) => (
              <tr key={id}>
                <th scope="row"><button type="button" className="plain" onClick={() => goTo({ view: 'pulls', shot: id })}>{shot.name}</button></th>
                <td className="words">{shoot.days?.[shot.day ?? '']?.name ?? ''}</td>
                <td className="words">{shoot.setups[shot.setup]?.name ?? shot.setup}</td>
                <td className="words">{shoot.glasses[shot.glass]?.name ?? shot.glass}</td>
                <td className="words">{changeBefore(shots[at - 1]?.[1], shot)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

type Shot = NonNullable<Shoot['shots']>[string];

function changeBefore(before: Shot | undefined, shot: Shot): string {
  if (before === undefined) return '';
  const changes = [before.day === shot.day ? undefined : 'a new day', before.setup === shot.setup ? undefined : 'another setup', before.glass === shot.glass ? undefined : 'another lens'];
  return changes.filter((one) => one !== undefined).join(', ');
}
