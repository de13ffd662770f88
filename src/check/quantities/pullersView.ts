import type { Asking } from '../Asking.ts';
import { type ShotSubject, type ViewerSubject, eachViewer } from '../subjects.ts';

/** Who pulls a shot, and where they look: the viewer entered for that person in the shot's setup, one who pulls focus first. */
export interface PullersView {
  readonly name: string;
  /** `undefined` where no viewer is entered for them in this setup. */
  readonly viewer: ViewerSubject | undefined;
}

export function pullersView({ ledger }: Asking, { setup, glass, shot }: ShotSubject): PullersView | undefined {
  const person = ledger.at(`shots/${shot}/pulledBy`) as string | undefined;
  if (person === undefined) return undefined;
  const name = (ledger.at(`crew/${person}/name`) ?? ledger.at(`crew/${person}/role`) ?? person) as string;
  const theirs = eachViewer(ledger).filter((one) => one.setup === setup && ledger.at(`needs/viewers/${one.viewer}/who`) === person);
  const viewer = theirs.find(({ viewer: id }) => ledger.at(`needs/viewers/${id}/job`) === 'pull focus') ?? theirs[0];
  return { name, viewer: viewer === undefined ? undefined : { ...viewer, glass } };
}
