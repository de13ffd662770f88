import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import type { Shoot } from '../../../shoot/schema/shoot.ts';
import { counterbalance } from './counterbalance.ts';
import { payload } from './payload.ts';
import { tipping } from './tipping.ts';
import { travel } from './travel.ts';

/** A station: a stand of 3 kg and a screen of 2 kg on its spud, 240 mm tall and 400 wide, the screen's middle 120 mm above the spud. */
function station(change: (draft: Draft) => void = () => undefined): Shoot {
  return riggedShoot((draft) => {
    draft.kit.parts.stand = {
      name: 'Stand', kind: 'stand', massG: 3000, carrier: { kind: 'stand', footRadiusMm: 400, feet: 3, heightMm: 1400 },
      points: { stud: { kind: 'spud', class: '16 mm', sex: 'male', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] } },
    };
    draft.kit.parts.screen = {
      name: 'Big screen', kind: 'monitor', massG: 2000, solids: [{ shape: 'box', sizeMm: [400, 240, 40], atMm: [0, 120, 0] }],
      points: { foot: { kind: 'spud', class: '16 mm', sex: 'female', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } },
    };
    draft.builds.director = { name: 'Director', purpose: 'viewing station', station: true, root: 'stand', pieces: { stand: { of: 'stand' }, screen: { of: 'screen' } }, joints: { foot: { a: 'stand/stud', b: 'screen/foot' } } };
    draft.setups.sticks.stations = ['director'];
    // A tug of 10 N, so that the sums below are plain.
    draft.assumptions = { 'mechanics.tugN': 10, 'mechanics.gustFactor': 2 };
    change(draft);
  });
}

const G = 9.80665;
const ask = (shoot: Shoot) => askOne(tipping, shoot, 'build=director');
const stepAt = (shoot: Shoot, word: string) => ask(shoot).steps?.find(({ says }) => says.includes(word))?.amount?.value;

test('statics by hand: 5 kg inside an edge at R/2, pushed at the top, leaning on a slope', () => {
  // Edge 200 mm; top of the screen 1640 mm; centre (3 × 700 + 2 × 1520)/5 = 1028 mm.
  const shoot = station();
  expect(stepAt(shoot, 'tug')).toBeCloseTo((5 * G * 200) / 1640, 6);
  expect(stepAt(shoot, 'slope')).toBeCloseTo((Math.atan(200 / 1028) * 180) / Math.PI, 6);
  expect(ask(shoot)).toMatchObject({ verdict: 'fails', use: expect.closeTo((10 * 1640) / (5 * G * 200), 6) as number, says: 'Director tips over when somebody walks into a cable.' });
});

test('a cable that leaves the build is pulled where it is plugged in', () => {
  const shoot = station((draft) => {
    draft.kit.parts.screen.ports = { in: { kind: 'video', way: 'in', connector: 'BNC', sex: 'female', at: [0, 40, 0], video: { signal: 'SDI', level: '3G' } } };
    draft.builds.director.lines = { feed: { from: 'camera/body/sdi-out', to: 'screen/in' } };
  });
  expect(ask(shoot).needs?.from).toContain('Big screen');
  expect(stepAt(shoot, 'tug')).toBeCloseTo((5 * G * 200) / 1440, 6);
});

test('wind: ½ρv²·Cd·A on the outline, at its height; none indoors', () => {
  const outdoors = (place: string) => station((draft) => {
    draft.days = { one: { name: 'Windy', windMps: 6 } };
    for (const shot of Object.values<Draft>(draft.shots)) Object.assign(shot, { day: 'one', place });
  });
  // Widest at 0° or 22.5°: 240 × (400 cos + 40 sin). Air 12 m/s.
  const width = Math.max(400, 400 * Math.cos(Math.PI / 8) + 40 * Math.sin(Math.PI / 8));
  const force = 0.5 * 1.225 * 144 * 1.05 * 0.24 * width * 1e-3;
  const step = ask(outdoors('exterior')).steps?.find(({ says }) => says.startsWith('wind'));
  expect(step?.amount?.value).toBeCloseTo((5 * G * 200) / 1520, 6);
  expect(Number(/with ([\d.]+)/.exec(step?.says ?? '')?.[1])).toBeCloseTo(force, 1);
  expect(ask(outdoors('interior')).steps?.some(({ says }) => says.startsWith('wind'))).toBe(false);
});

test('the least sandbag: (m + b)·g·edge/h ≥ tug, in whole kilograms; and the edit brings the use it promises', () => {
  const shoot = station();
  const least = (10 * 1640) / (G * 200) - 5;
  const mend = ask(shoot).mends?.[0];
  expect(mend?.edit?.patches[0]?.value).toBe(Math.ceil(least) * 1000);
  expect(mend?.use).toBeCloseTo((10 * 1640) / ((5 + Math.ceil(least)) * G * 200), 6);
  const after = applyEdit(shoot, mend!.edit!);
  if (!after.ok) throw new Error('The edit has faults.');
  expect(ask(after.value.shoot).use).toBeCloseTo(mend!.use!, 9);
  expect(ask(after.value.shoot).verdict).not.toBe('fails');
});

