import { BASES } from '../forms/bases.ts';
import type { NamedFigure } from '../../jobs/answers.ts';
import { valueAt } from '../../jobs/place.ts';
import { boundsText, readTyped, textOf, unitTyped } from '../marks/amounts.ts';
import { Typed } from '../forms/Typed.tsx';
import { enter } from '../state/actions.ts';
import { usePage } from '../state/page.ts';
import { useSystem } from '../state/preferences.ts';

/** A figure an answer rests on, with where it comes from; changed right here. */
export function FigureRow({ figure, turnsAt }: { readonly figure: NamedFigure; readonly turnsAt: number | undefined }) {
  const system = useSystem();
  const stated = usePage(({ shoot }) => valueAt(shoot, figure.path));
  const entry = typeof stated === 'object' && stated !== null ? stated : undefined;
  const { unit, path, basis } = figure;
  const name = figure.of === '' ? figure.says : `${figure.says}, ${figure.of}`;
  const put = (change: Readonly<Record<string, unknown>>) => {
    const { low: _low, high: _high, within: _within, plusMinus: _plusMinus, ...rest } = (entry ?? {}) as Record<string, unknown>;
    const kept = 'basis' in change && !('value' in change) ? (entry ?? {}) : rest;
    if (figure.plain === true && 'value' in change) return enter(`${name} changed`, path, change['value']);
    return enter(`${name} changed`, path, { value: figure.value, ...(basis === 'assumed' ? { basis: 'estimate' } : {}), ...kept, ...change });
  };
  const typed = (text: string) => {
    const value = readTyped(text, unit, system);
    return value === undefined ? Promise.resolve(false) : put({ value });
  };
  return (
    <div className="figure-row">
      <span className="figure-name">{figure.says}</span>
      <Typed says={name} text={textOf(figure.value, unit, system)} unit={unitTyped(unit, system)} commit={typed} numeric />
      <span className="figure-basis">
        <small>{figure.of === '' ? (figure.source ?? '') : figure.of}</small>
        {figure.plain !== true && (
          <select aria-label={`Basis of ${name}`} value={basis} onChange={({ target }) => void put({ basis: target.value })}>
            {basis === 'assumed' && <option value="assumed">assumed</option>}
            {BASES.map((one) => <option key={one}>{one}</option>)}
          </select>
        )}
        <small className="figure">{boundsText(figure.low, figure.high, unit, system)}</small>
        {turnsAt !== undefined && <small className="turns figure">the answer changes at {textOf(Number(turnsAt.toPrecision(3)), unit, system)}</small>}
        {path.startsWith('assumptions/') && stated !== undefined && <button type="button" className="plain" onClick={() => void enter(`${name} as assumed`, path, undefined)}>as assumed</button>}
      </span>
    </div>
  );
}
