import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';

/** A kind of pack in the kit, with the mounts it goes on. */
export interface KitPack {
  readonly part: PartView;
  readonly mounts: readonly string[];
}

/** The packs of the kit. Where a pack states no mount, those of the plates it is put on in any build count. */
export function kitPacks(ledger: Ledger): readonly KitPack[] {
  return ledger.cell('kit packs', () => {
    const worn = platesByPack(ledger);
    return ledger
      .keys('kit/parts')
      .filter((id) => ledger.at(`kit/parts/${id}/pack`) !== undefined)
      .map((id) => {
        const part = new PartView(ledger, id);
        const own = part.read('pack/mount') as string | undefined;
        return { part, mounts: own === undefined ? [...(worn.get(id) ?? [])] : [own] };
      });
  });
}

function platesByPack(ledger: Ledger): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const build of ledger.keys('builds')) {
    for (const piece of ledger.keys(`builds/${build}/pieces`)) {
      const path = `builds/${build}/pieces/${piece}`;
      const packs = (ledger.at(`${path}/packs`) ?? []) as readonly string[];
      if (packs.length === 0) continue;
      const mount = new PartView(ledger, ledger.at(`${path}/of`) as string).read('batteryPlate/mount') as string | undefined;
      if (mount === undefined) continue;
      for (const pack of packs) {
        const id = (ledger.at(`kit/copies/${pack}/of`) as string | undefined) ?? pack;
        found.set(id, (found.get(id) ?? new Set()).add(mount));
      }
    }
  }
  return found;
}

/** Bays of the kit's chargers for a pack, and the hours one takes. */
export function chargersFor(ledger: Ledger, { part, mounts }: KitPack): { bays: number; hours: number | undefined } {
  let bays = 0;
  let hours = part.figure('pack/chargeHours')?.value;
  for (const id of ledger.keys('kit/parts')) {
    if (ledger.at(`kit/parts/${id}/charger`) === undefined) continue;
    const charger = new PartView(ledger, id);
    const { bays: each, takes } = charger.facet('charger') ?? { bays: 0, takes: [] };
    if (!takes.some((mount) => mounts.includes(mount))) continue;
    bays += each * ((charger.read('count') as number | undefined) ?? 1);
    hours ??= charger.figure('charger/hoursEach')?.value;
  }
  return { bays, hours };
}
