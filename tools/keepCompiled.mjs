/** Runs the built command once on the demo, and keeps beside it what the engine compiled on the way. */
import { writeFileSync } from 'node:fs';
import { tsImport } from 'tsx/esm/api';

const root = new URL('..', import.meta.url);
const [{ openProgram }, { processWorld }] = await Promise.all(['program', 'processWorld'].map((one) => tsImport(`../src/cli/${one}.ts`, import.meta.url)));
const { command, script } = openProgram(new URL('dist/', root));
const world = { ...processWorld(), out: () => undefined, err: () => undefined };
process.exitCode = (await command.run(['check', new URL('examples/demo.shoot.json', root).pathname], world)) > 1 ? 1 : 0;
writeFileSync(new URL('dist/program.compiled', root), script.createCachedData());
