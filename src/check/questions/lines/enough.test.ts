import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { coax, screen, sdi, wiredShoot } from '../../../../test/wiredShoot.ts';
import { enough } from './enough.ts';

test('two lines of a cable that is there once', () => {
  const shoot = (count: number) =>
    wiredShoot({ parts: { screen: screen({ 'sdi-in': sdi('in'), 'sdi-loop': sdi('out', { from: 'sdi-in' }) }), coax: { ...coax(500), count } }, pieces: { a: { of: 'screen' }, b: { of: 'screen' } }, lines: { a: ['body/sdi-out', 'a/sdi-in', 'coax'], b: ['a/sdi-loop', 'b/sdi-in', 'coax'] } });
  expect([askOne(enough, shoot(1)).verdict, askOne(enough, shoot(2)).verdict]).toEqual(['fails', 'good']);
});
