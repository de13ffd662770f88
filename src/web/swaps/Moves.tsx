import type { SwapRow, SwapsView } from '../../jobs/views/swapsView.ts';
import { printAmount } from '../../units/print.ts';
import { useSystem } from '../state/preferences.ts';
import { goTo } from '../state/route.ts';

/** What is set where with each lens of the set: above, what differs. */
export function Moves({ swaps: { glasses, rows }, glass, setup }: { readonly swaps: SwapsView; readonly glass: string; readonly setup: string }) {
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
  const inWords = cells.some((cell) => typeof cell === 'string');
  return (
    <tr data-moves={moves}>
      <th scope="row">{says}</th>
      {cells.map((cell, at) => <td key={`${at} of ${cells.length}`} className={inWords ? 'words' : 'figure'} data-changes={moves && at > 0 && said(cell) !== said(cells[at - 1])}>{said(cell)}</td>)}
    </tr>
  );
}
