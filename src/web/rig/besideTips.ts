/** Where something is on the canvas, and by which key it is known. */
export interface Tip {
  readonly key: string;
  readonly x: number;
  readonly y: number;
}

/** A label in one of two columns beside the rig, its near edge at `x`, its middle at `y`, and the tip it belongs to. */
export interface Beside {
  readonly key: string;
  readonly side: 'left' | 'right';
  readonly x: number;
  readonly y: number;
  readonly tip: Tip;
}

interface Room {
  readonly width: number;
  readonly height: number;
  /** How far the rig reaches to either side. */
  readonly left: number;
  readonly right: number;
}

const STEP_PX = 20;
const GAP_PX = 20;
/** A number and a force need this much. */
const LEAST_PX = 84;

/** Labels in two columns beside what they belong to: those further left to the left, each as near to its tip's height as the others allow. */
export function besideTips(tips: readonly Tip[], room: Room): Beside[] {
  const inside = tips.map((tip) => ({ ...tip, x: between(tip.x, 0, room.width), y: between(tip.y, 0, room.height) }));
  const across = inside.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = Math.ceil(across.length / 2);
  const [from, to] = [Math.max(LEAST_PX, room.left - GAP_PX), Math.min(room.width - LEAST_PX, room.right + GAP_PX)];
  return [...column(across.slice(0, half), 'left', from, room.height), ...column(across.slice(half), 'right', to, room.height)];
}

function column(tips: readonly Tip[], side: Beside['side'], x: number, height: number): Beside[] {
  const down = tips.toSorted((a, b) => a.y - b.y);
  const highest = (at: number): number => STEP_PX * (at + 0.5);
  const heights: number[] = [];
  for (const [at, { y }] of down.entries()) heights.push(Math.max(y, at === 0 ? highest(0) : (heights[at - 1] ?? 0) + STEP_PX));
  // What was pushed out below pushes back up.
  for (let at = down.length - 1, most = height - STEP_PX / 2; at >= 0; at -= 1, most -= STEP_PX) heights[at] = Math.max(highest(at), Math.min(heights[at] ?? 0, most));
  return down.map((tip, at) => ({ key: tip.key, side, x, y: heights[at] ?? 0, tip }));
}

const between = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
