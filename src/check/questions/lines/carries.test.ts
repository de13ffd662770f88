import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { coax, screen, sdi, wiredShoot } from '../../../../test/wiredShoot.ts';
import { carries } from './carries.ts';

const scene = (video: object, sends: object = {}, frameRateHz = 25) =>
  wiredShoot({ parts: { screen: screen({ 'sdi-in': sdi('in', video) }), coax: coax(500) }, pieces: { screen: { of: 'screen' } }, lines: { a: ['body/sdi-out', 'screen/sdi-in', 'coax'] }, sends, frameRateHz });

test('1080p60 needs 2.97 Gb/s, blanking included (SMPTE ST 424), and HD has 1.485 (ST 292-1)', () => {
  expect(askOne(carries, scene({ level: 'HD' }, {}, 60))).toMatchObject({
    verdict: 'fails', says: '1920 × 1080 at 60 does not pass from Body to Screen: it needs level 3G, and the SDI input of Screen has HD.', needs: { amount: { value: 2.97, unit: 'Gb/s' } }, has: { amount: { value: 1.485 } },
  });
});
test('it passes at 3G', () => expect(askOne(carries, scene({ level: '3G' }, {}, 60)).verdict).toBe('good'));
test('2048 wide into a list of 1920: the cure names the size', () =>
  expect(askOne(carries, scene({ accepts: [{ widthPx: 1920, heightPx: 1080, ratesHz: [25] }] }, { widthPx: 2048 })).mends?.[0]?.says).toBe('Set the output to 1920 × 1080'));
test('one layout taken and none stated: tight, it hangs on a setting', () => expect(askOne(carries, scene({ mappings: ['level A'] }, {}, 60)).verdict).toBe('tight'));
test('what does not leave the camera is not asked on the line', () => expect(askAll(carries, scene({}, { live: false }))).toEqual([]));
