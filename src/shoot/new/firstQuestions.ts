import type { Part } from '../schema/part.ts';
import { typicalParts } from '../typical/typicalParts.ts';

/** The answers that make a first shoot: typical classes by id, and a few numbers. */
export interface FirstAnswers {
  readonly title: string;
  readonly body: string;
  /** Mode of the body's class. */
  readonly mode: string;
  readonly aspect: number;
  readonly widthPx: number;
  readonly lens: string;
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
  /** Whether it need be asked after these answers; always, where not stated. */
  readonly arises?: (so: Partial<FirstAnswers>) => boolean;
  /** How a number may also be written: `16:9`, `T2.8`, or as a whole number only. */
  readonly written?: 'aspect' | 'T-stop' | 'whole';
}

const classes = (...kinds: Part['kind'][]) => Object.keys(typicalParts).filter((id) => kinds.includes(typicalParts[id]?.kind ?? 'other'));
const orNone = (ids: readonly string[]) => ['none', ...ids];
const modesOf = (body: string | undefined) => Object.keys(typicalParts[body ?? '']?.body?.modes ?? {});
const squeezed = (lens: string | undefined) => Number(typicalParts[lens ?? '']?.lens?.squeeze ?? 1) > 1;

export const FIRST_QUESTIONS: readonly FirstQuestion[] = [
  { key: 'title', asks: 'What is the shoot called?', kind: 'text', usual: () => 'New shoot' },
  { key: 'body', asks: 'What kind of camera body?', kind: 'class', choices: () => classes('body'), usual: () => 'body-full-frame' },
  { key: 'mode', asks: 'Which part of its sensor is recorded?', kind: 'class', choices: ({ body }) => modesOf(body), usual: ({ body }) => modesOf(body)[0] ?? '' },
  { key: 'aspect', asks: 'Delivery aspect, width to height?', kind: 'number', written: 'aspect', usual: () => '2.39' },
  { key: 'widthPx', asks: 'Width delivered, in pixels?', kind: 'number', written: 'whole', usual: () => '3840' },
  { key: 'lens', asks: 'Which lens, anamorphic or spherical?', kind: 'class', choices: () => classes('lens'), usual: () => 'lens-85' },
  { key: 'block', asks: 'An anamorphic block in front of it?', kind: 'class', choices: ({ lens }) => (squeezed(lens) ? ['none'] : orNone(classes('block'))), usual: ({ lens }) => (squeezed(lens) ? 'none' : 'block-1-5x') },
  { key: 'focuser', asks: 'A focuser in front of that?', kind: 'class', choices: ({ block }) => (block === 'none' ? ['none'] : orNone(classes('focuser'))), usual: ({ block }) => (block === 'none' ? 'none' : 'variable-diopter') },
  { key: 'distanceMm', asks: `Focus distance from the sensor plane, as in 5'6" or 1.68 m?`, kind: 'length', usual: () => '2 m' },
  { key: 'focuserToSensorMm', asks: 'Focuser to sensor plane, as in 22 cm (0 mm where it is not known)?', kind: 'length', arises: ({ focuser }) => focuser !== 'none', usual: ({ focuser }) => (focuser === 'none' ? '0 mm' : '220 mm') },
  { key: 'tStop', asks: 'T-stop?', kind: 'number', written: 'T-stop', usual: () => '2.8' },
  { key: 'operator', asks: 'The operator sees on what?', kind: 'class', choices: () => orNone(classes('monitor')), usual: () => 'monitor-5-bright' },
  { key: 'puller', asks: 'The focus puller sees on what?', kind: 'class', choices: () => orNone(classes('monitor')), usual: () => 'monitor-7' },
  { key: 'director', asks: 'The director sees on what?', kind: 'class', choices: () => orNone(classes('monitor')), usual: () => 'none' },
  {
    key: 'link', asks: 'How does the picture reach those away from the camera?', kind: 'class',
    choices: () => ['cable', ...classes('transmitter').map((id) => id.replace('transmitter-', ''))], usual: () => 'two-mode',
  },
  { key: 'motor', asks: 'A focus motor?', kind: 'class', choices: () => orNone(classes('motor')), usual: ({ puller }) => (puller === 'none' ? 'none' : 'motor-medium') },
  { key: 'pack', asks: 'Which packs?', kind: 'class', choices: () => classes('battery').filter((id) => typicalParts[id]?.pack?.outlets !== true), usual: () => 'pack-14v-98' },
  { key: 'packs', asks: 'How many of them?', kind: 'number', written: 'whole', usual: () => '3' },
];
