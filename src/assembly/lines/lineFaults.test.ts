import { describe, expect, test } from 'vitest';
import { coax, dc, device, hdmi, outlet, screen, sdi, wiredShoot } from '../../../test/wiredShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { lineFaults } from './lineFaults.ts';
import { wiring } from './wiring.ts';

const faultsOf = (shoot: Parameters<typeof kinds>[0], line: string): string[] => kinds(shoot, line);

function kinds(shoot: ConstructorParameters<typeof Ledger>[0], line: string): string[] {
  const wired = wiring(new Ledger(shoot), 'sticks', 'normal');
  const found = wired.byKey.get(`camera/${line}`);
  if (found === undefined) throw new Error(`no line ${line}`);
  return lineFaults(wired, found).map((fault) => (fault.kind === 'plug' ? `plug ${fault.mating.fits}` : fault.kind));
}

const parts = {
  screen: screen({ 'sdi-in': sdi('in'), 'hdmi-in': hdmi('in'), 'dc-in': dc() }), other: screen({ 'sdi-in': sdi('in') }), box: device('Box', { in: sdi('in'), out: sdi('out', { from: 'in' }) }),
  plate: { name: 'Plate', kind: 'battery plate', batteryPlate: { mount: 'wedge', packs: 1 }, ports: { tap: outlet('pack') } },
  coax: coax(500), 'hdmi-lead': { name: 'HDMI lead', kind: 'cable', cable: { carries: 'video', lengthMm: 500, ends: [{ connector: 'HDMI A', sex: 'male' }, { connector: 'HDMI D', sex: 'male' }] } },
};
const pieces = { screen: { of: 'screen' }, other: { of: 'other' }, box: { of: 'box' }, plate: { of: 'plate' } };

describe('a line as drawn (facts of plugs and sockets: common practice)', () => {
  const shoot = wiredShoot({
    parts, pieces,
    lines: {
      good: ['body/sdi-out', 'screen/sdi-in', 'coax'], taken: ['body/sdi-out', 'other/sdi-in', 'coax'], signals: ['box/out', 'screen/hdmi-in', 'coax'], inputs: ['screen/sdi-in', 'box/in', 'coax'],
      kinds: ['plate/tap', 'box/in', 'coax'], itself: ['box/out', 'box/out', 'coax'],
    },
  });
  test.each([
    ['good', []], ['taken', ['socket taken']], ['signals', ['different signals']], ['inputs', ['two inputs']], ['kinds', ['different kinds']], ['itself', ['into itself']],
  ])('%s: %j', (line, expected) => expect(faultsOf(shoot, line)).toEqual(expected));

  test('a line drawn backwards is turned, and its cable may be turned too', () => {
    const wired = wiring(new Ledger(wiredShoot({ parts, pieces, lines: { back: ['screen/sdi-in', 'body/sdi-out', 'coax'] } })), 'sticks', 'normal');
    expect(wired.byKey.get('camera/back')).toMatchObject({ turned: true, from: { key: 'camera/body/sdi-out' }, to: { key: 'camera/screen/sdi-in' } });
  });

  test('the last cable has the wrong small connector', () => {
    const small = wiredShoot({ parts: { ...parts, box: device('Box', { out: hdmi('out') }) }, pieces, lines: { hdmi: ['box/out', 'screen/hdmi-in', 'hdmi-lead'], none: ['body/sdi-out', 'screen/sdi-in'] } });
    expect(faultsOf(small, 'hdmi')).toEqual(['plug no']);
    expect(faultsOf(small, 'none')).toEqual(['no cable']);
  });
});

test('one cable serves ports that share a plug', () => {
  const motor = { name: 'Motor', kind: 'motor', ports: { bus: { kind: 'control', way: 'in', connector: '7-pin round', shares: 'dc' }, dc: { kind: 'power', way: 'in', connector: '7-pin round', power: { lowV: 10, highV: 20 } } } };
  const box = { name: 'Box', kind: 'controller', ports: { motor: { kind: 'control', way: 'out', connector: '7-pin round', shares: 'feed' }, feed: { kind: 'power', way: 'out', connector: '7-pin round', power: {} } } };
  const wired = wiring(new Ledger(wiredShoot({ parts: { motor, box }, pieces: { motor: { of: 'motor' }, box: { of: 'box' } }, lines: { bus: ['box/motor', 'motor/bus'] } })), 'sticks', 'normal');
  expect(wired.lines.map(({ key, from, to }) => [key, from.id, to.id])).toEqual([['camera/bus', 'motor', 'bus'], ['camera/bus+', 'feed', 'dc']]);
});

test('a line to a build that stays at home is not there; with the station live it is', () => {
  const station = (live: boolean) =>
    wiredShoot({ parts, lines: { long: ['body/sdi-out', 'village/screen/sdi-in', 'coax'] } }, (draft) => {
      draft.builds.village = { name: 'Village', purpose: 'viewing station', station: true, pieces: { screen: { of: 'screen' } } };
      if (live) draft.setups.sticks.stations = ['village'];
    });
  expect(wiring(new Ledger(station(false)), 'sticks', 'normal').lines).toHaveLength(0);
  expect(wiring(new Ledger(station(true)), 'sticks', 'normal').lines).toHaveLength(1);
});
