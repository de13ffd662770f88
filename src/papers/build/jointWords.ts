import type { JointEnd, RigJoint } from '../../assembly/placing/rigJoints.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { type System, printAmount } from '../../units/print.ts';

/** "Cage (bottom) to Baseplate (top)": the piece that goes on first; a point is told where the part has another of its kind. */
export const fixedWords = (goesOn: JointEnd, holds: JointEnd): string => `${endWords(goesOn)} to ${endWords(holds)}`;

/** How it is fixed: the thread, mount or clamp, its tool, how firmly. */
export function howWords({ a, b, torqueNm, ...joint }: RigJoint, system: System = 'metric'): string[] {
  const tool = [a, b].map(({ point }) => point.tool).find((one) => one !== undefined);
  const screws = Math.max(...[a, b].map(({ point }) => point.screws ?? 1));
  const kind = kindWords({ a, b, ...joint });
  return [screws > 1 ? `${screws} × ${kind}` : kind, ...(tool === undefined ? [] : [tool === 'hand' ? 'by hand' : tool]), ...(torqueNm === undefined ? [] : [printAmount({ value: torqueNm, unit: 'N·m' }, system)])];
}

function endWords({ piece, point, pointId }: JointEnd): string {
  const alike = Object.values((piece.part.read('points') ?? {}) as Readonly<Record<string, Point>>).filter(({ kind }) => kind === point.kind);
  const words = point.name ?? (pointId === '' || alike.length < 2 ? undefined : pointId.replaceAll('-', ' '));
  return words === undefined ? piece.name : `${piece.name} (${words})`;
}

/** The kind of fixing, with the class that must agree: "1/4-20", "short 18 mm mount", "88 mm barrel collar". */
function kindWords({ a, b, implied }: Pick<RigJoint, 'a' | 'b' | 'implied'>): string {
  const size = a.point.class ?? b.point.class;
  const mount = implied || a.point.kind === 'lens mount' ? (size ?? mountBetween(a, b)) : undefined;
  if (mount !== undefined) return a.point.kind === 'lens mount' || a.point.class === undefined ? `${mount} mount` : mount;
  const { kind } = a.point;
  if (size === undefined) return kind === 'front' ? 'on the front' : kind;
  const plain = kind === 'thread' || kind === 'hole' || kind === 'stud' || size.includes(kind.split(' ').at(-1) ?? kind);
  return plain ? size : `${size} ${kind}`;
}

/** The mount that two pieces of the glass have in common without stating points for it. */
function mountBetween(a: JointEnd, b: JointEnd): string | undefined {
  const own = (end: JointEnd, ...paths: readonly string[]): string | undefined => paths.map((path) => end.piece.part.read(path)).find((one) => typeof one === 'string');
  const [behind, ahead] = a.piece.part.has('body') || b.piece.part.has('lens') ? [a, b] : [b, a];
  if (!behind.piece.part.has('body') && !behind.piece.part.has('mountAdapter')) return undefined;
  return own(ahead, 'lens/mount', 'mountAdapter/bodyMount') ?? own(behind, 'body/mount', 'mountAdapter/lensMount');
}
