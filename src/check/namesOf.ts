import { wiring } from '../assembly/lines/wiring.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import { PartView } from '../shoot/ledger/PartView.ts';
import type { Subject } from './answer.ts';

/** The names of what an answer is about, for people: the finest thing first, the setup last. */
export function namesOf(ledger: Ledger, subject: Subject): string[] {
  const named = (path: string, id: string): string => (ledger.at(`${path}/${id}/name`) as string | undefined) ?? id;
  const names: (string | undefined)[] = [
    subject.at,
    subject.line === undefined ? undefined : lineNameOf(ledger, subject, subject.line),
    subject.piece === undefined ? undefined : pieceName(ledger, subject, subject.piece),
    subject.viewer === undefined ? undefined : viewerName(ledger, subject.viewer),
    subject.person === undefined ? undefined : personName(ledger, subject.person),
    subject.shot === undefined ? undefined : named('shots', subject.shot),
    subject.glass === undefined || subject.viewer !== undefined ? undefined : named('glasses', subject.glass),
    subject.setup === undefined ? undefined : named('setups', subject.setup),
    subject.build === undefined ? undefined : named('builds', subject.build),
    subject.day === undefined ? undefined : named('days', subject.day),
  ];
  return names.filter((name) => name !== undefined);
}

function pieceName(ledger: Ledger, { glass }: Subject, ref: string): string {
  const [build = '', id = ''] = ref.split('/');
  const path = [`builds/${build}/pieces/${id}`, `glasses/${glass ?? ''}/pieces/${id}`].find((one) => ledger.at(`${one}/of`) !== undefined);
  if (path === undefined) return id;
  return (ledger.at(`${path}/name`) as string | undefined) ?? new PartView(ledger, ledger.at(`${path}/of`) as string).name;
}

function lineNameOf(ledger: Ledger, { setup = '', glass }: Subject, key: string): string | undefined {
  const first = (ledger.at(`setups/${setup}/glasses`) as readonly string[] | undefined)?.[0] ?? '';
  const line = wiring(ledger, setup, glass ?? first).byKey.get(key);
  return line === undefined ? undefined : `${line.from.piece.name}, ${line.from.name} → ${line.to.piece.name}, ${line.to.name}`;
}

function viewerName(ledger: Ledger, viewer: string): string {
  return `${personName(ledger, ledger.at(`needs/viewers/${viewer}/who`) as string)} (${ledger.at(`needs/viewers/${viewer}/job`) as string})`;
}

const personName = (ledger: Ledger, person: string): string =>
  ((ledger.at(`crew/${person}/name`) ?? ledger.at(`crew/${person}/role`)) as string | undefined) ?? person;
