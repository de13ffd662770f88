import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface AdapterCorner {
  rearOffsetMm: number;
  rearShare: number;
  frontOffsetMm: number;
  frontShare: number;
  focuserOffsetMm: number;
  focuserShare: number;
  share: number;
}

/** Block and focuser together: what one glass cuts, the next may cut again, so the shares do not simply add. For a block alone: `blockVignette`. */
export const adapterCorner = calculator(
  {
    name: 'optics.adapterCorner',
    sentence: 'Share of the light for a frame corner that passes all of an afocal anamorphic block and a focuser in front of it.',
    inputs: inputs({
      squeeze: positive('ratio', 'squeeze of the block'),
      elementSpacingMm: nonNegative('mm', 'from the front element of the block to its rear element'),
      rearToPupilMm: nonNegative('mm', 'from the rear element of the block to the entrance pupil of the taking lens'),
      focalLengthMm: positive('mm', 'focal length of the taking lens, at infinity'),
      fNumber: positive('ratio', 'f-number of the taking lens'),
      sensorWidthMm: positive('mm', 'width of the frame in use on the sensor'),
      sensorHeightMm: positive('mm', 'height of the frame in use on the sensor'),
      rearClearMm: positive('mm', 'clear diameter of the rear glass of the block'),
      frontClearMm: positive('mm', 'clear diameter of the front glass of the block'),
      focuserAheadMm: nonNegative('mm', 'from the front element of the block forward to the rim of the focuser; 0 where there is none'),
      focuserClearMm: positive('mm', 'clear diameter of the focuser; that of the front glass where there is none'),
    }),
    results: {
      rearOffsetMm: 'mm, how far off the axis the beam crosses the rear glass',
      rearShare: 'share of it that this glass alone lets by',
      frontOffsetMm: 'mm, how far off the axis it crosses the front glass',
      frontShare: 'share of it that this glass alone lets by',
      focuserOffsetMm: 'mm, how far off the axis it crosses the rim of the focuser',
      focuserShare: 'share of it that the focuser alone lets by',
      share: 'share of it that passes all of them (to about 3e-5)',
    },
    formula:
      'a ray at (x, y) in the pupil crosses the rear at (x + L·a, y + L·b), the front at (x/s + (t + L/s)·a, y + (t + L)·b), ' +
      'the focuser e farther at plus (e·s·a, e·b);  a = w/2f, b = h/2f;  share: area of the pupil whose rays lie inside all circles, in level strips',
    source: 'Derived from thin elements, as optics.anamorphPupil; focuser at infinity',
    examples: [
      {
        given: {
          squeeze: 1, elementSpacingMm: 0, rearToPupilMm: 10, focalLengthMm: 10, fNumber: 5, sensorWidthMm: 1.2, sensorHeightMm: 1.6,
          rearClearMm: 2, frontClearMm: 4, focuserAheadMm: 0, focuserClearMm: 4,
        },
        gives: { rearOffsetMm: '1.000', rearShare: '0.3910', share: '0.3910' },
        source: 'MathWorld: unit circles one apart share 1.228370, over π',
      },
    ],
  },
  (given): AdapterCorner => {
    const [rear, front, focuser] = [rearOf(given), frontOf(given), focuserOf(given)];
    const { alone, together } = sharesThrough([rear, front, focuser]);
    return {
      rearOffsetMm: Math.hypot(rear.xMm, rear.yMm),
      rearShare: alone[0],
      frontOffsetMm: Math.hypot(front.xMm, front.yMm),
      frontShare: alone[1],
      focuserOffsetMm: Math.hypot(focuser.xMm, focuser.yMm),
      focuserShare: alone[2],
      share: together,
    };
  },
);

interface Given {
  readonly squeeze: number;
  readonly elementSpacingMm: number;
  readonly rearToPupilMm: number;
  readonly focalLengthMm: number;
  readonly fNumber: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
  readonly rearClearMm: number;
  readonly frontClearMm: number;
  readonly focuserAheadMm: number;
  readonly focuserClearMm: number;
}

/** A round glass, and the beam on it: its middle, and its half width and half height. */
interface Rim {
  readonly radiusMm: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly halfWidthMm: number;
  readonly halfHeightMm: number;
}

