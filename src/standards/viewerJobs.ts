/** What each job asks of a picture. No study concerns focus pulling or operating by monitor itself: the studies named are near it. */
export interface ViewerJob {
  readonly job: 'operate' | 'pull focus' | 'direct' | 'script' | 'light' | 'client';
  readonly says: string;
  /** Delay from lens to eye that the job bears; `low` is comfortable, `high` the most that anyone puts up with. */
  readonly delayLimitMs: { readonly value: number; readonly low: number; readonly high: number };
  /** Smallest blur that must be seen, against the circle of confusion of the delivery: 1 to judge focus, more to follow the story. */
  readonly blurRatioLimit: { readonly value: number; readonly low: number; readonly high: number };
  /** Contrast that is enough in the light of the place. */
  readonly contrastLimit: number;
  /** Lines of picture beyond which the job gains nothing. */
  readonly usefulLines: number;
  /** Which gives way where one transmitter has one mode for all: higher keeps. */
  readonly delayWeight: number;
  readonly source: string;
}

const WOODS = 'Woods et al. 2015: simple visual reaction 231 ms on average, so delay is added to that';
const SO = 'So & Griffin 1995: head tracking gets worse from 40 ms on';
const MACKENZIE = 'MacKenzie & Ware 1993: pointing with 225 ms lag takes 64 % longer, with three times the errors';

export const VIEWER_JOBS: readonly ViewerJob[] = [
  {
    job: 'operate', says: 'frames and follows movement by the picture', delayLimitMs: { value: 80, low: 40, high: 120 },
    blurRatioLimit: { value: 4, low: 2, high: 6 }, contrastLimit: 10, usefulLines: 1080, delayWeight: 3, source: `common practice; ${SO}`,
  },
  {
    job: 'pull focus', says: 'judges and follows focus, from tape, marks and rangefinder too', delayLimitMs: { value: 100, low: 60, high: 150 },
    blurRatioLimit: { value: 1.5, low: 1, high: 2 }, contrastLimit: 20, usefulLines: 2160, delayWeight: 3,
    source: `common practice; ${WOODS}; ${MACKENZIE}`,
  },
  {
    job: 'direct', says: 'judges performance and frame, and wants detail', delayLimitMs: { value: 300, low: 150, high: 500 },
    blurRatioLimit: { value: 2.5, low: 1.5, high: 4 }, contrastLimit: 20, usefulLines: 2160, delayWeight: 1, source: 'common practice',
  },
  {
    job: 'script', says: 'watches continuity, with the sound in the headphones', delayLimitMs: { value: 300, low: 150, high: 500 },
    blurRatioLimit: { value: 3, low: 2, high: 5 }, contrastLimit: 15, usefulLines: 1080, delayWeight: 1, source: 'common practice',
  },
  {
    job: 'light', says: 'judges exposure and colour', delayLimitMs: { value: 500, low: 300, high: 1000 },
    blurRatioLimit: { value: 4, low: 3, high: 6 }, contrastLimit: 50, usefulLines: 1080, delayWeight: 0, source: 'common practice',
  },
  {
    job: 'client', says: 'watches from a distance', delayLimitMs: { value: 1000, low: 500, high: 2000 },
    blurRatioLimit: { value: 5, low: 3, high: 8 }, contrastLimit: 10, usefulLines: 1080, delayWeight: 0, source: 'common practice',
  },
];

export function viewerJob(job: string): ViewerJob | undefined {
  return VIEWER_JOBS.find((one) => one.job === job);
}

/** How far picture may lag sound before lips part from words, and sound lag picture. */
export const LIP_SYNC_MS = {
  soundEarly: { noticed: 45, accepted: 90 },
  soundLate: { noticed: 125, accepted: 185 },
  source: 'ITU-R BT.1359-1, detectability and acceptability (from memory)',
} as const;
