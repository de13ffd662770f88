import { controlPath } from './controlDelay.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { outOfReach } from './focusReach.ts';
import { focusRing } from './focusRing.ts';
import { pullersView } from './pullersView.ts';
import { ringDrive, turnsAtAll } from './ringDrive.ts';
import { unseen } from './unseen.ts';

/** Why a shot cannot be simulated although everything is entered, in a sentence that names the question that tells more. */
export function pullHindrance(asking: Asking, subject: ShotSubject): string {
  const ring = focusRing(asking, subject);
  if (outOfReach(asking, subject)) return `${ring.name} does not focus over the whole shot: see picture.closeFocus.`;
  const drive = ringDrive(asking, subject);
  if (drive !== undefined && !turnsAtAll(drive)) return `${drive.motor.piece.name} stalls on ${ring.name}: see focus.turns.`;
  const control = controlPath(asking, subject);
  if (control?.hand === undefined && drive !== undefined) return `No hand reaches ${drive.motor.piece.name}: see lines.control.`;
  const view = pullersView(asking, subject);
  const blind = view?.viewer === undefined ? undefined : unseen(asking.ledger, view.viewer);
  return `${blind?.says.replace(/\.$/, '') ?? `No picture reaches ${view?.name ?? 'who pulls'}`}: see lines.fed.`;
}
