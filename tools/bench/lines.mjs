/** Tracing and the questions on lines, sight and power, cold cells and warm code, against parsing and walking the same shoot. */
import { readFileSync } from 'node:fs';
import { median, timed } from './timed.mjs';
import { Asking } from '../../src/check/Asking.ts';
import { Checker } from '../../src/check/Checker.ts';
import { batteryDay } from '../../src/check/quantities/batteryDay.ts';
import { questions } from '../../src/check/questions/index.generated.ts';
import { checkShoot } from '../../src/shoot/read.ts';

export async function bench() {
  const text = readFileSync(new URL('../../examples/demo.shoot.json', import.meta.url), 'utf8');
  const whole = checkShoot(JSON.parse(text)).value;
  const one = oneSetup(whole, 'jetty-sticks');
  const asked = questions.filter(({ id }) => /^(lines|sight|power)\./.test(id) && id !== 'power.day');
  const ask = () => new Checker(one, asked).answers();
  const kept = new Checker(whole, []);
  let turn = 0;
  const day = () => {
    turn += 1;
    kept.update({ ...whole, days: { ...whole.days, one: { ...whole.days.one, workHours: 8 + turn / 1000 } } });
    return batteryDay(new Asking(kept.ledger), 'one', 'kit/parts/pack-147', false);
  };
  const walk = () => JSON.stringify(one).length;
  for (let i = 0; i < 30; i += 1) {
    ask();
    day();
    walk();
  }
  const ms = median(25, () => timed(ask));
  const dayMs = median(25, () => timed(day));
  const floorMs = median(25, () => timed(walk));
  return [
    { name: 'lines: trace one setup and ask lines, sight and power of it', ms, aimMs: 5, floorName: 'writing the setup as JSON', floorMs, limitRatio: 40 },
    { name: 'power: the battery timeline of a day, after an edit of its length', ms: dayMs, aimMs: 2, floorName: 'writing the setup as JSON', floorMs, limitRatio: 20 },
  ];
}

/** The demo with one setup and its shots; kit and builds as they are. */
function oneSetup(shoot, id) {
  const keep = (map, test) => Object.fromEntries(Object.entries(map).filter(([key, value]) => test(key, value)));
  return { ...shoot, setups: keep(shoot.setups, (key) => key === id), shots: keep(shoot.shots, (_, shot) => shot.setup === id) };
}
