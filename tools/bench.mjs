/** Measures what was promised to be quick, each beside a floor or a peer, as a ratio. A report, not a test. */
import { readdirSync } from 'node:fs';
import { run } from './run.mjs';

process.chdir(new URL('..', import.meta.url).pathname);
run('node', ['tools/build.mjs']);
const rows = [];
for (const file of readdirSync('tools/bench').filter((name) => name.endsWith('.mjs') && name !== 'timed.mjs').sort()) {
  const { bench } = await import(`./bench/${file}`);
  if (bench !== undefined) rows.push(...(await bench()));
}
const format = (value) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
console.log('what'.padEnd(64), 'ms'.padStart(8), 'aim'.padStart(8), '  beside');
for (const { name, ms, aimMs, floorName, floorMs } of rows) {
  const aim = aimMs === undefined ? '' : `${format(aimMs)}`;
  console.log(name.padEnd(64), format(ms).padStart(8), aim.padStart(8), `  ${format(ms / floorMs)} × ${floorName} (${format(floorMs)} ms)${aimMs !== undefined && ms > aimMs ? '   OVER THE AIM' : ''}`);
}
