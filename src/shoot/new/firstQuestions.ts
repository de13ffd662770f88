import type { Part } from '../schema/part.ts';
import { typicalParts } from '../typical/typicalParts.ts';
import { whyUnfed } from './feeding.ts';

/** The answers that make a first shoot: typical classes by id, and a few numbers. */
export interface FirstAnswers {
  readonly title: string;
  readonly body: string;
  /** Mode of the body's class. */
  readonly mode: string;
  readonly aspect: number;
  readonly widthPx: number;
  readonly lens: string;
  /** Where it is shot: `interior` or `exterior`. */
  readonly place: string;
  /** A block in front of a spherical lens, or `none`. */
  readonly block: string;
  /** A focuser in front, or `none`. */
  readonly focuser: string;
  readonly distanceMm: number;
  /** Focuser to sensor plane, for the depth with a focuser in front. */
  readonly focuserToSensorMm?: number;
  readonly tStop: number;
  /** A class of monitor for each who must see, or `none`. */
  readonly operator: string;
  readonly puller: string;
  readonly director: string;
  /** How the stations get the picture: a class of radio, `cable`, or `none`. */
  readonly link: string;
  readonly motor: string;
  readonly pack: string;
  readonly packs: number;
}

/** One of the five-minute questions, as data: the command asks them one after the other, the page shows them as a form. */
export interface FirstQuestion {
  readonly key: keyof FirstAnswers;
  readonly asks: string;
  readonly kind: 'text' | 'number' | 'length' | 'class';
  /** The ids to choose from, for `class`. */
  readonly choices?: (so: Partial<FirstAnswers>) => readonly string[];
  readonly usual: (so: Partial<FirstAnswers>) => string;
  /** What its usual answer could make fail, as ids of questions and disciplines: another one is usual where it would. */
  readonly bearsOn?: readonly string[];
  /** Whether `none` may be usual where every class makes something fail; a viewer is not done without. */
  readonly dispensable?: true;
  /** Whether it need be asked after these answers; always, where not stated. */
  readonly arises?: (so: Partial<FirstAnswers>) => boolean;
  /** Why a choice does not serve with the answers so far. */
  readonly unfit?: (choice: string, so: Partial<FirstAnswers>) => string | undefined;
  /** Whether nought is an answer to a length: it is not known. */
  readonly zero?: true;
  /** How a number may also be written: `16:9`, `T2.8`, or as a whole number only. */
  readonly written?: 'aspect' | 'T-stop' | 'whole';
}

const classes = (...kinds: Part['kind'][]) => Object.keys(typicalParts).filter((id) => kinds.includes(typicalParts[id]?.kind ?? 'other'));
const orNone = (ids: readonly string[]) => ['none', ...ids];
const modesOf = (body: string | undefined) => Object.keys(typicalParts[body ?? '']?.body?.modes ?? {});
const squeezed = (lens: string | undefined) => Number(typicalParts[lens ?? '']?.lens?.squeeze ?? 1) > 1;

/** Squeeze of lens and block together. */
export function squeezeOf({ lens = '', block = '' }: Partial<FirstAnswers>): number {
  return Number(typicalParts[lens]?.lens?.squeeze ?? 1) * Number(typicalParts[block]?.block?.squeeze ?? 1);
}

/** The part of the sensor with the largest frame that the lens still covers, and of those the one that shows the least around it. */
function usualMode(so: Partial<FirstAnswers>): string {
  const { body = '', lens = '', aspect = 2.39 } = so;
  const squeeze = squeezeOf(so);
  const circleMm = Number(typicalParts[lens]?.lens?.imageCircleMm ?? Infinity);
  const modes = Object.entries(typicalParts[body]?.body?.modes ?? {}).map(([id, { sensorWidthMm, sensorHeightMm }]) => {
    const [widthMm, heightMm] = [Number(sensorWidthMm), Number(sensorHeightMm)];
    const frameMm = Math.min(widthMm, (heightMm * aspect) / squeeze);
    return { id, covered: Number(Math.hypot(widthMm, heightMm) <= circleMm), frameMm, aroundMm2: widthMm * heightMm };
  });
  return modes.toSorted((one, other) => other.covered - one.covered || other.frameMm - one.frameMm || one.aroundMm2 - other.aroundMm2)[0]?.id ?? '';
}

