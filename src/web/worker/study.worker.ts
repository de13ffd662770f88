import './schemasWithoutEval.ts';
import { studyEach } from '../../jobs/studyEach.ts';
import { type Port, serveCalls } from '../../jobs/protocol.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';

const port = globalThis as unknown as Port;

serveCalls(port, {
  study(shoot: Shoot, keys: readonly string[]): void {
    studyEach(shoot, keys, (studied) => port.postMessage({ news: studied }));
  },
});
