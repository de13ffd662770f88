/** From a fresh clone to answers: installs where needed, builds, checks the demo, then serves the page with it. */
import { spawn, spawnSync } from 'node:child_process';
import { installWhereMissing } from './installed.mjs';
import { run } from './run.mjs';

process.chdir(new URL('..', import.meta.url).pathname);
installWhereMissing();
console.log('Building the command and the page …');
run('node', ['tools/build.mjs']);
console.log('Checking the demo, examples/demo.shoot.json:\n');
const { status } = spawnSync('node', ['dist/cli.js', 'check', 'examples/demo.shoot.json'], { stdio: 'inherit' });
if (status === 2) process.exit(2);
const page = spawn('node', ['dist/cli.js', 'open', '--demo'], { stdio: 'inherit' });
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => page.kill(signal));
page.on('exit', (code) => process.exit(code ?? 0));
