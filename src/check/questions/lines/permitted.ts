import { pieceSetting } from '../../../assembly/setupPieces.ts';
import { RADIO_RULES_AS_OF, RADIO_RULES_CAUTION } from '../../../standards/radioRules.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeYes } from '../../judge.ts';
import { setOn } from '../../quantities/lineEdits.ts';
import { type Permission, type Region, permission, permissions } from '../../quantities/permission.ts';
import { channelsOf } from '../../quantities/radioSpan.ts';
import { sendersOf } from '../../quantities/radios.ts';
import { shotsOf } from '../../quantities/shootFigures.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const permitted = question({
  id: 'lines.permitted',
  asks: 'May each transmitter send where it stands?',
  kind: 'immediate',
  explains:
    `The channel that is set, or every channel the radio has, is held against the rules of the region as known in ${RADIO_RULES_AS_OF}: band, power radiated, indoors only. Shots marked as exterior count as outdoors. ` +
    'Whether a channel must first be listened to for radar is asked apart. Local rules decide; this is for planning.',
  sources: ['EN 300 328, EN 301 893, ERC/REC 70-03', '47 CFR 15.247 and 15.407'],
  subjects: (ledger) => eachPieceOf(ledger, (whole) => sendersOf(ledger, whole)),
  ask: (asking, subject) => {
    const { setup } = subject;
    const piece = sendersOf(asking.ledger, withGlass(asking.ledger, subject)).find(({ ref }) => ref === subject.piece);
    if (piece === undefined) return null;
    const region = asking.entered<Region>('needs/region', 'whose radio rules hold');
    const set = pieceSetting(piece, 'channel');
    if (set === undefined && channelsOf(piece).length === 0) return null;
    const { outdoors, indoors } = whereShot(asking, setup);
    const powerDbm = piece.part.figure('radio/eirpDbm')?.value;
    const found = permissions(piece, region).map((one) => ({ ...one, refused: refusal(one, outdoors, powerDbm) }));
    const allowed = found.filter(({ refused }) => refused === undefined);
    const first = found[0];
    // Where nobody says that it stays indoors, a channel that may be used there alone has not passed.
    const onlyIndoors = !indoors && allowed.every(({ rule }) => rule?.indoorsOnly === true);
    return judgeYes({
      yes: allowed.length > 0,
      caution: onlyIndoors,
      says: {
        tight: `${piece.name} may send ${set === undefined ? '' : `on channel ${set} `}indoors only, and not every shot says that it is there.`,
        holds: set === undefined ? `${piece.name} may use ${allowed.length} of its ${found.length} channels.` : `${piece.name} may send on channel ${set}.`,
        fails: set === undefined ? `${piece.name} has no channel that it may use here.` : `${piece.name} may not send on channel ${set}: ${first?.refused ?? ''}.`,
      },
      steps: set === undefined ? found.map(({ channel, refused }) => ({ says: `channel ${channel}: ${refused ?? 'may be used'}` })) : [],
      mends: allowed.length > 0 || set === undefined ? [] : others(piece, region, outdoors, powerDbm),
      notes: [RADIO_RULES_CAUTION, ...(powerDbm === undefined ? ['Its power is not entered and was not held against the limit.'] : [])],
    });
  },
});

/** Whether some shot of a setup is outdoors, and whether all of them say that they are indoors. */
function whereShot({ ledger }: Asking, setup: string): { readonly outdoors: boolean; readonly indoors: boolean } {
  const places = shotsOf(ledger, setup).map((shot) => ledger.at(`shots/${shot}/place`));
  return { outdoors: places.includes('exterior'), indoors: places.length > 0 && places.every((place) => place === 'interior') };
}

function refusal({ rule }: Permission, outdoors: boolean, powerDbm: number | undefined): string | undefined {
  if (rule === undefined) return 'outside the bands that may be shared';
  if (outdoors && rule.indoorsOnly) return 'indoors only';
  const most = rule.withoutPowerControlDbm ?? rule.maxDbm;
  if (powerDbm !== undefined && powerDbm > most + 1e-9) return `${printAmount({ value: powerDbm, unit: 'dBm' })} is over the ${printAmount({ value: most, unit: 'dBm' })} allowed`;
  return undefined;
}

function others(piece: Parameters<typeof channelsOf>[0], region: Region, outdoors: boolean, powerDbm: number | undefined): Mend[] {
  const free = channelsOf(piece).map((channel) => permission(piece, region, channel)).filter((one) => refusal(one, outdoors, powerDbm) === undefined);
  const best = free.toSorted((a, b) => a.listenS - b.listenS)[0];
  if (best === undefined) return [];
  return [{ says: `channel ${best.channel}`, edit: setOn(piece, 'channel', best.channel, `${piece.name} to channel ${best.channel}`), ...(best.listenS > 0 ? { costs: `${best.listenS} s of listening for radar before it may send` } : {}) }];
}
