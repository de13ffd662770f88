import { describe, expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { coax, dc, device, outlet, pack, screen, sdi, wiredShoot } from '../../../../test/wiredShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { fits } from './fits.ts';

const lead = (a: string, b: string) => ({ name: `Lead ${a} to ${b}`, kind: 'cable', cable: { carries: 'video', lengthMm: 500, ends: [{ connector: a, sex: 'male' }, { connector: b, sex: 'male' }] } });
const parts = { screen: screen({ 'sdi-in': sdi('in') }), coax: coax(500), wrong: lead('BNC', 'high-density BNC'), unsexed: { ...lead('BNC', 'BNC'), cable: { ...lead('BNC', 'BNC').cable, ends: [{ connector: 'bnc' }, { connector: 'BNC' }] } } };
const line = (cable?: string) => wiredShoot({ parts, pieces: { screen: { of: 'screen' } }, lines: { a: cable === undefined ? ['body/sdi-out', 'screen/sdi-in'] : ['body/sdi-out', 'screen/sdi-in', cable] } });

describe('a cable at both ends (common practice)', () => {
  test('fits', () => expect(askOne(fits, line('coax'))).toMatchObject({ verdict: 'good' }));
  test('has the wrong small connector; another of the kit is the cure, and applies', () => {
    const shoot = line('wrong');
    const answer = askOne(fits, shoot);
    expect(answer).toMatchObject({ verdict: 'fails', says: 'Lead BNC to high-density BNC does not fit the SDI input of Screen.' });
    const edit = answer.mends?.[0]?.edit;
    const edited = edit === undefined ? undefined : applyEdit(shoot, edit);
    expect(edited?.ok === true && askOne(fits, edited.value.shoot).verdict).toBe('good');
  });
  test('no cable chosen is not entered yet, and no fault', () => expect(askOne(fits, line())).toMatchObject({ verdict: 'unknown', unknown: 'not entered' }));
  test('plugs whose sex is not stated are taken to fit, and it says so', () => expect(askOne(fits, line('unsexed'))).toMatchObject({ verdict: 'good', notes: [expect.stringContaining('not stated') as string, expect.anything() as string] }));
});

test('a tap that is taken: a free one is the cure, else a splitter of the kit', () => {
  const tapLead = { name: 'Tap lead', kind: 'cable', count: 9, cable: { carries: 'power', lengthMm: 300, ends: [{ connector: '2-pin tap', sex: 'male' }, { connector: '2-pin tap', sex: 'male' }] } };
  const splitter = { name: 'Splitter', kind: 'splitter', ports: { in: { ...dc(), sex: 'male' }, a: outlet('in'), b: outlet('in') } };
  const shoot = (taps: number) =>
    wiredShoot({
      parts: { 'tap-lead': tapLead, splitter, pack: pack({}, Object.fromEntries(Array.from({ length: taps }, (_, at) => [`tap-${at + 1}`, outlet('pack')]))), screen: screen({ 'dc-in': dc() }), box: device('Box', { 'dc-in': dc() }) },
      pieces: { pack: { of: 'pack' }, screen: { of: 'screen' }, box: { of: 'box' } },
      lines: { a: ['pack/tap-1', 'screen/dc-in', 'tap-lead'], b: ['pack/tap-1', 'box/dc-in', 'tap-lead'] },
    });
  for (const taps of [1, 2]) {
    const answer = askOne(fits, shoot(taps), 'camera/b');
    expect(answer.verdict).toBe('fails');
    const mend = answer.mends?.[0];
    expect(mend?.says).toContain(taps === 2 ? 'tap 2' : 'Splitter');
    const edited = mend?.edit === undefined ? undefined : applyEdit(shoot(taps), mend.edit);
    expect(edited?.ok === true && askOne(fits, edited.value.shoot, 'camera/b').verdict).toBe('good');
  }
});
