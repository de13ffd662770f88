import { printAmount } from '../../units/print.ts';
import type { Step } from '../answer.ts';
import type { ChangeStep } from './lensChange.ts';

/** A step of a change as a step of the working: what to do, with what, by how much, and the time. */
export function changeWords({ says, amount, tool, minutes }: ChangeStep): Step {
  const by = amount === undefined ? '' : ` by ${amount.value > 0 ? '+' : '−'}${printAmount({ ...amount, value: Math.abs(Math.round(amount.value * 10) / 10) })}`;
  return { says: `${says}${by}${tool === undefined ? '' : tool === 'hand' ? ', by hand' : `, ${tool}`}`, ...(minutes > 0 ? { amount: { value: minutes, unit: 'min' as const } } : {}) };
}
