/** Setworthy as a library: read a shoot, check it, change it. Pure: no files, no clock, no page. */
export { type Fault, type Outcome, faultText } from './faults/Fault.ts';
export { checkShoot, readKit, readShoot } from './shoot/read.ts';
export type { Kit, Part } from './shoot/schema/part.ts';
export type { Shoot } from './shoot/schema/shoot.ts';
export { type Edit, type Edited, type Patch, applyEdit } from './shoot/edit/Edit.ts';
export type { Answer, Judgement, Subject, Verdict } from './check/answer.ts';
export { Checker } from './check/Checker.ts';
export { questions } from './check/questions/index.generated.ts';
export { restsOn } from './check/restsOn.ts';
