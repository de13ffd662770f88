import { NoAnswer } from '../../calculator.ts';
import { drain, type DischargingPack } from '../discharge.ts';
import { Shelf, hoursLeft, type PackInUse, type PackKind } from './Shelf.ts';
import { MOMENT_H, lastsThrough, loadThatComes, stretchesToPause, totalHours, type DaySegment, type LoadStretch } from './lookAhead.ts';

export interface DayPlan {
  readonly packs: readonly PackKind[];
  readonly segments: readonly DaySegment[];
  readonly darkPerChangeS: number;
  readonly reserveMin: number;
  readonly chargerBays: number;
}

export interface PackEvent {
  atHours: number;
  kind: 'change' | 'died in a take' | 'no pack left';
  /** The pack taken off, or the one that died. */
  off: string;
  /** What it could still do at the load that comes next. */
  offHoursLeft: number;
  /** The pack put on, and what it can do; empty and 0 where there is none. */
  on: string;
  onHours: number;
  /** How long power that was wanted was away from here to the next event. */
  darkMin: number;
}

export interface DayOfPacks {
  events: PackEvent[];
  changes: number;
  darkMin: number;
  takesLost: number;
  chargerTurns: number;
  packsUsed: number;
  hoursLeftAtWrap: number;
}

/** A pack that lasts no longer than this is not worth putting on. */
const WORTH_PUTTING_ON_H = 1 / 60;
/** Beyond this something is wrong with the figures rather than with the day. */
const MOST_EVENTS = 10_000;

/** Goes through the day once, from event to event; between events everything is in closed form. */
export function simulateDay(plan: DayPlan): DayOfPacks {
  return new Day(plan).run();
}

class Day {
  private readonly plan: DayPlan;
  private readonly shelf: Shelf;
  private readonly events: PackEvent[] = [];
  private readonly takesLost = new Set<number>();
  private on: PackInUse;
  private clock = 0;
  private darkUntil = 0;
  private darkHours = 0;

  constructor(plan: DayPlan) {
    this.plan = plan;
    this.shelf = new Shelf(plan.packs, plan.chargerBays);
    this.on = longestLasting(this.shelf.packs, stretchesToPause(plan.segments, 0, plan.segments[0]?.hours ?? 0));
    this.shelf.take(this.on);
  }

  run(): DayOfPacks {
    this.plan.segments.forEach((segment, i) => {
      const end = this.clock + segment.hours;
      if (!segment.take) this.betweenTakes(i, end);
      // A pack that died in the take before is changed at once; no other is touched.
      else if (this.isDead(segment)) this.change(i, end);
      this.pass(i, end);
    });
    const lastLoadW = this.plan.segments.findLast(({ loadW }) => loadW > 0)?.loadW ?? 0;
    return {
      events: this.events,
      changes: this.events.filter(({ kind }) => kind === 'change').length,
      darkMin: this.darkHours * 60,
      takesLost: this.takesLost.size,
      chargerTurns: this.shelf.turns,
      packsUsed: this.shelf.packs.filter(({ used }) => used).length,
      hoursLeftAtWrap: this.shelf.packs.reduce((sum, one) => sum + hoursLeft(one, lastLoadW), 0),
    };
  }

  /** A pack that dies is changed then; otherwise it is looked at once, as late as a change still ends in time for what comes next. */
  private betweenTakes(i: number, end: number): void {
    const segment = this.segment(i);
    let lookedAt = false;
    while (end - this.clock > MOMENT_H) {
      const stop = lookedAt ? end : Math.max(this.clock, end - this.darkOfChange(segment));
      const dies = Math.max(this.clock, this.darkUntil) + hoursLeft(this.on, segment.loadW);
      if (dies < stop - MOMENT_H) {
        this.pass(i, dies);
        if (!this.change(i, end)) this.pass(i, Math.min(end, this.clock + this.hoursToNextFull(segment)));
        continue;
      }
      this.pass(i, stop);
      if (!lookedAt && !this.reachesNextPause(i, end)) this.change(i, end);
      lookedAt = true;
    }
  }

  /** Whether the pack that is on lasts until packs may be touched again, with the reserve where a take lies between. */
  private reachesNextPause(i: number, end: number): boolean {
    const ahead = stretchesToPause(this.plan.segments, i, end - this.clock);
    const reserveHours = ahead.length > 1 ? this.plan.reserveMin / 60 : 0;
    return lastsThrough(this.on, ahead) >= totalHours(ahead) + reserveHours - MOMENT_H;
  }

