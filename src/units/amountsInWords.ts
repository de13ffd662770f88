import { printDistance } from './length.ts';
import { IMPERIAL, type System, printNumber } from './print.ts';
import { THIN_SPACE } from './thinSpace.ts';
import type { Unit } from './Unit.ts';

const NUMBER = `−?(?:\\d{1,3}(?:${THIN_SPACE}\\d{3})+|\\d+)(?:\\.\\d+)?`;
/** An amount as `printAmount` writes it, with a thin space before its unit; the lower end of a range may stand before it. Names of things have plain spaces. */
const AMOUNT = new RegExp(`(?:(${NUMBER}) to )?(${NUMBER})${THIN_SPACE}(N·m/rad|N·mm|N·m|N/mm|m/s|mm|m|kg|g|N|°C)(?![\\p{L}\\d·/²³⁴])`, 'gu');

/** Sentences are made in the metric system; this shows their amounts in another. Other numbers, and amounts in names, stay as they are. */
export function amountsInWords(text: string, system: System): string {
  if (system === 'metric') return text;
  return text.replaceAll(AMOUNT, (_whole, low: string | undefined, value: string, unit: Unit | 'kg') => {
    if (unit === 'm') return `${low === undefined ? '' : `${printDistance(numberIn(low) * 1000, system)} to `}${printDistance(numberIn(value) * 1000, system)}`;
    const { unit: shown, factor, offset = 0 } = IMPERIAL[unit === 'kg' ? 'g' : unit] ?? { unit, factor: 1 };
    const print = (number: string) => printNumber(numberIn(number) * (unit === 'kg' ? 1000 : 1) * factor + offset);
    return `${low === undefined ? '' : `${print(low)} to `}${print(value)}${THIN_SPACE}${shown}`;
  });
}

const numberIn = (text: string): number => Number(text.replace('−', '-').replaceAll(THIN_SPACE, ''));
