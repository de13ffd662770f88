/** What stands between two aerials at about 5 GHz. Wide estimates: walk the link instead. */
export interface ObstacleLoss {
  readonly name: 'body' | 'light wall' | 'brick wall' | 'concrete wall' | 'floor' | 'foil or metal';
  readonly lossDb: { readonly value: number; readonly low: number; readonly high: number };
  readonly source: string;
}

export const OBSTACLE_LOSSES: readonly ObstacleLoss[] = [
  { name: 'body', lossDb: { value: 8, low: 3, high: 20 }, source: 'common practice, estimate' },
  { name: 'light wall', lossDb: { value: 4, low: 2, high: 7 }, source: 'common practice, estimate' },
  { name: 'brick wall', lossDb: { value: 10, low: 6, high: 15 }, source: 'common practice, estimate' },
  { name: 'concrete wall', lossDb: { value: 20, low: 12, high: 35 }, source: 'common practice, estimate' },
  { name: 'floor', lossDb: { value: 16, low: 12, high: 25 }, source: 'ITU-R P.1238, one office floor at 5.2 GHz: 16 dB; bounds an estimate' },
  { name: 'foil or metal', lossDb: { value: 30, low: 20, high: 60 }, source: 'common practice, estimate: coated glass, lifts, vehicles' },
];

export function obstacleLoss(name: string): ObstacleLoss | undefined {
  return OBSTACLE_LOSSES.find((one) => one.name === name);
}

/** Loss for ten times the distance. */
export const LOSS_COEFFICIENTS = [
  { name: 'open', value: 20, low: 20, high: 25, source: 'ITU-R P.525, free space; near the ground somewhat more (estimate)' },
  { name: 'house', value: 28, low: 25, high: 32, source: 'ITU-R P.1238, 5.2 GHz; bounds an estimate' },
  { name: 'flat', value: 30, low: 27, high: 33, source: 'ITU-R P.1238, 5.2 GHz; bounds an estimate' },
  { name: 'office', value: 31, low: 28, high: 34, source: 'ITU-R P.1238, 5.2 GHz; bounds an estimate' },
] as const;
