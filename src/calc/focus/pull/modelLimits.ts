import type { PullGiven } from './given.ts';

/** What the simulation does not know, in sentences to stand beside its results. */
export function modelLimits({ way, direction, swayMm, reactionMs }: PullGiven): string[] {
  const byPicture = way === 'picture' || way === 'both';
  return [
    'No published study concerns focus pulling itself. Read the results as a ranking and as bands, not as a promise about a take.',
    ...(byPicture
      ? [
          'The puller who follows the picture is the crossover model of compensatory tracking (McRuer & Jex 1967), made for trained '
            + `operators of vehicles, with a reaction of ${reactionMs} ms; an experienced puller also foresees, which no delay hurts.`,
          direction === 'known'
            ? 'The puller is told which way it is soft: a bound that nobody beats.'
            : 'Blur carries no sign: the way to turn is taken from the motion of the subject and of the hand, and hunted for where neither tells.',
        ]
      : []),
    ...(way === 'picture'
      ? []
      : ['The hand turns between marks in proportion to the distance covered; spreads of marks and timing are estimates until seen in rehearsal.']),
    ...(swayMm > 0 ? ['Handheld sway is three lines about one frequency, not a measured operator.'] : []),
    'Sharp means within the circle of confusion on a still frame; motion blur, light and the taste of the audience are not in it.',
  ];
}
