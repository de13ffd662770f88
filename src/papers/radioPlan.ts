import { nets, radioMode } from '../assembly/lines/nets.ts';
import { type SetupPiece, pieceSetting } from '../assembly/setupPieces.ts';
import { permissions } from '../check/quantities/permission.ts';
import { channelWidthMHz, radioSpan } from '../check/quantities/radioSpan.ts';
import { RADIO_CAUTION, sendersOf } from '../check/quantities/radios.ts';
import { printAmount, printNumber } from '../units/print.ts';
import { writeCsv } from './csv.ts';
import { type MakingOfSetup, paper, textFile } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { answersOf } from './sheet/setupState.ts';
import { SIZE } from './sheet/look.ts';
import { table } from './sheet/table.ts';

/** What sound is told of the camera's radios. */
export interface RadioRow {
  readonly sender: string;
  readonly carries: string;
  readonly net: string;
  readonly receivers: string;
  readonly channel: string;
  readonly lowMHz: number | undefined;
  readonly highMHz: number | undefined;
  readonly widthMHz: number | undefined;
  readonly eirpDbm: number | undefined;
  readonly rules: string;
}

export const radioPlan = paper({
  id: 'radio',
  says: 'Radio plan',
  per: 'setup',
  make: (making) => {
    const rows = radioRows(making);
    if (rows.length === 0) return [];
    const sheet = sheetFor(making, 'Radio plan', `${making.setupName}: for sound, and whoever else transmits`);
    sheet.text(RADIO_CAUTION, { face: 'strong', afterMm: 2 });
    table(sheet, [{ says: 'sends', share: 4 }, { says: 'carries', mm: 17 }, { says: 'to', share: 4 }, { says: 'channel', mm: 16 }, { says: 'from, MHz', mm: 18, align: 'end' }, { says: 'to, MHz', mm: 18, align: 'end' }, { says: 'power', mm: 18, align: 'end' }, { says: 'rules', share: 4 }],
      rows.map((row) => ({ cells: [{ text: row.sender, face: 'strong' }, row.carries, row.receivers, row.channel, mhz(row.lowMHz), mhz(row.highMHz), row.eirpDbm === undefined ? '' : printAmount({ value: row.eirpDbm, unit: 'dBm' }), row.rules], leastMm: 9 })));
    const amiss = answersOf(making, ['lines']).filter(({ question, verdict }) => ['lines.channels', 'lines.permitted', 'lines.radar', 'lines.link'].includes(question) && verdict !== 'good');
    if (amiss.length > 0) {
      sheet.heading('To settle before the day');
      table(sheet, [{ says: 'finding', share: 1 }], [...new Map(amiss.map((one) => [one.says, one])).values()].map(({ says, verdict }) => ({ cells: [{ text: says, verdict }] })));
    }
    sheet.heading('Sound, and others on the location');
    table(sheet, [{ says: 'who, what', share: 4 }, { says: 'from, MHz', mm: 26 }, { says: 'to, MHz', mm: 26 }, { says: 'agreed', mm: 18 }], Array.from({ length: 6 }, () => ({ cells: ['', '', '', { text: '', box: true }], leastMm: 9 })));
    sheet.text('Region of the rules: ' + ((making.ledger.at('needs/region') as string | undefined) ?? 'not entered') + '. The rules printed are those of the tables used; the local authority decides.', { sizePt: SIZE.small });
    return [pdfFile(making, `${making.setup}/radio.pdf`, 'Radio plan', sheet.pages()), textFile(`${making.setup}/radio.csv`, csvOf(rows))];
  },
});

const mhz = (value: number | undefined): string => (value === undefined ? '' : printNumber(value, 5));

export function radioRows({ ledger, setup, glasses }: MakingOfSetup): RadioRow[] {
  const glass = glasses[0] ?? '';
  return sendersOf(ledger, { setup, glass }).map((piece) => {
    const net = nets(ledger, setup, glass).find(({ transmitters }) => transmitters.includes(piece) || transmitters.some(({ ref }) => ref === piece.ref));
    const span = radioSpan(piece);
    const channel = pieceSetting(piece, 'channel');
    return {
      sender: piece.name, carries: (piece.part.read('radio/carries') === 'video' ? 'picture' : 'control'), net: net?.name ?? '',
      receivers: net?.receivers.filter(({ ref }) => ref !== piece.ref).map(({ name }) => name).join(', ') ?? '',
      channel: channel === undefined ? 'not set' : String(channel), lowMHz: span?.lowMHz, highMHz: span?.highMHz, widthMHz: channelWidthMHz(piece, radioMode(piece)), eirpDbm: piece.part.figure('radio/eirpDbm')?.value, rules: rulesOf(ledger, piece),
    };
  });
}

function rulesOf(ledger: MakingOfSetup['ledger'], piece: SetupPiece): string {
  const region = ledger.at('needs/region') as 'EU' | 'US' | undefined;
  if (region === undefined) return 'region not entered';
  const [first] = permissions(piece, region);
  if (first === undefined || pieceSetting(piece, 'channel') === undefined) return 'depends on the channel';
  if (first.rule === undefined) return 'not allowed, or not in the tables';
  return `${region}: up to ${printAmount({ value: first.rule.maxDbm, unit: 'dBm' })} ${first.rule.powerIs}${first.rule.indoorsOnly ? ', indoors only' : ''}${first.listenS > 0 ? `, listens ${printAmount({ value: first.listenS, unit: 's' })} for radar first` : ''}`;
}

function csvOf(rows: readonly RadioRow[]): string {
  return writeCsv(['sends', 'carries', 'net', 'to', 'channel', 'from MHz', 'to MHz', 'width MHz', 'EIRP dBm', 'rules'], rows.map((row) => [row.sender, row.carries, row.net, row.receivers, row.channel, row.lowMHz, row.highMHz, row.widthMHz, row.eirpDbm, row.rules]));
}
