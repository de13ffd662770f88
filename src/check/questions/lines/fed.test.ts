import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { coax, device, hdmi, receiver, screen, sdi, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { videoTrace } from '../../../assembly/lines/videoTrace.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { contrast } from '../sight/contrast.ts';
import { delay } from '../sight/delay.ts';
import { focus } from '../sight/focus.ts';
import { size } from '../sight/size.ts';
import { squeeze } from '../sight/squeeze.ts';
import { carries } from './carries.ts';
import { fed } from './fed.ts';
import { fits } from './fits.ts';
import { live } from './live.ts';

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

/** The body's HDMI feeds a screen; the screen's SDI loop, whose own input is empty, feeds the transmitter. */
const looped = (kit: object = {}) =>
  wiredShoot({
    parts: {
      tx: transmitter(MODES), rx: receiver(MODES), far: screen({ 'sdi-in': sdi('in') }, { name: 'Far screen' }), coax: coax(500), lead,
      screen: screen({ 'sdi-in': sdi('in'), 'sdi-loop': sdi('out', { from: 'sdi-in' }), 'hdmi-in': hdmi('in'), 'hdmi-loop': hdmi('out', { from: 'hdmi-in' }) }), ...kit,
    },
    pieces: { screen: { of: 'screen' }, tx: { of: 'tx', net: 'a', mode: 'fast' }, rx: { of: 'rx', net: 'a' }, far: { of: 'far' } },
    lines: { a: ['body/hdmi', 'screen/hdmi-in', 'lead'], b: ['screen/sdi-loop', 'tx/sdi-in', 'coax'], c: ['rx/sdi-out', 'far/sdi-in', 'coax'] },
  }, (draft) => {
    delete draft.kit.parts.body.ports['sdi-out'];
    draft.kit.parts.body.ports.hdmi = hdmi('out');
    draft.kit.parts.body.body.modes['open-gate'].outputs = { hdmi: { live: true, widthPx: 1920, heightPx: 1080, delayMs: 60 } };
    draft.needs.viewers = { one: { who: 'puller', job: 'pull focus', screen: 'camera/far', distanceMm: 500 } };
  });
const end = { connector: 'HDMI A', sex: 'male' };
const lead = { name: 'HDMI lead', kind: 'cable', count: 5, cable: { carries: 'video', lengthMm: 500, ends: [end, end] } };
const converter = device('Converter', { 'hdmi-in': hdmi('in'), 'sdi-out': sdi('out', { from: 'hdmi-in' }) });

describe('a loop-out passes on its own input and no other (common practice)', () => {
  test('an empty one is named once, at what hangs on it, with how far the picture gets and what stays dark', () => {
    expect(askAll(fed, looped()).filter(({ verdict }) => verdict === 'fails')).toMatchObject([{
      subject: { piece: 'camera/tx' }, says: 'The SDI output of Screen has nothing to pass on to Transmitter: nothing is plugged into its SDI input.',
      steps: [{ says: 'the picture gets as far as Screen: Body → Screen' }, { says: 'behind it stay dark: Far screen' }],
    }]);
  });
  test.each([
    ['the loop of the input in use, where the far end takes it', { tx: { ...transmitter(MODES), ports: { 'sdi-in': sdi('in'), 'hdmi-in': hdmi('in') } } }, 'the HDMI output of Screen into the HDMI input of Transmitter with HDMI lead'],
    ['a converter of the kit, where it does not', { converter }, 'Converter between the HDMI output of Screen and the SDI input of Transmitter'],
  ])('its cure is %s, and lights every screen', (_, kit, says) => {
    const shoot = looped(kit);
    const [mend] = askOne(fed, shoot, 'camera/tx').mends ?? [];
    expect(mend?.says).toBe(says);
    const edited = mend?.edit === undefined ? undefined : applyEdit(shoot, mend.edit);
    expect(edited?.ok === true && askAll(fed, edited.value.shoot).every(({ verdict }) => verdict === 'good')).toBe(true);
  });
  test.each([delay, focus, contrast, size, squeeze])('$id says that no picture reaches the viewer behind it', (asked) => {
    expect(askAll(asked, looped())).toMatchObject([{ verdict: 'unknown', unknown: 'could not judge', says: 'No picture reaches first assistant camera on Far screen.' }]);
  });
});

const ENDS = ['body/sdi-out', 'body/hdmi', 'screen/sdi-in', 'screen/sdi-loop', 'screen/hdmi-in', 'screen/hdmi-loop', 'tx/sdi-in', 'tx/sdi-loop', 'rx/sdi-out', 'far/sdi-in', 'box/hdmi-in', 'box/sdi-out'];
property.prop([fc.uniqueArray(fc.tuple(fc.constantFrom(...ENDS), fc.constantFrom(...ENDS)), { maxLength: 8 }), fc.constantFrom({}, { net: 'a' }, { net: 'b' }), fc.constantFrom({ net: 'a' }, { net: 'a', mode: 'fast' }, {})], { numRuns: 60 })(
  'however it is plugged, each dark piece has a cause that some question fails or asks for, and no cause is told twice by this one',
  (lines, rx, tx) => {
    const shoot = wiredShoot({
      parts: { tx: transmitter(MODES), rx: receiver(MODES), far: screen({ 'sdi-in': sdi('in') }, { name: 'Far screen' }), coax: coax(500), box: converter, screen: screen({ 'sdi-in': sdi('in'), 'sdi-loop': sdi('out', { from: 'sdi-in' }), 'hdmi-in': hdmi('in'), 'hdmi-loop': hdmi('out', { from: 'hdmi-in' }) }) },
      pieces: { screen: { of: 'screen' }, tx: { of: 'tx', ...tx }, rx: { of: 'rx', ...rx }, far: { of: 'far' }, box: { of: 'box' } },
      lines: Object.fromEntries(lines.map(([from, to], at) => [`l${at}`, [from, to, 'coax'] as const])),
    }, (draft) => {
      draft.kit.parts.body.ports.hdmi = hdmi('out');
      draft.kit.parts.body.body.modes['open-gate'].outputs.hdmi = { live: true, widthPx: 1920, heightPx: 1080, delayMs: 60 };
    });
    const dark = [...videoTrace(new Ledger(shoot), 'sticks', 'normal').into.values()].filter(({ picture }) => picture === undefined);
    const told = [fed, live, fits, carries].flatMap((asked) => askAll(asked, shoot)).filter(({ verdict }) => verdict === 'fails' || verdict === 'unknown');
    if (dark.length > 0) expect(told.length).toBeGreaterThan(0);
    const says = askAll(fed, shoot).filter(({ verdict }) => verdict === 'fails').map(({ says: one }) => one);
    expect(new Set(says).size).toBe(says.length);
  },
);
