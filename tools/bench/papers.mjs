import { readFileSync } from 'node:fs';
import { bundle, Papers } from '../../src/papers/bundle.ts';
import { pressFor } from '../../src/cli/press.ts';
import { readShoot } from '../../src/shoot/read.ts';
import { Checker } from '../../src/check/Checker.ts';
import { questions } from '../../src/check/questions/index.generated.ts';
import { median } from './timed.mjs';

const elapsed = async (work) => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

/** The whole bundle of the demo, and one paper. */
export async function bench() {
  const shoot = readShoot(readFileSync('examples/demo.shoot.json', 'utf8')).value;
  const press = await pressFor({ today: () => new Date(2026, 0, 1) }, { paper: 'A4', system: 'metric' });
  const check = await elapsed(() => new Checker(shoot, questions).answers());
  const beside = { floorName: 'checking the demo once', floorMs: check };
  const all = async (wanted) => {
    const papers = new Papers(shoot, press, wanted);
    const files = [];
    for (const step of papers.steps) files.push(...(await papers.make(step)));
    return bundle(files);
  };
  const whole = await elapsed(() => all({}));
  const rows = [];
  for (const kind of ['lines', 'build-sheet', 'lens-cards']) {
    const papers = new Papers(shoot, press, { setups: ['jetty-sticks'], kinds: [kind] });
    const times = [];
    for (let run = 0; run < 5; run += 1) times.push(await elapsed(() => papers.make(papers.steps[0])));
    let at = 0;
    rows.push({ name: `one paper of the demo: ${kind}`, ms: median(5, () => times[at++]), aimMs: 500, ...beside });
  }
  return [{ name: 'all papers of the demo, zipped', ms: whole, aimMs: 10_000, ...beside }, ...rows];
}
