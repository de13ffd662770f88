import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { permitted } from './permitted.ts';

const scene = (region: 'EU' | 'US', place: 'interior' | 'exterior', channel: number | undefined, eirpDbm = 20, channels = [36, 100, 165]) =>
  wiredShoot({ parts: { tx: transmitter({ fast: { name: 'fast', bandwidthMHz: 20 } }, { channels, eirpDbm }) }, pieces: { tx: { of: 'tx', net: 'a', ...(channel === undefined ? {} : { channel }) } } }, (draft) => {
    draft.needs.region = region;
    draft.shots.portrait.place = place;
  });

test.each([
  ['36 outdoors in the EU is for indoors (EN 301 893)', 'EU', 'exterior', 36, 'fails'],
  ['36 indoors in the EU', 'EU', 'interior', 36, 'good'],
  ['36 outdoors in the US (47 CFR 15.407)', 'US', 'exterior', 36, 'good'],
  ['100 outdoors in the EU', 'EU', 'exterior', 100, 'good'],
] as const)('%s', (_, region, place, channel, verdict) => expect(askOne(permitted, scene(region, place, channel)).verdict).toBe(verdict));

test('36 in the EU where the shot does not say whether it is indoors: to be minded', () => {
  const shoot = wiredShoot({ parts: { tx: transmitter({ fast: { name: 'fast', bandwidthMHz: 20 } }, { channels: [36], eirpDbm: 20 }) }, pieces: { tx: { of: 'tx', net: 'a', channel: 36 } } }, (draft) => {
    draft.needs.region = 'EU';
    delete draft.shots.portrait.place;
  });
  expect(askOne(permitted, shoot)).toMatchObject({ verdict: 'tight', says: expect.stringContaining('indoors only') as string });
});

test('the cure is a channel that may be used, with what it costs', () => expect(askOne(permitted, scene('EU', 'exterior', 36)).mends?.[0]).toMatchObject({ says: 'channel 100', costs: '60 s of listening for radar before it may send' }));
test('29 dBm is over the 27 without power control on 100 (EN 301 893)', () => expect(askOne(permitted, scene('EU', 'interior', 100, 29)).verdict).toBe('fails'));
test('no channel set: those it has are listed', () => expect(askOne(permitted, scene('EU', 'exterior', undefined)).steps?.map(({ says }) => says)).toEqual(['channel 36: indoors only', 'channel 100: may be used', expect.stringMatching(/^channel 165: 20/) as string]));
