import type { Verdict } from '../../check/answer.ts';

/** How deep it sits: a scale from 0 to 2 with one line at 1. Beyond the scale the bar ends in an arrow. */
export function LoadLine({ use, verdict, bounds }: { readonly use: number | undefined; readonly verdict: Verdict; readonly bounds?: { readonly low: number; readonly high: number } | undefined }) {
  const share = use === undefined ? undefined : shareOf(use);
  return (
    <span className="load" data-scale={use !== undefined} aria-hidden="true">
      {share !== undefined && <span className={`fill ${verdict} ${use !== undefined && use > 2 ? 'beyond' : ''}`} style={{ width: `${share * 100}%` }} />}
      {bounds !== undefined && <span className="whisker" style={{ left: `${shareOf(bounds.low) * 100}%`, right: `${(1 - shareOf(bounds.high)) * 100}%` }} />}
    </span>
  );
}

/** A use beyond the scale is only told to be beyond it. */
export const printUse = (use: number): string => (use >= 100 ? '>99' : use.toFixed(use >= 10 ? 1 : 2));

const shareOf = (use: number): number => Math.min(use, 2) / 2;