test('lower, or wider, where the stand’s figures allow it', () => {
  const mends = ask(station((draft) => Object.assign(draft.kit.parts.stand.carrier, { lowestHeightMm: 600, widestFootRadiusMm: 700 }))).mends ?? [];
  // A push of 10 N at h tips 5 kg at 5g·200/h: h ≤ 981 mm, the spud 240 mm below: 741 mm, and to the centimetre 740.
  expect(mends.find(({ says }) => says.startsWith('Set '))).toMatchObject({ says: expect.stringContaining('0.74') as string, use: expect.closeTo((10 * 980) / (5 * G * 200), 6) as number });
  expect(mends.find(({ says }) => says.startsWith('Spread '))?.use).toBeCloseTo((10 * 1640) / (5 * G * 350), 6);
});

test('a weight outside the feet falls by itself, and sandbags hold it', () => {
  const shoot = station((draft) => {
    draft.kit.parts.screen.massG = 20_000;
    draft.kit.parts.screen.centreMm = [0, 120, 500];
  });
  const answer = ask(shoot);
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringContaining('by itself') as string });
  const after = applyEdit(shoot, answer.mends![0]!.edit!);
  if (!after.ok) throw new Error('The edit has faults.');
  expect(ask(after.value.shoot).use).toBeLessThanOrEqual(1);
});

test('without any place it works from the height of the stand, and names what it takes for granted', () => {
  const answer = ask(station((draft) => {
    delete draft.builds.director.joints;
    draft.builds.director.root = 'stand';
  }));
  expect(answer.notes?.some((note) => note.includes('Big screen'))).toBe(true);
  expect(answer.use).toBeCloseTo((10 * 1640) / (5 * G * 200), 6);
});

test('figures of the stand that are not entered are named; two stands, or two feet, cannot be judged', () => {
  const bare = ask(station((draft) => (draft.kit.parts.stand.carrier = { kind: 'stand' })));
  expect(bare).toMatchObject({ verdict: 'unknown', unknown: 'not entered' });
  expect(bare.missing?.map(({ path }) => path)).toEqual(['kit/parts/stand/carrier/footRadiusMm', 'kit/parts/stand/carrier/heightMm']);
  const two = ask(station((draft) => (draft.builds.director.pieces.other = { of: 'stand' })));
  expect(two).toMatchObject({ verdict: 'unknown', unknown: 'could not judge' });
  expect(ask(station((draft) => (draft.kit.parts.stand.carrier.feet = 2)))).toMatchObject({ verdict: 'unknown', says: expect.stringContaining('Stand') as string });
});

test('a mass that is not entered is of no account where it stands however heavy that is, and else leaves it open', () => {
  const unweighed = (feetMm: number) => station((draft) => {
    delete draft.kit.parts.screen.massG;
    draft.kit.parts.stand.massG = 6000;
    draft.kit.parts.stand.carrier.footRadiusMm = feetMm;
  });
  // 6 kg tip at 6g·R/2/1640: with R = 600, at 10.8 N. The screen alone would tip on atan(300/1520) = 11.2°.
  const open = ask(unweighed(600));
  expect(open).toMatchObject({ verdict: 'tight', notes: expect.arrayContaining([expect.stringContaining('However much Big screen may weigh')]) as string[] });
  expect(ask(unweighed(1000)).verdict).toBe('good');
  // 500 mm, 9.3 N tips it by what is entered; a tug of 6 N would not, but a heavy screen tips on atan(250/1520) = 9.3°, less than 10°.
  const unsure = unweighed(500);
  const calmer = { ...unsure, assumptions: { ...unsure.assumptions, 'mechanics.tugN': 6 } } as Shoot;
  expect(ask(calmer)).toMatchObject({ verdict: 'unknown', missing: [{ path: 'kit/parts/screen/massG' }] });
});

test('a camera on legs is asked about once for each setup, a shoulder rig not at all', () => {
  const onLegs = station((draft) => {
    draft.kit.parts.legs = { name: 'Legs', kind: 'legs', massG: 4000, carrier: { kind: 'legs', footRadiusMm: 520, feet: 3, heightMm: 1400 } };
    draft.builds.camera.pieces.legs = { of: 'legs' };
  });
  const [answer, ...more] = askAll(tipping, onLegs).filter(({ key }) => key.includes('build=camera'));
  expect(more).toEqual([]);
  expect(answer?.notes?.some((note) => note.includes('lowest corner'))).toBe(true);
  expect(Number.isFinite(answer?.use)).toBe(true);
  expect(askAll(tipping, riggedShoot())).toEqual([]);
});

test('legs in a build for the shoulder are weight to carry: neither tipping nor the head on them is asked about', () => {
  const carried = (purpose: string) => headShoot((draft) => {
    draft.builds.camera.purpose = purpose;
    draft.kit.parts.legs = { name: 'Legs', kind: 'legs', massG: 4000, carrier: { kind: 'legs', footRadiusMm: 520, feet: 3, heightMm: 1400, payloadG: 20000 } };
    draft.builds.camera.pieces.legs = { of: 'legs' };
  });
  for (const one of [tipping, travel, counterbalance, payload]) {
    expect(askAll(one, carried('tripod')).length).toBeGreaterThan(0);
    expect(askAll(one, carried('shoulder'))).toEqual([]);
  }
});
