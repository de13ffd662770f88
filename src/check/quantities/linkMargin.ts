import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { freeSpaceLoss } from '../../calc/radio/freeSpaceLoss.ts';
import { link } from '../../calc/radio/link.ts';
import { walkedMargin } from '../../calc/radio/walkedMargin.ts';
import { lines as assumed } from '../../standards/assumptions/lines.ts';
import { RECEIVER_SENSITIVITY, sensitivityDbm } from '../../standards/receiverSensitivity.ts';
import { printNumber } from '../../units/print.ts';
import type { Step } from '../answer.ts';
import type { Asking } from '../Asking.ts';
import { origin } from '../origin.ts';

export interface LinkCase {
  readonly transmitter: SetupPiece;
  readonly receiver: SetupPiece;
  readonly mode: string;
  readonly shot: string;
  readonly distanceM: number;
}

export interface LinkMargin {
  readonly marginDb: number;
  /** What should be left of it. */
  readonly wantedDb: number;
  readonly walked: boolean;
  /** Loss for ten times the distance here. */
  readonly coefficient: number;
  readonly from: string;
  readonly steps: readonly Step[];
}

/** Margin of a link in a shot: from the distance at which it broke up where it was walked, else estimated. */
export function linkMargin(asking: Asking, given: LinkCase): LinkMargin {
  const { coefficient, extraDb, steps } = wayOf(asking, given.shot);
  const walked = given.receiver.part.figure('radio/breaksUpAtM') ?? given.transmitter.part.figure('radio/breaksUpAtM');
  // Beyond the first metre the loss grows by the coefficient; what it grows more than in the open counts as an obstacle.
  const open = asking.assume(assumed.openLossCoefficient).value;
  const beyondOpenDb = Math.max(0, (coefficient - open) * Math.log10(Math.max(1, given.distanceM)));
  if (walked === undefined) return estimated(asking, given, { coefficient, extraDb: extraDb + beyondOpenDb, steps });
  const { marginDb } = walkedMargin({ breaksUpAtM: walked.value, distanceM: given.distanceM, lossCoefficient: open, extraLossDb: extraDb + beyondOpenDb });
  return {
    marginDb, wantedDb: asking.assume(assumed.walkedMarginDb).value, walked: true, coefficient, steps,
    from: `broke up at ${printNumber(walked.value)} m in the open ${origin(walked)}`,
  };
}

function estimated(asking: Asking, { transmitter, receiver, mode, distanceM }: LinkCase, way: { coefficient: number; extraDb: number; steps: readonly Step[] }): LinkMargin {
  const frequency = transmitter.part.figure('radio/bandMHz') ?? receiver.part.figure('radio/bandMHz') ?? asking.figure(transmitter.part, 'radio/bandMHz');
  const eirp = transmitter.part.figure('radio/eirpDbm') ?? asking.assume(assumed.eirpDbm);
  const gain = receiver.part.figure('radio/gainDbi') ?? asking.assume(assumed.receiveGainDbi);
  const { lossDb } = freeSpaceLoss({ frequencyMHz: frequency.value, distanceM });
  const weakest = sensitivity({ transmitter, receiver, mode });
  const { marginDb, receivedDbm } = link({ eirpDbm: eirp.value, receiveGainDbi: gain.value, extraLossDb: way.extraDb, pathLossDb: lossDb, sensitivityDbm: weakest });
  return {
    marginDb, wantedDb: asking.assume(assumed.linkDoubtDb).value, walked: false, coefficient: way.coefficient,
    from: `estimate: ${printNumber(eirp.value)} dBm sent ${origin(eirp)}, ${printNumber(weakest)} dBm heard`,
    steps: [{ says: 'loss of the path in free space', amount: { value: lossDb, unit: 'dB' } }, ...way.steps, { says: 'received', amount: { value: receivedDbm, unit: 'dBm' } }],
  };
}

/** As stated for the mode; else the least that the standard asks of a middle modulation at that width. */
function sensitivity({ transmitter, receiver, mode }: Pick<LinkCase, 'transmitter' | 'receiver' | 'mode'>): number {
  const path = `radio/modes/${mode}`;
  const stated = receiver.part.figure(`${path}/sensitivityDbm`) ?? transmitter.part.figure(`${path}/sensitivityDbm`);
  const widthMHz = transmitter.part.figure(`${path}/bandwidthMHz`)?.value ?? 20;
  return stated?.value ?? sensitivityDbm('16-QAM 1/2', widthMHz) ?? RECEIVER_SENSITIVITY[3]?.dbm ?? -74;
}

function wayOf(asking: Asking, shot: string): { coefficient: number; extraDb: number; steps: Step[] } {
  const obstacles = (asking.ledger.at(`shots/${shot}/obstacles`) ?? {}) as { bodies?: number; walls?: number; water?: boolean };
  const indoors = asking.ledger.at(`shots/${shot}/place`) === 'interior';
  const { bodies = 0, walls = 0, water = false } = obstacles;
  const losses = [
    { says: 'people in the way', db: bodies === 0 ? 0 : bodies * asking.assume(assumed.bodyLossDb).value },
    { says: 'walls in the way', db: walls === 0 ? 0 : walls * asking.assume(assumed.wallLossDb).value },
    { says: 'reflection from the water', db: water ? asking.assume(assumed.waterLossDb).value : 0 },
  ].filter(({ db }) => db > 0);
  // The coefficient of a house holds its walls; where they are counted the path between them is open.
  const coefficient = asking.assume(indoors && walls === 0 ? assumed.indoorLossCoefficient : assumed.openLossCoefficient).value;
  return {
    coefficient,
    extraDb: losses.reduce((sum, { db }) => sum + db, 0),
    steps: [
      ...losses.map(({ says, db }) => ({ says, amount: { value: db, unit: 'dB' as const } })),
      { says: `${printNumber(coefficient)} dB for ten times the distance, ${indoors ? (walls === 0 ? 'indoors' : 'between the walls') : 'in the open'}` },
    ],
  };
}
