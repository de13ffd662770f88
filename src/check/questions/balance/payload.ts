import { carrierKind, goesWith } from '../../../assembly/hold/carriers.ts';
import { type SetupPiece, setupPieces } from '../../../assembly/setupPieces.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { buildLoad, cableStep, countOfLoad, weightNotes } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { eachGlass } from '../../subjects.ts';

export const payload = question({
  id: 'balance.payload',
  asks: 'Does what carries the camera bear its weight?',
  kind: 'immediate',
  explains:
    'The mass of everything the head, legs, stand, gimbal or mount carries against its highest load. What stands below the carrier (the legs under a head) does not count. The cables plugged into it count, half at either plug; of one that leads to another build what hangs from its plug. A cable without a mass weighs nothing here and is named; while a piece has none, too much is told, but not that it is light enough. A maker’s load says nothing of how far out the weight sits; the counterbalance does. What does not go with the purpose of the build, as legs under one for the shoulder, is carried as weight.',
  sources: ['common practice'],
  subjects: (ledger) =>
    eachGlass(ledger).flatMap(({ setup, glass }) => {
      const camera = ledger.at(`setups/${setup}/camera`) as string;
      const purpose = ledger.at(`builds/${camera}/purpose`);
      const carries = (piece: SetupPiece): boolean => piece.build === camera && piece.part.figure('carrier/payloadG') !== undefined && goesWith(purpose, carrierKind(piece) ?? '');
      return [...setupPieces(ledger, setup, glass).values()].filter(carries).map(({ ref }) => ({ setup, glass, piece: ref }));
    }),
  ask: (asking, { setup, glass, piece: ref }) => {
    const pieces = setupPieces(asking.ledger, setup, glass);
    const carrier = pieces.get(ref);
    if (carrier === undefined) return null;
    const limit = asking.figure(carrier.part, 'carrier/payloadG');
    const below = new Set(ORDER[carrier.part.read('carrier/kind') as string] ?? []);
    const isCarried = (piece: SetupPiece): boolean => piece.ref !== ref && !below.has((piece.part.read('carrier/kind') as string | undefined) ?? '');
    const load = buildLoad(asking.ledger, { setup, glass }, carrier.build, isCarried);
    return allWeighed(judgeRatio({
      needs: { amount: { value: load.massG, unit: 'g' }, from: `${countOfLoad(load.weighed.length, load)} on it` },
      has: { amount: { value: limit.value, unit: 'g' }, from: `${carrier.name} ${origin(limit)}` },
      says: { holds: `The rig is light enough for ${carrier.name}.`, tight: `The rig is only just light enough for ${carrier.name}.`, fails: `The rig is too heavy for ${carrier.name}.` },
      steps: cableStep(load),
      notes: [...cautionsFor(asking.ledger.at(`builds/${carrier.build}/purpose`)), ...weightNotes(load)],
    }), load.unweighed);
  },
});

/** What stands under each kind of carrier, and is not its load. */
const ORDER: Readonly<Record<string, readonly string[]>> = { head: ['legs', 'stand', 'mount'], gimbal: ['legs', 'stand', 'mount'], legs: [], stand: [], mount: [] };
