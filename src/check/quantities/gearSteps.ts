import { opticalPath } from '../../assembly/opticalPath.ts';
import { type MeshResult, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { rigJoints } from '../../assembly/placing/rigJoints.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import { gearReach } from '../questions/space/gearReach.ts';
import type { SetupGlass } from '../subjects.ts';
import { type ChangeStep, NO_TIME, takes, toolOf } from './changeStep.ts';

/** The ring of a glass and what drives it. */
export interface Gears {
  readonly ring: SetupPiece;
  readonly driver: SetupPiece;
  readonly tool: string;
  /** Where their joint stands in the file; none where the first motor of the camera is taken to turn the ring. */
  readonly path: string | undefined;
}

/** Drives out of mesh; one that does not reach its ring is clear of it. */
export function gearsApart(asking: Asking, subject: SetupGlass, parts: (gears: Gears) => boolean): ChangeStep[] {
  return gearsInReach(asking, subject).filter(parts).map(({ ring, driver, tool }) => meshStep(asking, tool, `swing ${named(driver.name)} clear of ${named(ring.name)}`));
}

/** Drives into mesh; where one does not reach its ring, by how much. */
export function gearsTogether(asking: Asking, subject: SetupGlass, parts: (gears: Gears) => boolean): ChangeStep[] {
  return gearsOf(asking, subject).filter(parts).map((gears) => {
    const { ring, driver, tool } = gears;
    return unmet(asking, subject, gears) ?? meshStep(asking, tool, `bring ${named(driver.name)} into mesh with ${named(ring.name)}`);
  });
}

/** Drives of a glass that reach their ring, or may. */
export const gearsInReach = (asking: Asking, subject: SetupGlass): Gears[] =>
  gearsOf(asking, subject).filter((gears) => unmet(asking, subject, gears) === undefined);

function gearsOf({ ledger }: Asking, { setup, glass }: SetupGlass): Gears[] {
  const stated = rigJoints(ledger, setup, glass).joints.filter(({ mesh }) => mesh).map(({ path, a, b }): Gears => {
    const [ring, driver] = a.piece.part.has('focus') ? [a, b] : [b, a];
    return { path, ring: ring.piece, driver: driver.piece, tool: toolOf(driver) };
  });
  if (stated.length > 0) return stated;
  const { focusedBy } = opticalPath(ledger, setup, glass);
  const camera = ledger.at(`setups/${setup}/camera`);
  const motor = [...setupPieces(ledger, setup, glass).values()].find(({ part, build }) => build === camera && part.has('motor'));
  return focusedBy === undefined || motor === undefined ? [] : [{ path: undefined, ring: focusedBy, driver: motor, tool: 'hand' }];
}

const meshStep = (asking: Asking, tool: string, says: string): ChangeStep => ({ kind: 'mesh', says, tool, ...takes(asking, swap.handMin) });

/** Why two gears that are placed do not turn each other, as space.gearReach finds; `undefined` where they do, or where nothing says where they are. */
function unmet(asking: Asking, subject: SetupGlass, gears: Gears): ChangeStep | undefined {
  const mesh = placeSetup(asking.ledger, subject.setup, subject.glass).meshes.find(({ joint }) => joint.path === gears.path);
  if (mesh === undefined || mesh.meets) return undefined;
  const verdict = gearReach.ask(asking, { ...subject, joint: mesh.joint.path })?.verdict;
  return verdict === 'good' || verdict === 'tight' ? undefined : { kind: 'unmet', ...shortWords(mesh, gears), way: WHERE, ...NO_TIME };
}

const WHERE = '(see space.gearReach)';

function shortWords({ gearA, gearB, gapMm, midOffsetMm, pair, joint }: MeshResult, gears: Gears): Pick<ChangeStep, 'says' | 'by'> {
  const [ring, driver] = [named(gears.ring.name), named(gears.driver.name)];
  const without = gearA === 'none' ? joint.a : gearB === 'none' ? joint.b : undefined;
  if (without !== undefined) return { says: `${named(without.piece.name)} has no gear` };
  const alongMm = Math.abs(midOffsetMm) > (pair?.offsetAllowedMm ?? 0) ? Math.abs(midOffsetMm) : 0;
  const [shortMm, jammedMm] = [Math.max(gapMm, alongMm), -gapMm];
  if (Math.max(shortMm, jammedMm) < TOLD_MM) return { says: `the gears of ${driver} and ${ring} do not lie in one plane` };
  return shortMm >= jammedMm
    ? { says: `${driver} does not reach the gear of ${ring}: short by`, by: { value: shortMm, unit: 'mm' } }
    : { says: `${driver} is pressed into the gear of ${ring}: too close by`, by: { value: jammedMm, unit: 'mm' } };
}

/** Less than this is nothing to set gears by: then it is their lean that keeps them apart. */
const TOLD_MM = 0.1;
