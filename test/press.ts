import { pressFor } from '../src/cli/press.ts';
import type { Press } from '../src/papers/paper.ts';

/** A press with the fonts of this installation on a fixed day. */
export const testPress = (wanted: Partial<Pick<Press, 'paper' | 'system'>> = {}): Promise<Press> => pressFor({ today: () => new Date(2026, 10, 25) }, { paper: 'A4', system: 'metric', ...wanted });