const across = ({ sensorWidthMm, focalLengthMm }: Given): number => sensorWidthMm / (2 * focalLengthMm);
const up = ({ sensorHeightMm, focalLengthMm }: Given): number => sensorHeightMm / (2 * focalLengthMm);
const pupilRadius = ({ focalLengthMm, fNumber }: Given): number => focalLengthMm / fNumber / 2;

function rearOf(given: Given): Rim {
  const { rearToPupilMm, rearClearMm } = given;
  const half = pupilRadius(given);
  return { radiusMm: rearClearMm / 2, xMm: rearToPupilMm * across(given), yMm: rearToPupilMm * up(given), halfWidthMm: half, halfHeightMm: half };
}

function frontOf(given: Given): Rim {
  const { squeeze, elementSpacingMm, rearToPupilMm, frontClearMm } = given;
  const half = pupilRadius(given);
  return {
    radiusMm: frontClearMm / 2,
    xMm: (elementSpacingMm + rearToPupilMm / squeeze) * across(given),
    yMm: (elementSpacingMm + rearToPupilMm) * up(given),
    halfWidthMm: half / squeeze,
    halfHeightMm: half,
  };
}

function focuserOf(given: Given): Rim {
  const front = frontOf(given);
  const { focuserAheadMm, focuserClearMm, squeeze } = given;
  return { ...front, radiusMm: focuserClearMm / 2, xMm: front.xMm + focuserAheadMm * squeeze * across(given), yMm: front.yMm + focuserAheadMm * up(given) };
}

const STRIPS = 1500;
/** Height of each strip on the unit disc and half its length; evenly spaced in the angle that draws the disc. */
const HEIGHTS = Float64Array.from({ length: STRIPS }, (_, strip) => Math.sin(((strip + 0.5) / STRIPS - 0.5) * Math.PI));
const HALVES = HEIGHTS.map((v) => Math.sqrt(1 - v * v));
const LEFTS = HALVES.map((half) => -half);
/** The same strips summed over the whole disc. */
const WHOLE = HALVES.reduce((sum, half) => sum + 2 * half * half, 0);

/** The beam reaches the rim: one that it does not reach cuts nothing. */
const isReached = (rim: Rim): boolean => Math.hypot(rim.xMm + rim.halfWidthMm, rim.yMm + rim.halfHeightMm) > rim.radiusMm;

/** Where the rays of each strip begin and end that pass all rims so far. Kept: one corner is reckoned at a time. */
const FROM = new Float64Array(STRIPS);
const TO = new Float64Array(STRIPS);

/** Shares of the unit disc of the pupil whose rays lie inside each rim, and inside all of them: on each level strip an interval, or nothing. */
function sharesThrough(rims: readonly [Rim, Rim, Rim]): { alone: [number, number, number]; together: number } {
  FROM.set(LEFTS);
  TO.set(HALVES);
  const alone = rims.map(shareThrough) as [number, number, number];
  // What one rim alone cuts, nothing else cuts again.
  if (rims.filter(isReached).length < 2) return { alone, together: Math.min(...alone) };
  let inside = 0;
  for (let strip = 0; strip < STRIPS; strip += 1) if (TO[strip]! > FROM[strip]!) inside += HALVES[strip]! * (TO[strip]! - FROM[strip]!);
  return { alone, together: Math.min(1, inside / WHOLE) };
}

/** What one rim lets by, taken off what passes all of them. In plain steps, as a check goes through some fifty corners of so many strips in code that has not run long. */
function shareThrough(rim: Rim): number {
  if (!isReached(rim)) return 1;
  const { radiusMm, xMm, yMm, halfWidthMm, halfHeightMm } = rim;
  let inside = 0;
  for (let strip = 0; strip < STRIPS; strip += 1) {
    const y = yMm + HEIGHTS[strip]! * halfHeightMm;
    if (!(radiusMm > Math.abs(y))) {
      TO[strip] = -Infinity; // a strip above the rim passes nothing
      continue;
    }
    const half = HALVES[strip]!;
    const reach = Math.sqrt(radiusMm * radiusMm - y * y);
    const left = (-reach - xMm) / halfWidthMm;
    const right = (reach - xMm) / halfWidthMm;
    const from = left > -half ? left : -half;
    const to = right < half ? right : half;
    if (to > from) inside += half * (to - from);
    if (from > FROM[strip]!) FROM[strip] = from;
    if (to < TO[strip]!) TO[strip] = to;
  }
  return Math.min(1, inside / WHOLE);
}
