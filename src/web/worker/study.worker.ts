import './schemasWithoutEval.ts';
import { studyEach } from '../../jobs/studyEach.ts';
import { type Port, serveCalls } from '../../jobs/protocol.ts';
import { simulatePull } from '../../jobs/simulatePull.ts';
import { swingView } from '../../jobs/views/swingView.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';

const port = globalThis as unknown as Port;

serveCalls(port, {
  study(shoot: Shoot, keys: readonly string[]): void {
    studyEach(shoot, keys, (studied) => port.postMessage({ news: studied }));
  },
  pull(shoot: Shoot, shot: string) {
    return simulatePull(shoot, shot, (share) => port.postMessage({ news: share }));
  },
  swing(shoot: Shoot, subject: SetupGlass) {
    return swingView(shoot, subject);
  },
});