  /** Puts on the pack that lasts longest, if it lasts longer than the one that is on; says whether it did. */
  private change(i: number, end: number): boolean {
    const segment = this.segment(i);
    const ahead = stretchesToPause(this.plan.segments, i, end - this.clock);
    const others = this.shelf.packs.filter((one) => one !== this.on);
    const best = others.length === 0 ? this.on : longestLasting(others, ahead);
    const lasts = lastsThrough(best, ahead);
    if (lasts < WORTH_PUTTING_ON_H || lasts <= lastsThrough(this.on, ahead) + MOMENT_H) {
      if (this.isDead(segment) && !this.isToldDark()) this.tell('no pack left', ahead);
      return false;
    }
    this.tell('change', ahead, best);
    this.shelf.take(best);
    this.shelf.putOnCharge(this.on);
    this.on = best;
    this.darkUntil = this.clock + this.darkOfChange(segment);
    return true;
  }

  /** Lets the time go by: the change just made, then power, then darkness where the pack ends. */
  private pass(i: number, until: number): void {
    this.go(i, Math.min(until, this.darkUntil), false);
    const { loadW, take } = this.segment(i);
    const { hours, endSoc } = drain(this.on.pack, { soc: this.on.soc, loadW, hours: Math.max(0, until - this.clock) });
    this.on.soc = endSoc;
    this.go(i, this.clock + hours, true);
    if (until - this.clock <= MOMENT_H) {
      this.go(i, until, true);
      return;
    }
    if (take && hours > MOMENT_H) this.tell('died in a take', [{ hours: 0, loadW }]);
    this.go(i, until, false);
  }

  private go(i: number, to: number, powered: boolean): void {
    const hours = to - this.clock;
    if (hours <= 0) return;
    const { loadW, take, chargerOn } = this.segment(i);
    if (!powered && loadW > 0) {
      this.darkHours += hours;
      const event = this.events.at(-1);
      if (event !== undefined) event.darkMin += hours * 60;
      if (take) this.takesLost.add(i);
    }
    if (chargerOn) this.shelf.charge(hours);
    this.clock = to;
  }

  private tell(kind: PackEvent['kind'], ahead: readonly LoadStretch[], on?: PackInUse): void {
    if (this.events.length >= MOST_EVENTS) {
      throw new NoAnswer('segments', `Found more than ${MOST_EVENTS} changes; the packs are too small for these loads, or the day is too long.`);
    }
    const loadW = loadThatComes(ahead);
    this.events.push({
      atHours: this.clock, kind, off: this.on.name, offHoursLeft: hoursLeft(this.on, loadW),
      on: on?.name ?? '', onHours: on === undefined ? 0 : hoursLeft(on, loadW), darkMin: 0,
    });
  }

  /** Whether the darkness of now began with an event that said there is no pack. */
  private isToldDark(): boolean {
    const last = this.events.at(-1);
    return last?.kind === 'no pack left' && last.atHours + last.darkMin / 60 >= this.clock - MOMENT_H;
  }

  private isDead({ loadW }: DaySegment): boolean {
    return hoursLeft(this.on, loadW) <= MOMENT_H;
  }

  /** Where the load is off, nobody misses it. */
  private darkOfChange({ loadW }: DaySegment): number {
    return loadW > 0 ? this.plan.darkPerChangeS / 3600 : 0;
  }

  private hoursToNextFull({ chargerOn }: DaySegment): number {
    return chargerOn ? this.shelf.hoursToNextFull() : Infinity;
  }

  private segment(i: number): DaySegment {
    const segment = this.plan.segments[i];
    if (segment === undefined) throw new Error(`the day has no segment ${i}`);
    return segment;
  }
}

/** The first of those that last longest. Packs of a kind with the same charge are alike, and looked at once. */
function longestLasting(packs: readonly PackInUse[], ahead: readonly LoadStretch[]): PackInUse {
  let best: PackInUse | undefined;
  let bestHours = -1;
  const seen = new Map<DischargingPack, Set<number>>();
  for (const one of packs) {
    const socs = seen.get(one.pack) ?? new Set();
    if (socs.has(one.soc)) continue;
    seen.set(one.pack, socs.add(one.soc));
    const hours = lastsThrough(one, ahead);
    if (hours > bestHours) [best, bestHours] = [one, hours];
  }
  if (best === undefined) throw new Error('there is no pack');
  return best;
}
