import { rigGltf } from './gltf/rigGltf.ts';
import { type PaperFile, paper } from './paper.ts';

/** The placed rig as a model that other programs open. */
export const rigModels = paper({
  id: 'model',
  says: 'Rig in three dimensions',
  per: 'setup',
  make: ({ ledger, setup, glasses }) => Promise.all(glasses.map(async (glass): Promise<PaperFile> => ({ path: `${setup}/rig/${glass}.glb`, bytes: await rigGltf(ledger, setup, glass) }))),
});
