import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { hanging, shownLength, wrap } from './wrap.ts';

const WORDS = fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 40 });

property.prop([WORDS, fc.integer({ min: 14, max: 80 })])('no line is longer than asked, and no word is lost', (words, width) => {
  const text = wrap(words.join(' '), width, '  ');
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
  expect(text.split(/\s+/).filter((word) => word !== '')).toEqual(words);
});

test('a long path is broken behind a slash, and colours take no room', () => {
  expect(wrap('kit/parts/block-1-5/focus/ringTorqueNm is missing', 20)).toBe('kit/parts/block-1-5/\nfocus/ringTorqueNm\nis missing');
  expect(shownLength('\u001B[38;5;166mfails\u001B[0m here')).toBe(10);
  expect(wrap('\u001B[1mone\u001B[0m two', 7)).toBe('\u001B[1mone\u001B[0m two');
});

test('what hangs begins behind its first words', () => expect(hanging('  1. ', 'open the clamp and slide it', 20, '     ')).toBe('  1. open the clamp\n     and slide it'));
