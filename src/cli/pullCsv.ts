import type { PullOutcome } from '../calc/focus/pull/outcome.ts';

/** The bands over time, one row a column of time. */
export function bandsCsv({ bands }: PullOutcome): string {
  const rows = bands.map(({ atS, distanceMm, tenthMm, medianMm, nineTenthsMm, shareSoft }) =>
    [atS, distanceMm === Infinity ? 'infinity' : distanceMm, tenthMm, medianMm, nineTenthsMm, shareSoft].map(shown).join(','),
  );
  return `${['atS,distanceMm,tenthMm,medianMm,nineTenthsMm,shareSoft', ...rows].join('\n')}\n`;
}

/** Every what-if point and every single change, one row each. */
export function whatIfCsv({ whatIf, changes }: PullOutcome): string {
  const points = whatIf.flatMap(({ axis, points: ofAxis }) => ofAxis.map(({ at, shareSharp, shareSharpWorstTenth, longestSoftS, largestBlurMm }) => [axis, at, shareSharp, shareSharpWorstTenth, longestSoftS, largestBlurMm]));
  const single = changes.map(({ change, shareSharp, longestSoftS }) => ['change', change, shareSharp, '', longestSoftS, '']);
  return `${['axis,at,shareSharp,shareSharpWorstTenth,longestSoftS,largestBlurMm', ...[...points, ...single].map((row) => row.map(shown).join(','))].join('\n')}\n`;
}

function shown(value: number | string): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(6)));
  return /[",\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;
}
