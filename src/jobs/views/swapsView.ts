import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import { Asking } from '../../check/Asking.ts';
import { wholeMass } from '../../check/quantities/wholeMass.ts';
import { glassesOf } from '../../check/subjects.ts';
import { lensSettings } from '../../papers/build/lensSettings.ts';
import { movedPiece, settingPlace } from '../../papers/build/settingPlace.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Amount, System } from '../../units/print.ts';

/** One thing that may differ from lens to lens. A cell is absent where this lens does not have it. */
export interface SwapRow {
  readonly says: string;
  readonly cells: readonly (Amount | string | undefined)[];
  /** Differs between lenses: it has to be done at the swap. */
  readonly moves: boolean;
}

export interface SwapsView {
  readonly glasses: readonly { readonly id: string; readonly name: string }[];
  readonly rows: readonly SwapRow[];
}

/** What is on the camera with each lens of a set, and what is set where: what a swap changes. */
export function swapsView(ledger: Ledger, setup: string, system: System): SwapsView {
  const ids = glassesOf(ledger, setup);
  const glasses = ids.map((id) => ({ id, name: (ledger.at(`glasses/${id}/name`) as string | undefined) ?? id }));
  return { glasses, rows: [...settingRows(ledger, setup, ids, system), onRow(ledger, setup, ids), ...weightRows(ledger, setup, ids)].map((row) => ({ ...row, moves: differs(row.cells) })) };
}

type Row = Omit<SwapRow, 'moves'>;

const WORDS: Readonly<Record<string, string>> = { turnDeg: 'turn', tiltDeg: 'tilt', slideMm: 'slide', sideMm: 'to the side', heightMm: 'height' };

/** What is set for each lens, by joint: each from a place that one sees, as on the sheets. */
function settingRows(ledger: Ledger, setup: string, ids: readonly string[], system: System): Row[] {
  const found = new Map<string, Map<string, string>>();
  for (const glass of ids) {
    const placement = placeSetup(ledger, setup, glass);
    for (const setting of lensSettings(ledger, setup, glass)) {
      const { a, b } = setting.joint;
      const moved = movedPiece(placement, setting);
      const on = moved === a.piece.name ? b.piece : a.piece;
      // What a lens rests on is one row for all of them.
      const says = `${moved}${on.fromGlass ? '' : ` on ${on.name}`}: ${WORDS[setting.key] ?? setting.key}`;
      const row = found.get(says) ?? new Map<string, string>();
      found.set(says, row);
      row.set(glass, settingPlace({ ledger, setup, glass, system }, setting));
    }
  }
  return [...found].map(([says, row]) => ({ says, cells: ids.map((glass) => row.get(glass)) }));
}

function onRow(ledger: Ledger, setup: string, ids: readonly string[]): Row {
  return { says: 'comes with the lens', cells: ids.map((glass) => [...setupPieces(ledger, setup, glass).values()].filter(({ fromGlass }) => fromGlass).map(({ name }) => name).join(', ')) };
}

function weightRows(ledger: Ledger, setup: string, ids: readonly string[]): Row[] {
  const camera = ledger.at(`setups/${setup}/camera`) as string;
  const asking = new Asking(ledger);
  const whole = ids.map((glass) => wholeMass(asking, { setup, glass }, camera, () => true));
  return [
    { says: 'weight of the camera', cells: whole.map((one) => (one === undefined ? undefined : { value: one.massG, unit: 'g' })) },
    { says: 'centre of mass ahead of the sensor', cells: whole.map((one) => (one === undefined ? undefined : { value: Math.round(one.centreMm[2]), unit: 'mm' })) },
  ];
}

function differs(cells: SwapRow['cells']): boolean {
  const said = cells.map((cell) => (typeof cell === 'object' ? cell.value : cell));
  return new Set(said).size > 1;
}
