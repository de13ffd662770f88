import type { Simulated } from '../../jobs/simulatePull.ts';
import { printNumber } from '../../units/print.ts';
import type { Simulation } from './useSimulation.ts';

const MOST = 5;
const percent = (share: number): string => `${printNumber(share * 100, 3)} %`;

/** Starts and stops the simulation of a shot, and says what came of it. */
export function SimulatedSays({ simulation: { found, share, start, stop } }: { readonly simulation: Simulation }) {
  if (share !== undefined) {
    return (
      <div className="study" role="status">
        <progress value={share} max={1} aria-label="Simulated so far" />
        <button type="button" onClick={stop}>Stop</button>
      </div>
    );
  }
  return (
    <div className="simulated">
      {found === undefined && <button type="button" onClick={start}>Simulate many takes</button>}
      {found?.ok === false && <p className="note">{found.says}</p>}
      {found?.ok === true && <Said found={found.value} />}
    </div>
  );
}

function Said({ found }: { readonly found: Simulated }) {
  const better = found.changes.filter(({ gain, standardError }) => gain > 2 * standardError).slice(0, MOST);
  return (
    <>
      <p>
        Of {found.takes} takes, <b className="figure">{percent(found.shareSharp)}</b> of the frames are sharp, <b className="figure">{percent(found.shareSharpWorstTenth)}</b> in the worst tenth of the takes;{' '}
        <b className="figure">{percent(found.takesSharpThroughout)}</b> of the takes are sharp throughout. {found.says.join('; ')}.
      </p>
      {better.length > 0 && (
        <table className="sum">
          <tbody>{better.map(({ change, gain, shareSharp }) => <tr key={change}><th scope="row">mend</th><td className="figure">{percent(shareSharp)}</td><td>{change}: {printNumber(gain * 100, 2)} points more sharp frames</td></tr>)}</tbody>
        </table>
      )}
      <details className="explains"><summary>What the simulation does not know</summary>{found.limits.map((limit) => <p key={limit}>{limit}</p>)}</details>
    </>
  );
}