/** The first of what is chosen that these packs do not feed, and why. */
function unfedBy(pack: string, { body, operator, puller, director, link, motor }: Partial<FirstAnswers>): string | undefined {
  const radio = link !== undefined && link !== 'cable' && [puller, director].some((screen) => screen !== undefined && screen !== 'none');
  const devices = [body, operator, puller, director, ...(radio ? [`transmitter-${link}`, `receiver-${link}`] : []), ...(motor === undefined || motor === 'none' ? [] : ['motor-receiver', 'hand-unit'])];
  return devices.map((device) => (device === undefined ? undefined : whyUnfed(pack, device))).find((why) => why !== undefined);
}

const FEEDING = ['power.fed', 'power.plug', 'power.current', 'power.pack', 'power.window'];

export const FIRST_QUESTIONS: readonly FirstQuestion[] = [
  { key: 'title', asks: 'What is the shoot called?', kind: 'text', usual: () => 'New shoot' },
  { key: 'body', asks: 'What kind of camera body?', kind: 'class', choices: () => classes('body'), usual: () => 'body-full-frame', bearsOn: ['picture.mount', 'picture.coverage', ...FEEDING] },
  { key: 'lens', asks: 'Which lens, anamorphic or spherical?', kind: 'class', choices: () => classes('lens'), usual: () => 'lens-85', bearsOn: ['picture.mount'] },
  { key: 'block', asks: 'An anamorphic block in front of it?', kind: 'class', choices: ({ lens }) => (squeezed(lens) ? ['none'] : orNone(classes('block'))), usual: ({ lens }) => (squeezed(lens) ? 'none' : 'block-1-5x'), bearsOn: ['picture'], dispensable: true },
  { key: 'focuser', asks: 'A focuser in front of that?', kind: 'class', choices: ({ block }) => (block === 'none' ? ['none'] : orNone(classes('focuser'))), usual: ({ block }) => (block === 'none' ? 'none' : 'variable-diopter') },
  { key: 'aspect', asks: 'Delivery aspect, width to height?', kind: 'number', written: 'aspect', usual: () => '2.39' },
  { key: 'widthPx', asks: 'Width delivered, in pixels?', kind: 'number', written: 'whole', usual: () => '3840' },
  { key: 'mode', asks: 'Which part of its sensor is recorded?', kind: 'class', choices: ({ body }) => modesOf(body), usual: usualMode, bearsOn: ['picture.coverage'] },
  { key: 'distanceMm', asks: `Focus distance from the sensor plane, as in 5'6" or 1.68 m?`, kind: 'length', usual: () => '2 m' },
  { key: 'focuserToSensorMm', asks: 'Focuser to sensor plane, as in 22 cm (0 where it is not known)?', kind: 'length', zero: true, arises: ({ focuser }) => focuser !== 'none', usual: ({ focuser }) => (focuser === 'none' ? '0 mm' : '220 mm') },
  { key: 'tStop', asks: 'T-stop?', kind: 'number', written: 'T-stop', usual: () => '2.8' },
  { key: 'place', asks: 'Inside, or outside in daylight?', kind: 'class', choices: () => ['interior', 'exterior'], usual: () => 'interior' },
  { key: 'operator', asks: 'The operator sees on what?', kind: 'class', choices: () => orNone(classes('monitor')), usual: () => 'monitor-5-bright', bearsOn: ['sight', 'lines', ...FEEDING] },
  { key: 'puller', asks: 'The focus puller sees on what?', kind: 'class', choices: () => orNone(classes('monitor')), usual: () => 'monitor-7', bearsOn: ['sight', ...FEEDING] },
  { key: 'director', asks: 'The director sees on what?', kind: 'class', choices: () => orNone(classes('monitor')), usual: () => 'none' },
  {
    key: 'link', asks: 'How does the picture reach those away from the camera?', kind: 'class',
    choices: () => [...classes('transmitter').map((id) => id.replace('transmitter-', '')), 'cable'], usual: ({ puller }) => (puller === 'none' ? 'low-cost' : 'no-delay'), bearsOn: ['sight', 'lines'],
  },
  { key: 'motor', asks: 'A focus motor?', kind: 'class', choices: () => orNone(classes('motor')), usual: ({ puller }) => (puller === 'none' ? 'none' : 'motor-medium'), bearsOn: ['focus', ...FEEDING], dispensable: true },
  { key: 'pack', asks: 'Which packs?', kind: 'class', choices: () => classes('battery').filter((id) => typicalParts[id]?.pack?.outlets !== true), usual: () => 'pack-14v-98', bearsOn: FEEDING, unfit: unfedBy },
  { key: 'packs', asks: 'How many of them?', kind: 'number', written: 'whole', usual: () => '3', bearsOn: ['power.day'] },
];
