import { Command } from 'commander';
import { realpathSync } from 'node:fs';
import { loadShoot } from '../files.ts';
import { Refusal } from '../Refusal.ts';
import { ServedShoot } from '../serve/ServedShoot.ts';
import { serve } from '../serve/serve.ts';
import { siteFolder } from '../serve/site.ts';
import type { World } from '../World.ts';

export const summary = 'Serves the page on this machine, to see a shoot and change it';

/** A port of its own, so that the browser finds again what it kept there. */
const USUAL_PORT = 47_230;

interface Options {
  readonly port: string;
  readonly demo?: boolean;
}

export function command(world: World): Command {
  return new Command('open')
    .description(`${summary}. Changes are saved back to the file; earlier versions are kept beside it. Without a file, shoots are kept in the browser.`)
    .argument('[file]', 'a *.shoot.json file')
    .option('--port <number>', 'port to serve on; another where it is taken', String(USUAL_PORT))
    .option('--demo', 'open the demo, kept in the browser')
    .action((file: string | undefined, options: Options) => open(world, file, options));
}

async function open(world: World, file: string | undefined, { port, demo }: Options): Promise<void> {
  const wanted = Number(port);
  if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65_535) throw new Refusal('--port', [{ path: '', message: `"${port}" is not a port.`, cure: 'Give a whole number from 1024 to 65535.' }]);
  const folder = siteFolder();
  if (folder === undefined) throw new Refusal('', [{ path: '', message: 'The page has not been built.', cure: 'Run npm run build first.' }]);
  if (file !== undefined) loadShoot(world, file);
  const serving = await serve({ folder, shoot: file === undefined ? undefined : new ServedShoot(realpathSync(file), world.today), port: wanted });
  world.out(`\n${file ?? (demo === true ? 'The demo' : 'The page')} is served at\n\n  ${serving.url}${demo === true ? '#/asks?open=demo' : ''}\n\nOpen that in a browser; ctrl-C here ends it.\n`);
  await stopped(world.stop);
  await serving.close();
}

function stopped(stop: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (stop.aborted) resolve();
    else stop.addEventListener('abort', () => resolve(), { once: true });
  });
}
