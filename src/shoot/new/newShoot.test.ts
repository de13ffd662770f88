import { fc, test as property } from '@fast-check/vitest';
import { expect, test as plainTest } from 'vitest';
import { checkShoot } from '../read.ts';
import { whyUnfed } from './feeding.ts';
import { FIRST_QUESTIONS, type FirstAnswers } from './firstQuestions.ts';
import { newShoot } from './newShoot.ts';

/** Any way through the questions: each picks one of its choices or the usual answer. */
const answersFrom = (picks: readonly number[]): FirstAnswers => {
  const answers: Record<string, unknown> = {};
  FIRST_QUESTIONS.forEach(({ key, kind, choices, usual }, at) => {
    const among = choices?.(answers);
    if (among !== undefined) answers[key] = among[(picks[at] ?? 0) % among.length];
    else answers[key] = kind === 'text' ? usual(answers) : kind === 'length' ? 1500 : Number(usual(answers));
  });
  return answers as unknown as FirstAnswers;
};

property.prop([fc.array(fc.nat({ max: 60 }), { minLength: FIRST_QUESTIONS.length, maxLength: FIRST_QUESTIONS.length })], { numRuns: 80 })(
  'whatever is answered, the first shoot reads without a fault and counts its cables',
  (picks) => {
    const shoot = newShoot(answersFrom(picks));
    const read = checkShoot(shoot);
    expect(read.ok ? [] : read.faults).toEqual([]);
    const lines = Object.values(shoot.builds).flatMap(({ lines: own = {} }) => Object.values(own));
    for (const [id, { kind, count }] of Object.entries(shoot.kit.parts)) if (kind === 'cable') expect(count).toBe(lines.filter(({ cable }) => cable === id).length);
  },
);

const usual = (given: Partial<FirstAnswers>): FirstAnswers => {
  const answers: Record<string, unknown> = {};
  for (const { key, kind, usual: usually } of FIRST_QUESTIONS) answers[key] = given[key] ?? (kind === 'number' ? Number(usually(answers)) : kind === 'length' ? 1500 : usually(answers));
  return answers as unknown as FirstAnswers;
};

plainTest('what was not asked is written as an estimate', () => {
  const { days, needs, shots } = newShoot(usual({}));
  expect(days?.['first']).toMatchObject({ temperatureC: { basis: 'estimate' }, illuminanceLux: { basis: 'estimate' } });
  expect(needs?.viewers?.['puller']).toMatchObject({ distanceMm: { basis: 'estimate' } });
  expect(shots?.['first']).toMatchObject({ linkDistanceM: { basis: 'estimate' } });
});

plainTest('packs of 26 V feed 14 V devices through taps that are brought down (common practice)', () => {
  const { builds, kit } = newShoot(usual({ pack: 'pack-26v-98' }));
  const plate = kit.parts[builds['camera']?.pieces['plate']?.of ?? ''];
  expect(new Set(Object.values(plate?.ports ?? {}).map(({ power }) => power?.outputV))).toEqual(new Set([14.4]));
});

plainTest('a small pack is clipped on each device it feeds; what it does not feed is said with the reason (common practice: two cells, 6 to 8.4 V)', () => {
  const { builds } = newShoot(usual({ body: 'body-mirrorless-full-frame', pack: 'pack-7v-48', puller: 'none', motor: 'none', operator: 'monitor-5' }));
  expect(Object.keys(builds['camera']?.lines ?? {}).filter((line) => line.endsWith('-power'))).toEqual(['body-plate-body-power', 'monitor-plate-monitor-power']);
  expect(whyUnfed('pack-7v-48', 'body-full-frame')).toBe('the full-frame cinema body takes no less than 11 V, and this pack ends at 6 V.');
  expect(whyUnfed('pack-7v-48', 'body-mirrorless-full-frame')).toBeUndefined();
});

plainTest('one transmitter has one mode for everybody: the fast one with a puller, the detailed one without (common practice)', () => {
  const modeWith = (puller: string) => newShoot(usual({ puller, director: 'monitor-17', link: 'two-mode' })).builds['camera']?.pieces['transmitter']?.mode;
  expect([modeWith('monitor-7'), modeWith('none')]).toEqual(['fast', 'detailed']);
});

plainTest.each<[string, Partial<FirstAnswers>, string[]]>([
  ['a loop-out passes on its own input only, so HDMI goes on by HDMI', { operator: 'monitor-5-bright' }, ['body/hdmi-out monitor/hdmi-in', 'monitor/hdmi-loop transmitter/hdmi-in']],
  ['a monitor without a loop-out wants a splitter before it', { operator: 'monitor-5' }, ['body/hdmi-out splitter-hdmi/hdmi-in', 'splitter-hdmi/hdmi-a monitor/hdmi-in', 'splitter-hdmi/hdmi-b transmitter/hdmi-in']],
  ['far by cable goes by coax, so HDMI is converted first', { operator: 'monitor-5-bright', link: 'cable' }, ['body/hdmi-out monitor/hdmi-in', 'monitor/hdmi-loop converter-hdmi-sdi/hdmi-in']],
])('a camera with nothing but HDMI: %s (common practice)', (_, given, wanted) => {
  const { builds } = newShoot(usual({ body: 'body-mirrorless-full-frame', puller: 'monitor-7-bright', link: 'no-delay', ...given }));
  const lines = Object.entries(builds['camera']?.lines ?? {}).filter(([id]) => id.endsWith('-video')).map(([, { from, to }]) => `${from} ${to}`);
  expect(lines).toEqual(wanted);
});
