import { type RefObject, useMemo, useRef, useState } from 'react';
import type { SwingView } from '../../jobs/views/swingView.ts';
import { type System, printAmount, printNumber } from '../../units/print.ts';
import { useSystem } from '../state/preferences.ts';
import type { Shown } from './RigScene.ts';
import { PERIOD_MS } from './swingPeriod.ts';
import { useReducedMotion } from './useReducedMotion.ts';

export interface SwingShow {
  /** Which of the swings found. */
  readonly at: number;
  readonly choose: (at: number) => void;
  readonly plays: boolean;
  readonly setPlays: (plays: boolean) => void;
  /** Where it is held still, −1 to 1. */
  readonly held: number;
  readonly setHeld: (share: number) => void;
  /** Nothing plays for whoever asked for less motion. */
  readonly mayPlay: boolean;
  /** Where it is while it plays. */
  readonly swungTo: RefObject<number>;
  readonly swing: Shown['swing'];
  readonly caption: string | undefined;
}

/** The furthest point goes this share of the rig's size to either side. */
const LARGEST = 0.04;

/** What of the swings found is on the drawing, and how. */
export function useSwingShow(view: SwingView | undefined): SwingShow {
  const system = useSystem();
  const mayPlay = !useReducedMotion();
  const [chosen, choose] = useState(0);
  const [wantsPlay, setWantsPlay] = useState(true);
  const [held, setHeld] = useState(1);
  const swungTo = useRef(1);
  const at = view?.swings[chosen] === undefined ? 0 : chosen;
  const plays = mayPlay && wantsPlay;
  const swing = useMemo(() => {
    const one = view?.swings[at];
    // Swings are stated with their furthest point going 1 mm.
    return view === undefined || one === undefined ? undefined : { swing: one, magnified: LARGEST * view.sizeMm };
  }, [view, at]);
  const setPlays = (next: boolean): void => {
    if (!next) setHeld(Math.round(swungTo.current * 20) / 20);
    setWantsPlay(next);
  };
  return { at, choose, plays, setPlays, held, setHeld, mayPlay, swungTo, swing, caption: swing && captionOf(swing, plays, system) };
}

function captionOf({ swing: { frequencyHz }, magnified }: NonNullable<Shown['swing']>, plays: boolean, system: System): string {
  const slowed = (frequencyHz * PERIOD_MS) / 1000;
  const hertz = printAmount({ value: Number(frequencyHz.toPrecision(2)), unit: 'Hz' });
  return `swings at ${hertz}; a swing of ${printAmount({ value: 1, unit: 'mm' }, system)} shown ${printNumber(magnified, 2)}× magnified${plays ? ` and ${printNumber(slowed, 2)}× slowed` : ', held still'}`;
}
