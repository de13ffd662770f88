import { expect, test } from 'vitest';
import { metricCure, metricNumber } from './metricNumber.ts';

test.each<[string, Parameters<typeof metricNumber>[1], number | undefined]>([
  // NIST SP 811, appendix B: foot 304.8 mm, inch 25.4 mm, pound 453.592 37 g, ounce 28.349 52 g, °C = (°F − 32)/1.8.
  [`5'6"`, 'mm', 1676.4], ['7 in', 'mm', 177.8], ['2,5 cm', 'mm', 25], ['50 ft', 'm', 15.24], ['4 lb', 'g', 1814.369], ['2.4 kg', 'g', 2400], ['14 oz', 'g', 396.893], ['14 °F', '°C', -10], ['-40F', '°C', -40],
  ['3 lbf·in', 'N·m', 0.338954], ['3 in-lb', 'N·m', 0.338954], ['2 ft lb', 'N·m', 2.71164], ['31 Ncm', 'N·m', 0.31], ['0.31 N·m', 'N·m', 0.31], ['3 kg', 'N·m', undefined],
  ['25', 'Hz', 25], ['25 Hz', 'Hz', 25], ['14.4V', 'V', 14.4], ['fast', 'Hz', undefined], ['4 lb', 'mm', undefined], ['infinity', 'mm', undefined], ['12 furlongs', 'mm', undefined], ['', 'g', undefined],
])('%s in %s', (text, unit, value) => expect(metricNumber(text, unit)).toBe(value));

test('the cure names the number to write', () => {
  expect(metricCure('distanceMm', `5'6"`)).toBe('Write 1676.4: it stands in mm here.');
  expect(metricCure('tStop', '2.8')).toBe('Write 2.8, without quotation marks.');
  expect(metricCure('massG', 'heavy')).toBeUndefined();
});
