import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PURPOSE, normal, normalQuantile, threefry } from './counterRandom.ts';
import { naturalLog, sinTurns } from './sameOnEveryEngine.ts';

test('Threefry 2×32-20 gives the known answers of its authors', () => {
  // Random123, tests/kat_vectors (Salmon et al. 2011): counter, key, answer. Read in three independent copies.
  const known: [number[], number[], number[]][] = [
    [[0, 0], [0, 0], [0x6b200159, 0x99ba4efe]],
    [[0xffffffff, 0xffffffff], [0xffffffff, 0xffffffff], [0x1cb996fc, 0xbb002be7]],
    [[0x243f6a88, 0x85a308d3], [0x13198a2e, 0x03707344], [0xc4923a9c, 0x483df7a0]],
  ];
  for (const [counter, key, answer] of known) {
    const out = new Uint32Array(2);
    threefry(key[0]!, key[1]!, counter[0]!, counter[1]!, out);
    expect([...out]).toEqual(answer);
  }
});

test('the normal quantile meets the check values of AS 241', () => {
  // Wichura 1988 prints −0.6744897501960817, −3.090232306167814, −9.262340089798408 for 0.25, 0.001, 1e-20 (from memory);
  // Python's statistics.NormalDist agrees but for the last digit, and gives the other two.
  for (const [p, value] of [[0.25, -0.6744897501960817], [0.001, -3.090232306167814], [1e-20, -9.262340089798407], [0.9, 1.2815515655446008],
    [0.975, 1.9599639845400536]] as const) {
    expect(Math.abs(normalQuantile(p) / value - 1)).toBeLessThan(1e-15);
  }
});

test('the draws have the moments of a normal distribution, and no purpose repeats another', () => {
  const draws = Float64Array.from({ length: 40_000 }, (_, i) => normal(7, i % 200, PURPOSE.remnant, Math.floor(i / 200)));
  const moment = (power: number) => draws.reduce((sum, x) => sum + x ** power, 0) / draws.length;
  // Bounds: four standard errors of 40 000 draws.
  expect(Math.abs(moment(1))).toBeLessThan(0.02);
  expect(Math.abs(moment(2) - 1)).toBeLessThan(0.0283);
  expect(Math.abs(moment(4) - 3)).toBeLessThan(0.196);
  const other = draws.map((_, i) => normal(7, i % 200, PURPOSE.guess, Math.floor(i / 200)));
  expect(Math.abs(draws.reduce((sum, x, i) => sum + x * other[i]!, 0) / draws.length)).toBeLessThan(0.02);
});

test('logarithm and sine agree with those of the engine', () => {
  let worst = 0;
  for (let i = 1; i < 5000; i++) {
    const x = i / 5000;
    worst = Math.max(worst, Math.abs(naturalLog(x * x) - Math.log(x * x)) / Math.max(1, -Math.log(x * x)));
    worst = Math.max(worst, Math.abs(sinTurns(x * 3 - 1) - Math.sin(2 * Math.PI * (x * 3 - 1))));
  }
  expect(worst).toBeLessThan(2e-15);
  expect(naturalLog(1e-300)).toBeCloseTo(-690.7755278982137, 12);
});

test('the engine computes with nothing that engines round differently', () => {
  const folder = new URL('.', import.meta.url);
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'));
  expect(files.length).toBeGreaterThan(10);
  const exact = new Set(['abs', 'min', 'max', 'floor', 'ceil', 'round', 'sqrt', 'PI', 'LN2', 'SQRT2', 'SQRT1_2']);
  for (const name of files) {
    const code = readFileSync(new URL(name, folder), 'utf8').replaceAll(/\/\*[^]*?\*\/|\/\/.*/g, '');
    for (const [, used] of code.matchAll(/Math\.(\w+)/g)) expect(exact.has(used!), `${name}: Math.${used}`).toBe(true);
    expect(code, name).not.toMatch(/\*\*|Date\.|performance\./);
  }
});
