import { powerTrace, type Supply } from '../../../assembly/lines/powerTrace.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { runtime } from '../../../calc/power/runtime.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Asking } from '../../Asking.ts';
import { judgeYes } from '../../judge.ts';
import { batteryRun } from '../../quantities/batteryRun.ts';
import { kitPacks } from '../../quantities/kitPacks.ts';
import { type PackState, packState } from '../../quantities/packState.ts';
import { coldestC, highestV, lowestV, supplyOf } from '../../quantities/supplies.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';
import { type SetupGlass, buildsOf, glassesOf } from '../../subjects.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';

export const common = question({
  id: 'power.common',
  asks: 'Would one common battery serve this build better?',
  kind: 'immediate',
  explains:
    'Several small packs on one build mean several changes and several kinds; one large pack means one of each, and one common blackout when it is changed or fails. Each pack of the kit is tried in place of all the packs of a build: does its voltage suit every device, straight or over a regulator of the kit, does it carry the current, how long does it last. ' +
    'Both sides are said; nothing fails by keeping packs apart.',
  sources: ['arithmetic over run times', 'common practice'],
  subjects: (ledger) =>
    ledger.keys('setups').flatMap((setup) => {
      const whole = { setup, glass: glassesOf(ledger, setup)[0] ?? '' };
      return buildsOf(ledger, setup).filter((build) => suppliesOn(ledger, whole, build).length > 1).map((build) => ({ setup, build }));
    }),
  ask: (asking, { setup, build }) => {
    const whole = { setup, glass: glassesOf(asking.ledger, setup)[0] ?? '' };
    const now = suppliesOn(asking.ledger, whole, build).flatMap(({ piece }) => {
      const supply = supplyOf(asking, whole, piece.ref);
      return supply === undefined ? [] : { supply, run: batteryRun(asking, whole, supply) };
    });
    const first = Math.min(...now.map(({ run }) => run.hours));
    // As drawn: a device that its present pack does not suit is one more that a common one should feed.
    const devices = suppliesOn(asking.ledger, whole, build).flatMap(devicesOf);
    const loadW = devices.reduce((sum, { typicalW }) => sum + typicalW, 0);
    const found = kitPacks(asking.ledger).flatMap(({ part }) => tryPack(asking, packState(asking, part, coldestC(asking, setup).value), devices, loadW) ?? []);
    const best = found.toSorted((a, b) => Number(a.regulated) - Number(b.regulated) || b.hours - a.hours)[0];
    const kindsNow = new Set(now.map(({ run }) => run.pack.part.path)).size;
    const helps = best !== undefined && best.hours > first;
    const names = listed(devices.map(({ piece }) => piece.name), 8);
    const buildName = asking.ledger.at(`builds/${build}/name`) as string;
    return judgeYes({
      yes: true,
      caution: helps,
      says: {
        holds: best === undefined ? `No pack of the kit could feed all of ${buildName}.` : `${buildName} runs longer on its own packs than on one ${best.pack.part.name}.`,
        tight: `One ${best?.pack.part.name ?? ''} could feed all of ${buildName}: ${now.length} changes become one, and one change then darkens all.`,
        fails: '',
      },
      steps: [
        ...now.map(({ supply, run }) => ({ says: `${supply.piece.name}, ${run.pack.part.name}, lasts`, amount: { value: run.hours, unit: 'h' as const } })),
        ...(best === undefined ? [] : [{ says: `one ${best.pack.part.name} for ${printNumber(loadW)} W lasts`, amount: { value: best.hours, unit: 'h' as const } }]),
        ...(helps ? [{ says: `saves: ${now.length === 2 ? 'one change' : `${now.length - 1} changes`} each time${kindsNow > 1 ? `, ${kindsNow - 1} kind${kindsNow > 2 ? 's' : ''} of battery` : ''}` }, { says: `would go dark together: ${names}` }] : []),
        ...(helps && best.regulated ? [{ says: `needs ${best.over.join(', ')}` }] : []),
      ],
      notes: helps ? ['One common battery is one common blackout: fuse each branch.', `Its mount and plate on ${buildName} are still to be found.`] : [],
    });
  },
});

const suppliesOn = (ledger: Ledger, { setup, glass }: SetupGlass, build: string): Supply[] =>
  powerTrace(ledger, setup, glass).supplies.filter(({ piece, nodes, packs, kind }) => kind !== 'mains' && piece.build === build && packs.length > 0 && nodes.some(({ draw }) => draw !== undefined));

interface Device {
  readonly piece: SetupPiece;
  readonly lowV: number;
  readonly highV: number;
  readonly typicalW: number;
  readonly peakW: number;
}

const devicesOf = ({ nodes }: Supply): Device[] =>
  nodes.flatMap((node) => (node.draw === undefined ? [] : { piece: node.piece, lowV: lowestV(node)?.value ?? 0, highV: highestV(node)?.value ?? Infinity, typicalW: node.draw.typicalW, peakW: node.draw.peakW }));

interface Tried {
  readonly pack: PackState;
  readonly hours: number;
  readonly regulated: boolean;
  readonly over: readonly string[];
}

function tryPack(asking: Asking, pack: PackState, devices: readonly Device[], loadW: number): Tried | undefined {
  const over = devices.map((device) => (suits(device, pack.cutoffV, pack.fullV) ? '' : regulatorFor(asking, device, pack)));
  if (over.includes(undefined)) return undefined;
  const peakA = devices.reduce((sum, { peakW }) => sum + peakW, 0) / pack.cutoffV;
  if (pack.maxA !== undefined && peakA > pack.maxA.value) return undefined;
  const { hours } = runtime({ openCircuitV: pack.openCircuitV.map(([soc, volts]): [number, number] => [soc, volts]), capacityAh: pack.capacityAh, internalOhm: pack.internalOhm, loadW, cutoffV: pack.cutoffV });
  const used = [...new Set(over)].filter((one): one is string => one !== undefined && one !== '');
  return { pack, hours, regulated: used.length > 0, over: used };
}

const suits = ({ lowV, highV }: Device, low: number, high: number): boolean => low >= lowV && high <= highV;

/** A regulator of the kit between pack and device; `undefined` where none suits both. */
function regulatorFor(asking: Asking, device: Device, pack: PackState): string | undefined {
  const { ledger } = asking;
  const valueOf = (figure: unknown, otherwise: number): number => (typeof figure === 'number' ? figure : typeof figure === 'object' && figure !== null ? (figure as { value: number }).value : otherwise);
  for (const id of ledger.keys('kit/parts')) {
    if (ledger.at(`kit/parts/${id}/kind`) !== 'regulator') continue;
    const ports = Object.values((ledger.at(`kit/parts/${id}/ports`) ?? {}) as Readonly<Record<string, { way: string; power?: { lowV?: unknown; highV?: unknown; outputV?: unknown } }>>);
    const takes = ports.some(({ way, power }) => way === 'in' && pack.cutoffV >= valueOf(power?.lowV, 0) && pack.fullV <= valueOf(power?.highV, Infinity));
    const gives = ports.find(({ way, power }) => way === 'out' && power?.outputV !== undefined && suits(device, valueOf(power.outputV, 0), valueOf(power.outputV, 0)));
    if (takes && gives !== undefined) return `${ledger.at(`kit/parts/${id}/name`) as string} at ${printAmount({ value: valueOf(gives.power?.outputV, 0), unit: 'V' })} for ${device.piece.name}`;
  }
  return undefined;
}
