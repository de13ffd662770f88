import { processWorld, run } from './cli.ts';

process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
process.exitCode = await run(process.argv.slice(2), processWorld());
