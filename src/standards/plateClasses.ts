/**
 * Plates, wedges and rails by the shape that holds them. Two of one class mate in kind; makers’ widths differ, so a stated
 * class of its own counts first.
 */
export interface PlateClass {
  readonly name: string;
  readonly also: readonly string[];
  readonly says: string;
  /** Width across the part that is gripped, where there is a usual one. */
  readonly widthMm?: number;
  /** Whether its shape alone keeps it from turning. */
  readonly keepsFromTurning: boolean;
  /** Whether it can slide until it is clamped. */
  readonly slides: boolean;
  readonly source: string;
}

const TRADE = 'common practice';

export const PLATE_CLASSES: readonly PlateClass[] = [
  {
    name: 'flat plate', also: ['plate'], says: 'flat faces drawn together by one screw: friction alone keeps it from turning',
    keepsFromTurning: false, slides: false, source: TRADE,
  },
  {
    name: 'flat plate with pins', also: ['pinned plate'], says: 'flat faces, one screw, and pins or a second screw that keep it from turning',
    keepsFromTurning: true, slides: false, source: TRADE,
  },
  {
    name: 'dovetail 38 mm', also: ['38 mm dovetail', 'small dovetail'], says: 'a long wedge-edged plate in a jaw', widthMm: 38,
    keepsFromTurning: true, slides: true, source: `${TRADE}: flanks near 45°, width at the top; makers differ by some tenths`,
  },
  {
    name: 'sliding balance plate', also: ['balance plate', 'tripod plate'],
    says: 'the plate of a video head: slides fore and aft and is clamped from one side', keepsFromTurning: true, slides: true,
    source: `${TRADE}: widths differ by maker`,
  },
  {
    name: 'studio dovetail', also: ['bridge plate dovetail', 'wide dovetail'], says: 'a wide dovetail under a bridge plate', keepsFromTurning: true,
    slides: true, source: `${TRADE}: widths differ by maker`,
  },
  {
    name: 'shoulder wedge', also: ['v wedge', 'wedge'], says: 'a V-shaped wedge that drops into a catch under a shoulder camera',
    keepsFromTurning: true, slides: false, source: TRADE,
  },
  {
    name: 'small quick release', also: ['quick release'], says: 'a small wedge or plate with a sprung catch, for monitors and arms',
    keepsFromTurning: true, slides: false, source: `${TRADE}: most have some play`,
  },
  {
    name: 'accessory rail', also: ['nato rail', 'picatinny rail'], says: 'a short rail that handles and arms clamp to', widthMm: 21.2,
    keepsFromTurning: true, slides: true,
    source: 'MIL-STD-1913 / STANAG 2324 profile (from memory): 21.2 mm across, flanks 45°; on cameras often without slots',
  },
  {
    name: 'rosette', also: ['toothed rosette'], says: 'two toothed faces and a screw: steps instead of slip', widthMm: 31.8, keepsFromTurning: true,
    slides: false, source: `${TRADE}: 60 teeth, M6 in the middle, outer diameter near 31.8 mm (from memory)`,
  },
];

export function plateClass(name: string): PlateClass | undefined {
  const wanted = name.toLowerCase().trim();
  return PLATE_CLASSES.find((one) => one.name === wanted || one.also.includes(wanted));
}
