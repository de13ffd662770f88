import { assumptions } from '../Assumption.ts';

export const picture = assumptions('picture', {
  linesInCircle: {
    value: 2, low: 1.5, high: 3, unit: 'ratio', says: 'lines of the delivery that a blur may cover and still count as sharp',
    source: 'common practice; with 1716 lines on an 18 mm frame it gives 0.021 mm, beside the 0.025 mm that handbooks use for 35 mm cine',
  },
});
