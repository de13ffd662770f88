import { type Assumption, assumptions } from '../Assumption.ts';
import { VIEWER_JOBS, type ViewerJob } from '../viewerJobs.ts';

type Table = Parameters<typeof assumptions>[1];

/** Limits of the jobs are defaults like any other: `sight.pullFocusDelayMs`. */
function ofJobs(): Table {
  return Object.fromEntries(
    VIEWER_JOBS.flatMap(({ job, delayLimitMs, blurRatioLimit, contrastLimit, source }) => {
      const key = keyOf(job);
      return [
        [`${key}DelayMs`, { ...delayLimitMs, unit: 'ms', says: `delay that the job "${job}" bears`, source }],
        [`${key}BlurRatio`, { ...blurRatioLimit, unit: 'ratio', says: `smallest visible blur, against the circle of confusion, that serves the job "${job}"`, source }],
        [`${key}Contrast`, { value: contrastLimit, low: contrastLimit / 2, high: contrastLimit * 2, unit: 'ratio', says: `contrast on the screen that is enough for the job "${job}"`, source }],
      ] as const;
    }),
  ) as Table;
}

const keyOf = (job: ViewerJob['job']): string => job.replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase());

export const sight: Readonly<Record<string, Assumption>> & Record<'acuityArcmin' | 'leastPictureDeg', Assumption> = assumptions('sight', {
  ...ofJobs(),
  acuityArcmin: { value: 1, low: 0.7, high: 1.5, unit: 'arcmin', says: 'smallest angle the viewer\'s eye resolves', source: '20/20 sight; with glasses for the distance' },
  leastPictureDeg: { value: 4.5, low: 3, high: 7, unit: 'deg', says: 'height of the picture, as an angle, below which one squints', source: 'estimate; common practice: a wide picture on 5 inches at arm\'s length is about 5°' },
}) as never;

/** The limit of a job: delay it bears, blur that serves it, contrast it needs. */
export function jobLimit(job: ViewerJob['job'], of: 'DelayMs' | 'BlurRatio' | 'Contrast'): Assumption {
  const limit = sight[`${keyOf(job)}${of}`];
  if (limit === undefined) throw new Error(`there is no limit ${of} for the job ${job}`);
  return limit;
}
