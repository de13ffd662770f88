import { expect, test } from 'vitest';
import { amountsInWords } from './amountsInWords.ts';
import { printAmount } from './print.ts';

const t = '\u2009';

test('amounts in a sentence, ranges and thousands too, are shown in inches and pounds; names and other units stay (factors: NIST SP 811, appendix B.8)', () => {
  expect(amountsInWords(`Slide 15 mm rod 25.4${t}mm forward and tighten it to 1.129848${t}N·m`, 'imperial')).toBe(`Slide 15 mm rod 1${t}in forward and tighten it to 10${t}lbf·in`);
  expect(amountsInWords(`from 10 to 20${t}°C, 12${t}700${t}mm, 2.5${t}kg, −40${t}°C, 9${t}m/s, 14.4${t}V, 3${t}m²`, 'imperial')).toBe(`from 50 to 68${t}°F, 500${t}in, 5.51${t}lb, −40${t}°F, 29.5${t}ft/s, 14.4${t}V, 3${t}m²`);
  expect(amountsInWords(`25.4${t}mm`, 'metric')).toBe(`25.4${t}mm`);
});

test('what is printed in metric reads in the other system as if it had been printed there', () => {
  for (const amount of [{ value: 12_700, unit: 'mm' }, { value: 1500, unit: 'g' }, { value: 0.4, unit: 'N·m' }, { value: 3.35, unit: 'm' }] as const) expect(amountsInWords(printAmount(amount), 'imperial')).toBe(printAmount(amount, 'imperial'));
});
