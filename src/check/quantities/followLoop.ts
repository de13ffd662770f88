import { trackingLimit } from '../../calc/focus/trackingLimit.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ShotSubject } from '../subjects.ts';
import { controlDelay } from './controlDelay.ts';
import { pullersView } from './pullersView.ts';
import { ringTurner } from './ringTurner.ts';
import { videoChainDelay } from './videoChainDelay.ts';
import { visibleBlur } from './visibleBlur.ts';

/** What whoever pulls a shot sees of it, and how late. */
export interface PictureSeen {
  readonly pictureDelayMs: number;
  readonly visibleBlurMm: number;
}

/** `undefined` where no picture reaches them, or no screen is entered for them. */
export function pictureSeen(asking: Asking, subject: ShotSubject): PictureSeen | undefined {
  const viewer = pullersView(asking, subject)?.viewer;
  if (viewer === undefined) return undefined;
  const chain = videoChainDelay(asking.ledger, viewer);
  const seen = visibleBlur(asking, viewer);
  return chain === undefined || seen === undefined ? undefined : { pictureDelayMs: chain.value, visibleBlurMm: seen.blurMm };
}

/** Pulled by a picture: throws where nobody is said to watch one; `undefined` where it does not arrive. */
export function needsPicture(asking: Asking, subject: ShotSubject): undefined {
  const puller = pullersView(asking, subject);
  if (puller?.viewer !== undefined) return undefined;
  throw new NotEntered([{ path: 'needs/viewers', says: `the screen that ${puller?.name ?? 'who pulls'} watches in this setup` }]);
}

/** Time constant with which the motor of a shot follows; 0 by hand. */
export function motorLagMs(asking: Asking, subject: ShotSubject): number {
  const turner = ringTurner(asking, subject);
  if (turner === undefined || turner.kind === 'wheel') return 0;
  return turner.piece.part.figure('motor/timeConstantMs')?.value ?? asking.assume(focus.motorLagMs).value;
}

/** The loop of somebody who follows a moving subject by eye. */
export interface FollowLoop extends PictureSeen {
  /** All delays round it with a picture this late. */
  readonly delayMsWith: (pictureDelayMs: number) => number;
  /** How long a steady turn is trailed, 1/ωc. */
  readonly trailSWith: (pictureDelayMs: number) => number;
}

export function followLoop(asking: Asking, subject: ShotSubject): FollowLoop | undefined {
  const seen = pictureSeen(asking, subject) ?? needsPicture(asking, subject);
  if (seen === undefined) return undefined;
  const frameRateHz = asking.ledger.at(`setups/${subject.setup}/frameRateHz`) as number;
  const rest = 500 / frameRateHz + asking.assume(focus.reactionMs).value + controlDelay(asking, subject).value + motorLagMs(asking, subject);
  const phaseMarginDeg = asking.assume(focus.phaseMarginDeg).value;
  const cap = asking.assume(focus.crossover).value;
  const delayMsWith = (pictureDelayMs: number) => pictureDelayMs + rest;
  return { ...seen, delayMsWith, trailSWith: (pictureDelayMs) => 1 / Math.min(cap, trackingLimit({ delayMs: delayMsWith(pictureDelayMs), phaseMarginDeg }).crossoverRadPerS) };
}
