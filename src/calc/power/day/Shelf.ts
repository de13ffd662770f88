import { runFrom, sortedCurve, type DischargingPack } from '../discharge.ts';

export interface PackKind extends DischargingPack {
  readonly name: string;
  readonly count: number;
  readonly charge: number;
  readonly chargeHours?: number | undefined;
}

/** One pack, as it stands at some hour. */
export interface PackInUse {
  readonly name: string;
  readonly pack: DischargingPack;
  readonly chargeHours: number | undefined;
  soc: number;
  used: boolean;
}

const FULL = 1 - 1e-9;

/** The packs that are not on, and the charger that fills them: first come, first served. */
export class Shelf {
  readonly packs: readonly PackInUse[];
  turns = 0;
  private readonly bays: number;
  private readonly charging: PackInUse[] = [];
  private readonly waiting: PackInUse[] = [];

  constructor(kinds: readonly PackKind[], bays: number) {
    this.bays = bays;
    this.packs = kinds.flatMap((kind, i) => {
      const pack = { ...kind, openCircuitV: sortedCurve(kind.openCircuitV, `packs/${i}/openCircuitV`) };
      return Array.from({ length: kind.count }, (_, n) => ({
        name: kind.count === 1 ? kind.name : `${kind.name} ${n + 1}`, pack, chargeHours: kind.chargeHours, soc: kind.charge, used: false,
      }));
    });
    for (const one of this.packs) this.putOnCharge(one);
  }

  putOnCharge(one: PackInUse): void {
    if (this.bays === 0 || one.chargeHours === undefined || one.soc >= FULL) return;
    this.waiting.push(one);
    this.fillBays();
  }

  take(one: PackInUse): void {
    for (const list of [this.charging, this.waiting]) {
      const at = list.indexOf(one);
      if (at >= 0) list.splice(at, 1);
    }
    one.used = true;
    this.fillBays();
  }

  /** Hours of charging until the next pack is full. */
  hoursToNextFull(): number {
    return Math.min(Infinity, ...this.charging.map((one) => (1 - one.soc) * (one.chargeHours ?? 0)));
  }

  charge(hours: number): void {
    for (let left = hours; left > 0 && this.charging.length > 0; ) {
      const step = Math.min(left, this.hoursToNextFull());
      for (const one of this.charging) one.soc = Math.min(1, one.soc + step / (one.chargeHours ?? Infinity));
      left -= step;
      // The one that gave the step is full, whatever the last bit of the sum says.
      const full = this.charging.filter((one) => one.soc >= FULL);
      for (const one of full) {
        one.soc = 1;
        this.charging.splice(this.charging.indexOf(one), 1);
      }
      this.fillBays();
    }
  }

  private fillBays(): void {
    while (this.charging.length < this.bays) {
      const next = this.waiting.shift();
      if (next === undefined) return;
      this.charging.push(next);
      this.turns += 1;
    }
  }
}

/** Hours a pack would go on at a load from where it stands. */
export function hoursLeft(one: PackInUse, loadW: number): number {
  return runFrom(one.pack, { soc: one.soc, loadW }).hours;
}
