import { expect, test } from 'vitest';
import { sdi, screen, wiredShoot } from '../../test/wiredShoot.ts';
import { tinyShoot } from '../../test/tinyShoot.ts';
import { bearingOn } from './bearing.ts';
import { Checker } from './Checker.ts';
import { doubtOf } from './doubt.ts';
import type { AnyQuestion } from './question.ts';
import { coverage } from './questions/picture/coverage.ts';
import { fits } from './questions/lines/fits.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';

function bearing(shoot: Shoot, question: AnyQuestion): string[] {
  const key = new Checker(shoot, [question]).answers()[0]?.key ?? '';
  return bearingOn(shoot, question, key, doubtOf(shoot, question, key)).map(({ path }) => path.slice(path.lastIndexOf('/') + 1));
}

test('a diagonal against a circle: the circle bears most, then the longer side, then the shorter; pixels and the cures’ other modes do not (Pythagoras)', () => {
  expect(bearing(tinyShoot((draft) => { draft.kit.parts.body.body.modes['open-gate'].sensorWidthMm = 43; }), coverage)).toEqual(['imageCircleMm', 'sensorWidthMm', 'sensorHeightMm']);
});

test('whether a plug fits rests on no figure', () => {
  const shoot = wiredShoot({ parts: { screen: screen({ 'sdi-in': sdi('in') }) }, pieces: { screen: { of: 'screen' } }, lines: { a: ['body/sdi-out', 'screen/sdi-in'] } });
  expect(bearing(shoot, fits)).toEqual([]);
});
