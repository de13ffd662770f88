import { type System, printAmount } from '../../units/print.ts';
import type { Step } from '../answer.ts';
import type { ChangeStep } from './changeStep.ts';

/** What is to be done, and by how much: "slide Motor 26 mm forward on 15 mm rod". */
export function doneWords({ says, by, way }: Pick<ChangeStep, 'says' | 'by' | 'way'>, system: System = 'metric'): string {
  const far = by === undefined ? undefined : printAmount({ ...by, value: Math.round(by.value * 10) / 10 }, system);
  return [says, far, way].filter((one) => one !== undefined).join(' ');
}

/** A step of a change as a step of the working: what to do, with what, and the time. */
export function changeWords(step: ChangeStep): Step {
  const { tool, minutes } = step;
  return { says: `${doneWords(step)}${tool === undefined ? '' : tool === 'hand' ? ', by hand' : `, ${tool}`}`, ...(minutes > 0 ? { amount: { value: minutes, unit: 'min' as const } } : {}) };
}
