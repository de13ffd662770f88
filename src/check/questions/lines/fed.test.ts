import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { coax, receiver, screen, sdi, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { fed } from './fed.ts';

const MODES = { fast: { name: 'fast', delayMs: 2 }, slow: { name: 'slow', delayMs: 90 } };
const scene = (tx: object, rx: object, txLine = true) =>
  wiredShoot({
    parts: { tx: transmitter(MODES), rx: receiver(MODES), screen: screen({ 'sdi-in': sdi('in') }), coax: coax(500) },
    pieces: { tx: { of: 'tx', ...tx }, rx: { of: 'rx', ...rx }, screen: { of: 'screen' } },
    lines: { ...(txLine ? { a: ['body/sdi-out', 'tx/sdi-in', 'coax'] as const } : {}), b: ['rx/sdi-out', 'screen/sdi-in', 'coax'] },
  });

test('everybody gets the picture', () => expect(askAll(fed, scene({ net: 'a', mode: 'fast' }, { net: 'a' })).map(({ verdict }) => verdict)).toEqual(['good', 'good', 'good']));

test('one cause, one finding: with the transmitter unplugged only the transmitter is named', () => {
  expect(askAll(fed, scene({ net: 'a', mode: 'fast' }, { net: 'a' }, false)).map(({ verdict, says }) => [verdict, says])).toEqual([['fails', 'Nothing is plugged into the SDI input of Transmitter.']]);
});

test('a receiver left in another mode, with its cure', () => {
  const answer = askOne(fed, scene({ net: 'a', mode: 'fast' }, { net: 'a', mode: 'slow' }), 'camera/rx');
  expect(answer).toMatchObject({ verdict: 'fails', says: 'Receiver is set to another mode than Transmitter.', mends: [{ says: 'set Receiver to fast' }] });
});

test('a screen that no picture can be plugged into is told, not passed over', () => {
  const blind = tinyShoot((draft) => {
    delete draft.kit.parts['monitor-5'].ports['sdi-in'];
    delete draft.builds.camera.lines.picture;
  });
  expect(askAll(fed, blind).map(({ verdict, says }) => [verdict, says])).toContainEqual(['fails', '5-inch monitor has no input for a picture.']);
});
