import { PLUG_CAUTION } from '../check/quantities/lineWords.ts';
import { printAmount } from '../units/print.ts';
import { writeCsv } from './csv.ts';
import { type AirRow, airRows, type LineEnd, type LineRow, lineRows } from './lines/lineRows.ts';
import { type MakingOfSetup, paper, textFile } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { capital } from './packList.ts';
import { stateOf } from './sheet/setupState.ts';
import { SIZE } from './sheet/look.ts';
import { type Row, table } from './sheet/table.ts';

const HEADS = { power: 'Power: plug these first', video: 'Picture: after the power; off first when striking', control: 'Control' } as const;

export const lineSchedule = paper({
  id: 'lines',
  says: 'Line schedule',
  per: 'setup',
  make: (making) => {
    const rows = rowsOf(making);
    const air = airRows(making.ledger, making.setup, making.glasses);
    const sheet = sheetFor(making, 'Line schedule');
    stateOf(sheet, making, ['lines', 'power']);
    sheet.text(PLUG_CAUTION, { face: 'strong', afterMm: 2 });
    if (rows.length === 0) sheet.text('No cable is drawn in this setup yet. Draw its lines, and print this again.');
    else {
      table(sheet, [
        { says: 'no.', mm: 12 }, { says: 'from: device, socket', share: 4 }, { says: 'to: device, socket', share: 4 }, { says: 'cable', share: 4 }, { says: 'length', mm: 15, align: 'end' }, { says: 'carries', share: 3.4 },
      ], (['power', 'video', 'control'] as const).flatMap((kind) => {
        const some = rows.filter((row) => row.kind === kind);
        return some.length === 0 ? [] : [{ cells: [], group: HEADS[kind] }, ...some.map((row) => printedRow(row, making))];
      }));
    }
    airTable(sheet, air);
    return [pdfFile(making, `${making.setup}/lines.pdf`, 'Line schedule', sheet.pages()), textFile(`${making.setup}/lines.csv`, csvOf(rows, air))];
  },
});

/** The cables of a setup in the order they are plugged. */
export const rowsOf = ({ ledger, setup, glasses, press }: MakingOfSetup): LineRow[] => lineRows(ledger, setup, glasses, press.system);

const endText = ({ piece, socket, connector }: LineEnd): string => (socket.includes(connector) ? `${piece}\n${socket}` : `${piece}\n${socket} (${connector})`);

function printedRow({ number, from, to, cable, lengthMm, carries, faults, onlyWith }: LineRow, { press }: MakingOfSetup): Row {
  const length = lengthMm === undefined ? '' : printAmount({ value: lengthMm, unit: 'mm' }, press.system);
  const marked = faults.length > 0 ? { text: number, face: 'strong' as const, verdict: 'fails' as const } : { text: number, face: 'strong' as const };
  const notes = [...faults, ...(onlyWith.length === 0 ? [] : [`With ${onlyWith.join(', ')} only.`])];
  return { cells: [marked, endText(from), endText(to), [cable, ...notes].join('\n'), length, carries] };
}

function airTable(sheet: Parameters<typeof table>[0], air: readonly AirRow[]): void {
  if (air.length === 0) return;
  sheet.heading('By radio');
  table(sheet, [{ says: 'carries', mm: 22 }, { says: 'net', share: 2 }, { says: 'sends', share: 4 }, { says: 'receives', share: 4 }, { says: 'mode', share: 3 }],
    air.map(({ carries, net, from, to, mode }) => ({ cells: [capital(carries === 'video' ? 'picture' : carries), net, from, to, mode] })), SIZE.body);
}

function csvOf(rows: readonly LineRow[], air: readonly AirRow[]): string {
  return writeCsv(['no.', 'kind', 'from', 'from socket', 'from connector', 'to', 'to socket', 'to connector', 'cable', 'length mm', 'carries', 'only with', 'faults'], [
    ...rows.map((row) => [row.number, row.kind, row.from.piece, row.from.socket, row.from.connector, row.to.piece, row.to.socket, row.to.connector, row.cable, row.lengthMm, row.carries, row.onlyWith.join('; '), row.faults.join(' ')]),
    ...air.map(({ carries, net, from, to, mode }) => ['radio', carries, from, net, '', to, net, '', '', undefined, mode, '', '']),
  ]);
}
