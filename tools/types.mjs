/** Types, one environment after the other: the pure floors see neither the page nor Node. */
import { readdirSync } from 'node:fs';
import { run } from './run.mjs';

const root = new URL('..', import.meta.url).pathname;
const environments = readdirSync(`${root}config`).filter((file) => /^tsconfig\.(?!base)\w+\.json$/.test(file)).sort();
for (const file of environments) run('npx', ['tsc', '-p', `config/${file}`], { cwd: root });
console.log(`types: ${environments.length} environments`);
