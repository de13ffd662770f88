import type { ReactNode } from 'react';
import type { Verdict } from '../../check/answer.ts';

const SHAPES: Readonly<Record<Verdict, ReactNode>> = {
  good: <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" strokeWidth="1.8" />,
  tight: (
    <>
      <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" strokeWidth="1.8" />
      <path d="M8 3a5 5 0 0 1 0 10z" fill="currentColor" />
    </>
  ),
  fails: <path d="M8 1.5 14.5 8 8 14.5 1.5 8z" fill="currentColor" />,
  unknown: <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" strokeWidth="1.8" strokeDasharray="1.6 2.33" />,
  pending: <path d="M4 8h8" stroke="currentColor" strokeWidth="2" />,
};

/** The mark of a verdict: a shape first, a colour second. Always stands beside its word. */
export function Mark({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg className={`mark ${verdict}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      {SHAPES[verdict]}
    </svg>
  );
}

/** The word of a verdict, in its colour. */
export function Word({ verdict }: { readonly verdict: Verdict }) {
  return <span className={`word ${verdict}`}>{verdict}</span>;
}
