import { describe, expect, test } from 'vitest';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import { writeShoot } from '../../shoot/write.ts';
import { ShootDesk } from '../ShootDesk.ts';
import type { ChangesView } from './changesView.ts';
import type { DayView, LeastWork } from './daysView.ts';
import type { View } from './View.ts';

function value<T>(view: View<T>): T {
  if (!view.ok) throw new Error(view.says);
  return view.value;
}

/** The demo with its first day's shots stated so that the lens goes to and fro, nothing holding them in that order. */
const toAndFro = () => exampleShoot('demo', (draft) => {
  const shots = Object.values<Record<string, unknown>>(draft.shots).filter(({ day }) => day === 'one');
  shots.forEach((shot, at) => {
    delete shot['after'];
    delete shot['block'];
    Object.assign(shot, { setup: 'jetty-sticks', glass: at % 2 === 0 ? 'set-35' : 'set-100' });
  });
});

const deskOn = (shoot = toAndFro()): ShootDesk => {
  const desk = new ShootDesk();
  expect(desk.open(writeShoot(shoot)).ok).toBe(true);
  return desk;
};
const dayOne = (desk: ShootDesk): DayView => value(desk.daysView()).find(({ day }) => day === 'one') as DayView;
const orderOf = (desk: ShootDesk): LeastWork => value(dayOne(desk).order as View<LeastWork>);

describe('the order of a day', () => {
  test('to and fro seven times becomes one change; taken, it is the plan; undone, all is as before', () => {
    const desk = deskOn();
    const before = desk.text();
    const [first, last] = [orderOf(desk), dayOne(desk).shots.at(-1)];
    expect(dayOne(desk).shots).toHaveLength(8);
    const one = value(desk.changesView('jetty-sticks'));
    const [to, fro] = [minutesBetween(one, 'set-35', 'set-100'), minutesBetween(one, 'set-100', 'set-35')];
    // By hand: eight shots alternate, so four changes one way and three back; sorted by lens, one is left.
    expect(first.plannedMin).toBeCloseTo(4 * to + 3 * fro, 6);
    expect(first.leastMin).toBeCloseTo(Math.min(to, fro), 6);
    expect(last?.change).toEqual({ ok: true, value: to });
    if (first.edit === undefined) throw new Error('No edit.');
    expect(desk.edit(first.edit).ok).toBe(true);
    expect(orderOf(desk).plannedMin).toBeCloseTo(first.leastMin, 6);
    expect(orderOf(desk).edit).toBeUndefined();
    expect(desk.undo().ok).toBe(true);
    expect(desk.text()).toBe(before);
  });

  test('constraints that contradict each other are said, and the shots are still listed', () => {
    const desk = deskOn(exampleShoot('demo', (draft) => {
      for (const [id, block, after] of [['1', 'wide', []], ['2', 'close', ['1']], ['3', 'wide', ['2']]] as const) Object.assign(draft.shots[id], { block, after });
    }));
    expect(dayOne(desk).order).toMatchObject({ ok: false });
    expect(dayOne(desk).shots.length).toBeGreaterThan(4);
  });
});

test('a change is the sum of its steps, and a calibration by the model is among them', () => {
  const desk = deskOn();
  const { steps, minutes } = value(desk.changeView('jetty-sticks', 'set-35', 'set-100'));
  expect(steps.reduce((sum, step) => sum + step.minutes, 0)).toBeCloseTo(minutes, 9);
  expect(steps.find(({ kind }) => kind === 'calibrate')?.minutes).toBe(swap.calibrateMin.value);
  expect(value(desk.changesView('jetty-sticks')).minutes.map((row, at) => row[at])).toEqual(Array(5).fill(undefined));
});

function minutesBetween({ glasses, minutes }: ChangesView, from: string, to: string): number {
  const [row, column] = [from, to].map((id) => glasses.findIndex((glass) => glass.id === id));
  return minutes[row ?? -1]?.[column ?? -1] ?? Number.NaN;
}
