import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import { judgeYes } from '../../judge.ts';
import { buildsInUse, isCamera, usesOf } from '../../quantities/buildsInUse.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';

/** What may carry a camera build, by its purpose; a gimbal may itself stand on legs or hang on a mount. */
const CARRIERS: Readonly<Record<string, readonly string[]>> = {
  tripod: ['head', 'legs', 'stand'], shoulder: ['shoulder pad', 'handles'], handheld: ['handles'], gimbal: ['gimbal', 'handles', 'legs', 'stand', 'mount', 'head'], vehicle: ['mount', 'gimbal', 'head'],
};
/** Of these a build stands on one. */
const ONLY_ONE = ['head', 'shoulder pad', 'gimbal'];

export const stands = question<{ readonly build: string }>({
  id: 'hold.stands',
  asks: 'Is it plain what the camera stands on?',
  kind: 'immediate',
  explains:
    'Forces, sag and swings are reckoned from what holds the build: a head on its legs, a pad on a shoulder with hands on the grips, a mount, a gimbal; or nothing, where it is held free in the hands. The purpose of the build says which. Two heads, or legs under a build for the shoulder, contradict it: only what fits the purpose is then reckoned with, and the rest is carried as weight.',
  sources: ['common practice'],
  subjects: (ledger) => buildsInUse(ledger).filter((build) => usesOf(ledger, build).some((use) => isCamera(ledger, use, build))).map((build) => ({ build })),
  ask: ({ ledger }, { build }) => {
    const purpose = ledger.at(`builds/${build}/purpose`) as string;
    const allowed = CARRIERS[purpose];
    const use = usesOf(ledger, build).find((one) => isCamera(ledger, one, build));
    if (allowed === undefined || use === undefined) return null;
    const own = [...setupPieces(ledger, use.setup, use.glass).values()].filter((piece) => piece.build === build);
    const carriers = own.filter((piece) => kindOf(piece) !== undefined);
    const strange = carriers.filter((piece) => !allowed.includes(kindOf(piece) ?? ''));
    const doubled = ONLY_ONE.flatMap((kind) => {
      const same = carriers.filter((piece) => kindOf(piece) === kind);
      return same.length > 1 ? [same] : [];
    });
    if (carriers.length === 0) return null;
    return judgeYes({
      yes: true,
      caution: strange.length > 0 || doubled.length > 0,
      says: {
        holds: `${listed(carriers.map(({ name }) => name))} ${carriers.length === 1 ? 'carries' : 'carry'} it, as a build for ${PURPOSES[purpose] ?? purpose} asks.`,
        tight: doubled[0] !== undefined ? `${listed(doubled[0].map(({ name }) => name))} cannot ${doubled[0].length === 2 ? 'both' : 'all'} carry the camera at once.` : `${listed(strange.map(({ name }) => name))} ${strange.length === 1 ? 'does' : 'do'} not go with a build for ${PURPOSES[purpose] ?? purpose}.`,
        fails: '',
      },
      steps: carriers.map((piece) => ({ says: `${piece.name}: ${kindOf(piece) ?? ''}` })),
    });
  },
});

const PURPOSES: Readonly<Record<string, string>> = { shoulder: 'the shoulder', handheld: 'the hands', tripod: 'a tripod', gimbal: 'a gimbal', vehicle: 'a vehicle' };
const kindOf = (piece: SetupPiece): string | undefined => piece.part.read('carrier/kind') as string | undefined;
