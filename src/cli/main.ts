import { processWorld } from './processWorld.ts';
import { openProgram } from './program.ts';

process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
const { run } = openProgram(new URL('./', import.meta.url)).command;
process.exitCode = await run(process.argv.slice(2), processWorld());
