import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { drop } from '../../calc/power/drop.ts';
import { powerFlow } from './powerFlow.ts';
import type { PowerNode } from './powerTrace.ts';

type Given = { parent: number; ohm: number; watts: number; regulated?: PowerNode['regulated'] };
const tree = (nodes: readonly Given[]): PowerNode[] =>
  nodes.map(({ parent, ohm, watts, regulated }) => ({
    parent, regulated, line: undefined, piece: undefined as never, loop: { ohm, lowOhm: ohm, highOhm: ohm, says: '' }, draw: { typicalW: watts, peakW: watts, figure: undefined, missing: undefined },
  }));

describe('one load at the end of a cable', () => {
  test('14.4 V, 60 W, 0.125689 Ω: 4.33034 A and 13.85572 V (derived in closed form)', () => {
    const { volts, amps } = powerFlow(tree([{ parent: -1, ohm: 0.125689, watts: 60 }]), { sourceV: 14.4, load: 'typicalW' });
    expect([amps[0], volts[0]]).toEqual([expect.closeTo(4.33034, 5) as number, expect.closeTo(13.85572, 5) as number]);
  });
  test('beyond V²/4R nothing feeds it: 412.4 W', () => {
    const at = (watts: number) => powerFlow(tree([{ parent: -1, ohm: 0.125689, watts }]), { sourceV: 14.4, load: 'typicalW' }).collapses;
    expect([at(405), at(413), at(1e6)]).toEqual([false, true, true]);
  });
  test('0 V and 0 ohm are answers', () => {
    expect(powerFlow(tree([{ parent: -1, ohm: 0, watts: 10 }]), { sourceV: 0, load: 'typicalW' }).collapses).toBe(true);
    expect(powerFlow(tree([{ parent: -1, ohm: 0, watts: 0 }]), { sourceV: 12, load: 'typicalW' })).toMatchObject({ sourceA: 0, collapses: false });
  });
});

property.prop([fc.double({ min: 5, max: 30, noNaN: true }), fc.double({ min: 1e-4, max: 0.5, noNaN: true }), fc.double({ min: 0, max: 0.9, noNaN: true })])('agrees with the closed form of a single drop', (sourceV, loopOhm, share) => {
  const loadW = (share * sourceV ** 2) / (4 * loopOhm);
  const { volts, collapses } = powerFlow(tree([{ parent: -1, ohm: loopOhm, watts: loadW }]), { sourceV, load: 'typicalW' });
  expect(collapses).toBe(false);
  expect(volts[0]).toBeCloseTo(drop({ sourceV, loadW, loopOhm }).loadV, 6);
});

const node = fc.record({ up: fc.double({ min: 0, max: 1, noNaN: true }), ohm: fc.double({ min: 0, max: 0.05, noNaN: true }), watts: fc.double({ min: 0, max: 20, noNaN: true }), regulator: fc.boolean() });

property.prop([fc.array(node, { minLength: 1, maxLength: 12 })])('power is kept: the source gives what is drawn, lost in cables and in regulators', (drawn) => {
  const nodes = tree(drawn.map(({ up, ohm, watts, regulator }, at) => ({ parent: Math.min(at, Math.floor(up * (at + 1))) - 1, ohm, watts, ...(regulator ? { regulated: { volts: 8, efficiency: 0.9 } } : {}) })));
  const { volts, amps, sourceA, collapses } = powerFlow(nodes, { sourceV: 14.4, load: 'typicalW' });
  if (collapses) return;
  let given = 0;
  nodes.forEach(({ draw, loop, regulated }, at) => {
    const through = amps[at] as number;
    given += (draw?.typicalW ?? 0) + through ** 2 * loop.ohm + (regulated === undefined ? 0 : through * regulated.volts * (1 / regulated.efficiency - 1));
    expect(volts[at]).toBeGreaterThan(0);
  });
  // The flow is settled to a tenth of a milliwatt; a load of less than that may be passed over.
  expect(Math.abs(sourceA * 14.4 - given)).toBeLessThan(1e-4);
});
