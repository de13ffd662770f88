import { useEffect, useRef, useState } from 'react';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { FreeWay, RigPiece } from '../../jobs/views/rigView.ts';
import { enter } from '../state/actions.ts';
import type { Looking } from '../state/looking.ts';
import { desk } from '../worker/desk.ts';

/** The way the chosen piece can be pulled. */
export function usePull(looking: Looking, ref: string | undefined, key: FreeWay['key'] | undefined): Vector | undefined {
  const [pull, setPull] = useState<Vector | undefined>();
  useEffect(() => {
    let wanted = true;
    setPull(undefined);
    if (ref !== undefined && key !== undefined) void desk.wayAlong(looking, ref, key).then((found) => wanted && setPull(found));
    return () => {
      wanted = false;
    };
  }, [looking.setup, looking.glass, ref, key]);
  return pull;
}

/** Drags become edits, one at a time: the next is sent when the one before is answered. */
export function useDrag(piece: RigPiece | undefined, way: FreeWay | undefined): (mm: number, done: boolean) => void {
  const drag = useRef<{ readonly id: string; readonly from: number; busy: boolean; next: number | undefined } | undefined>(undefined);
  return (mm, done) => {
    if (piece?.heldBy === undefined || way === undefined) return;
    drag.current ??= { id: crypto.randomUUID(), from: way.value, busy: false, next: undefined };
    const now = drag.current;
    const path = `${piece.heldBy.path}/settings/${way.key}`;
    now.next = Math.round(Math.min(way.high, Math.max(way.low, now.from + mm)) * 2) / 2;
    const send = async (): Promise<void> => {
      if (now.busy) return;
      now.busy = true;
      while (now.next !== undefined) {
        const value = now.next;
        now.next = undefined;
        await enter(`${piece.name} moved`, path, value, now.id);
      }
      now.busy = false;
    };
    void send();
    if (done) drag.current = undefined;
  };
}
